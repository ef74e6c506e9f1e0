/** The browser workbook: bar, grid and pane. The grid comes late; bar and pane are there at once. */
import { useCallback, useEffect, useRef, useState, type DragEvent } from "react";
import { setUp } from "../../actions/set-up";
import { shell as words } from "../../texts/page";
import { pane as paneTexts } from "../../texts/pane";
import type { CreateGrid } from "../../workbook/embedded/interface";
import type { OpenNew } from "../openNew";
import { Pane } from "../Pane";
import { Bar, dayFirstWord, OpenButton } from "./Bar";
import { LeaveDialog } from "./LeaveDialog";
import { SelectedRowText } from "./SelectedRowText";
import { useEntryFirst } from "./useEntryFirst";
import { useGrid, type AtWork } from "./useGrid";
import { focusHiddenEditor, usePartKeys } from "./usePartKeys";

export interface ShellProps {
  readonly loadGrid: () => Promise<CreateGrid>;
  /** The invented list as a file; loaded only when asked for. */
  readonly loadExample: (today: number) => Promise<Uint8Array>;
  readonly locale: string;
  readonly version: string;
}

/** What to do once unsaved changes are dealt with, or when somebody rather stays. */
interface Waiting {
  readonly go: () => void;
  readonly stay: () => void;
}

export function Shell({ loadGrid, loadExample, locale, version }: ShellProps) {
  const holder = useRef<HTMLDivElement>(null);
  const state = useGrid(holder, loadGrid);
  const { grid, said } = state;
  /** What is waiting for an answer about unsaved changes. */
  const [waiting, setWaiting] = useState<Waiting | null>(null);
  const [isDragging, setDragging] = useState(false);
  const isIdle = grid !== null && !state.isBusy;
  const focusGrid = useCallback(() => grid?.focus(), [grid]);
  usePartKeys(focusGrid);
  const entryFirst = useEntryFirst(grid);

  /** The keyboard stood on the press that goes away with what was said. */
  function hush() {
    state.hush();
    focusGrid();
    focusHiddenEditor();
  }

  async function replace(go: () => Promise<void>, stay: () => void = () => undefined): Promise<void> {
    const left = await state.endEntry();
    if (left === null) return stay();
    if (left === "saved") return go();
    /* A dialog that is taken away may still tell that it was closed: the first answer counts. */
    let isAnswered = false;
    const once = (answer: () => void) => () => {
      if (!isAnswered) answer();
      isAnswered = true;
    };
    setWaiting({ go: once(() => void go()), stay: once(stay) });
  }

  const openNew: OpenNew = (bytes, name) =>
    new Promise((resolve) => {
      void replace(
        async () => {
          const stands = await state.openMade(bytes, name);
          resolve(stands ? { outcome: "opened" } : { outcome: "refused", sentence: words.notOpened });
        },
        () => resolve({ outcome: "refused", sentence: words.leave.stayed }),
      );
    });

  /** As Set up a caseload proposes it: invented people, all columns. */
  async function tryCaseload() {
    const { proposal } = setUp;
    try {
      const maker = await setUp.load();
      await openNew(await maker.write(maker.describe(proposal, state.today)), setUp.fileName(proposal));
    } catch (error) {
      state.say("problem", [words.notOpened, String(error)]);
    }
  }

  function onDrop(event: DragEvent) {
    event.preventDefault();
    setDragging(false);
    const { files } = event.dataTransfer;
    const [file] = files;
    if (!file || files.length > 1) return state.say("problem", [words.dropOne]);
    if (isIdle) void replace(() => state.openFile(file));
  }

  return (
    <div
      className={isDragging ? "shell drop-here" : "shell"}
      onDragOver={(event) => {
        if (!event.dataTransfer.types.includes("Files")) return;
        event.preventDefault();
        setDragging(true);
      }}
      onDragLeave={(event) => event.currentTarget.contains(event.relatedTarget as Node | null) || setDragging(false)}
      onDropCapture={(event) => event.dataTransfer.types.includes("Files") && onDrop(event)}
    >
      <a className="skip" href="#pane">
        {words.toPane}
      </a>
      <Bar
        name={state.name}
        isChanged={state.isChanged}
        isReady={grid !== null}
        isBusy={state.isBusy}
        dayFirst={state.dayFirst}
        onDayFirst={state.setDayFirst}
        onOpen={(file) => void replace(() => state.openFile(file))}
        onSave={() => void state.save()}
        onNew={() => void replace(state.openEmpty)}
      />
      <main className="sheet-side" id="sheet" aria-label={words.sheet}>
        {state.atWork ? <WorkHere {...state.atWork} /> : <SaidHere said={said} onClose={hush} />}
        {state.isFresh && grid && (
          <section className="invitation stack" aria-labelledby="invitation">
            <div className="close-stack">
              <h2 id="invitation">{words.invitation}</h2>
              <p>{words.invitationText}</p>
              <p className="note">{words.keys}</p>
            </div>
            <div className="presses">
              <OpenButton
                className="button primary"
                label={words.openOwn}
                isDisabled={!isIdle}
                onOpen={(file) => void replace(() => state.openFile(file))}
              />
              <button
                type="button"
                className="button"
                disabled={!isIdle}
                onClick={() => void replace(async () => state.openBytes(await loadExample(state.today), words.example))}
              >
                {words.tryExample}
              </button>
              <button type="button" className="button" disabled={!isIdle} onClick={() => void tryCaseload()}>
                {words.tryCaseload}
              </button>
            </div>
          </section>
        )}
        <div className="sheet-area" data-drop={words.dropHere}>
          <div className="grid-holder" ref={holder} />
          {!grid && (
            <div className="grid-waiting" role={state.failure ? "alert" : "status"}>
              {state.failure ?? words.starting}
            </div>
          )}
        </div>
        <SelectedRowText grid={grid} />
      </main>
      <aside className="pane-side" id="pane" tabIndex={-1} aria-label={words.pane} {...entryFirst}>
        <Pane
          workbook={grid?.workbook ?? null}
          today={state.today}
          locale={locale}
          version={version}
          openNew={openNew}
          dayFirst={dayFirstWord(state.dayFirst)}
          isPartOfPage
        />
      </aside>
      {waiting && (
        <LeaveDialog
          name={state.name}
          onSave={() => {
            setWaiting(null);
            void state.save().then((isSaved) => (isSaved ? waiting.go() : waiting.stay()));
          }}
          onDiscard={() => {
            setWaiting(null);
            waiting.go();
          }}
          onStay={() => {
            setWaiting(null);
            waiting.stay();
          }}
        />
      )}
    </div>
  );
}

/** How far a large file is, and the press that stops it. */
function WorkHere({ title, share, isStopping, stop }: AtWork) {
  return (
    <div className="say plain">
      <div className="close-stack">
        <p>{isStopping ? paneTexts.stopping : title}</p>
        <progress aria-label={title} value={share} max={1} />
      </div>
      <button type="button" className="button" disabled={isStopping} onClick={stop}>
        {paneTexts.stop}
      </button>
    </div>
  );
}

/** What the page and the grid say, seen and spoken; it stays until it is closed or something else is said. */
function SaidHere({
  said,
  onClose,
}: {
  readonly said: ReturnType<typeof useGrid>["said"];
  readonly onClose: () => void;
}) {
  const [spoken, setSpoken] = useState("");
  useEffect(() => setSpoken(said ? said.sentences.join(" ") + (said.at % 2 === 0 ? " " : "") : ""), [said]);
  return (
    <>
      <div className="for-ears" role="status">
        {spoken}
      </div>
      {said && (
        <div className={`say ${said.kind}`}>
          <div className="close-stack">
            {said.sentences.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </div>
          <button type="button" className="button" onClick={onClose}>
            {words.closeShort}
          </button>
        </div>
      )}
    </>
  );
}
