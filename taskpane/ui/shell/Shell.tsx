/** The browser workbook: bar, grid and pane. The grid comes late; bar and pane are there at once. */
import { useCallback, useEffect, useRef, useState, type DragEvent } from "react";
import type { BookDescription } from "../../../src/caseload/book";
import { setUp } from "../../actions/set-up";
import { shell as words } from "../../texts/shell";
import { pane as paneTexts } from "../../texts/pane";
import type { CreateGrid } from "../../workbook/embedded/interface";
import type { OpenNew } from "../pane/open-new";
import { Pane } from "../pane/Pane";
import { Bar, dayFirstWord } from "./Bar";
import { FirstScreen } from "./FirstScreen";
import { LeaveDialog } from "./LeaveDialog";
import { SelectedRowText } from "./SelectedRowText";
import { ShowMe } from "./ShowMe";
import { SheetInSight } from "../parts/useReveal";
import { useEntryFirst } from "./useEntryFirst";
import { useGrid, type AtWork } from "./useGrid";
import { focusHiddenEditor, keepInSheet, usePartKeys } from "./usePartKeys";

export interface ShellProps {
  readonly loadGrid: () => Promise<CreateGrid>;
  /** The invented list as a file; loaded only when asked for. */
  readonly loadExample: (today: number) => Promise<Uint8Array>;
  /** A workbook that was made here, as a file. */
  readonly writeBook: (book: BookDescription) => Promise<Uint8Array>;
  readonly locale: string;
  readonly version: string;
}

/** What was chosen on the first screen. */
interface Beginning {
  readonly by: "file" | "showing" | "caseload" | "empty";
  readonly file?: File;
}

/** What to do once unsaved changes are dealt with, or when somebody rather stays. */
interface Waiting {
  readonly go: () => void;
  readonly stay: () => void;
}

export function Shell({ loadGrid, loadExample, writeBook, locale, version }: ShellProps) {
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

  const openNew: OpenNew = async (book, name) => {
    const bytes = await writeBook(book);
    return new Promise((resolve) => {
      void replace(
        async () => {
          const stands = await state.openMade(bytes, name);
          resolve(stands ? { outcome: "opened" } : { outcome: "refused", sentence: words.notOpened });
        },
        () => resolve({ outcome: "refused", sentence: words.leave.stayed }),
      );
    });
  };

  /** A choice of the first screen that waits for the grid. */
  const [beginning, setBeginning] = useState<Beginning | null>(null);
  const [isShowing, setShowing] = useState(false);
  /** On a telephone either the pane or the sheet is in sight. */
  const [isSheetInSight, setSheetInSight] = useState(false);
  const showSheet = useCallback(() => setSheetInSight(true), []);
  /** The invented list, and what two columns make of it. */
  async function showMe() {
    await state.openBytes(await loadExample(state.today), words.example);
    setShowing(true);
  }

  /** As Set up a caseload proposes it: invented people, all columns. */
  async function tryCaseload() {
    const { proposal } = setUp;
    try {
      const maker = await setUp.load();
      await openNew(maker.describe(proposal, state.today), setUp.fileName(proposal));
    } catch (error) {
      state.say("problem", [words.notOpened, String(error)]);
    }
  }

  const begin: { readonly [B in Beginning["by"]]: (file?: File) => Promise<void> } = {
    file: (file) => state.openFile(file!),
    showing: showMe,
    caseload: tryCaseload,
    empty: state.openEmpty,
  };
  useEffect(() => {
    if (!grid || !beginning) return;
    setBeginning(null);
    void begin[beginning.by](beginning.file);
  });
  /* The press on which the keyboard stood is gone with the first screen. */
  useEffect(() => {
    if (!state.hasBegun) return;
    return keepInSheet(focusGrid);
  }, [focusGrid, state.hasBegun]);

  function onDrop(event: DragEvent) {
    event.preventDefault();
    setDragging(false);
    const { files } = event.dataTransfer;
    const [file] = files;
    if (!file || files.length > 1) return state.say("problem", [words.dropOne]);
    if (!state.hasBegun) return setBeginning({ by: "file", file });
    if (isIdle) void replace(() => state.openFile(file));
  }

  const shell = [
    "shell",
    isDragging && "drop-here",
    isSheetInSight && "sheet-in-sight",
    !state.hasBegun && "not-begun",
  ];

  return (
    <div
      className={shell.filter(Boolean).join(" ")}
      onDragOver={(event) => {
        if (!event.dataTransfer.types.includes("Files")) return;
        event.preventDefault();
        setDragging(true);
      }}
      onDragLeave={(event) => event.currentTarget.contains(event.relatedTarget as Node | null) || setDragging(false)}
      onDropCapture={(event) => event.dataTransfer.types.includes("Files") && onDrop(event)}
    >
      {!state.hasBegun && (
        <FirstScreen
          today={state.today}
          locale={locale}
          isWaiting={beginning !== null || state.isBusy}
          failure={state.failure ?? (said?.kind === "problem" ? said.sentences.join(" ") : null)}
          work={state.atWork && <WorkHere {...state.atWork} />}
          onOpen={(file) => setBeginning({ by: "file", file })}
          onShow={() => setBeginning({ by: "showing" })}
          onCaseload={() => setBeginning({ by: "caseload" })}
          onEmpty={() => setBeginning({ by: "empty" })}
        />
      )}
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
        isSheetInSight={isSheetInSight}
        onSheet={() => setSheetInSight(!isSheetInSight)}
      />
      <main className="sheet-side" id="sheet" aria-label={words.sheet}>
        {state.atWork ? <WorkHere {...state.atWork} /> : <SaidHere said={said} onClose={hush} />}
        {isShowing && grid && (
          <ShowMe
            grid={grid}
            today={state.today}
            onOpen={(file) => {
              setShowing(false);
              void replace(() => state.openFile(file));
            }}
            onStay={() => setShowing(false)}
          />
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
        <SheetInSight.Provider value={showSheet}>
          <Pane
            workbook={grid?.workbook ?? null}
            today={state.today}
            locale={locale}
            version={version}
            openNew={openNew}
            dayFirst={dayFirstWord(state.dayFirst)}
            isPartOfPage
          />
        </SheetInSight.Provider>
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
