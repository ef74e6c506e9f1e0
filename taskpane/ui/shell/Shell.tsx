/** The browser workbook: bar, grid and pane. The grid comes late; bar and pane are there at once. */
import { useCallback, useEffect, useRef, useState, type ReactNode, type RefObject } from "react";
import type { BookDescription } from "../../../src/caseload/book";
import { shell as words } from "../../texts/shell";
import type { CreateGrid } from "../../workbook/embedded/interface";
import { Pane } from "../pane/Pane";
import { SheetInSight } from "../parts/useReveal";
import { AtPointer } from "./AtPointer";
import { Bar, dayFirstWord } from "./Bar";
import { FirstScreen } from "./FirstScreen";
import { LeaveDialog } from "./LeaveDialog";
import { SaidHere, WorkHere } from "./Said";
import { SelectedRowText } from "./SelectedRowText";
import { ShowMe } from "./ShowMe";
import { useBeginning, type Begun } from "./useBeginning";
import { useDrop } from "./useDrop";
import { useEntryFirst } from "./useEntryFirst";
import { useGrid, type GridState } from "./useGrid";
import { useLeaving, type Leaving } from "./useLeaving";
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

export function Shell({ loadGrid, loadExample, writeBook, locale, version }: ShellProps) {
  const holder = useRef<HTMLDivElement>(null);
  const state = useGrid(holder, loadGrid);
  const { grid } = state;
  const focusGrid = useCallback(() => grid?.focus(), [grid]);
  usePartKeys(focusGrid);
  const entryFirst = useEntryFirst(grid);
  const leaving = useLeaving(state, writeBook);
  const begun = useBeginning(state, loadExample, leaving.openNew);
  /** On a telephone either the pane or the sheet is in sight. */
  const [isSheetInSight, setSheetInSight] = useState(false);
  const showSheet = useCallback(() => setSheetInSight(true), []);
  /* The press on which the keyboard stood is gone with the first screen. */
  useEffect(() => {
    if (!state.hasBegun) return;
    return keepInSheet(focusGrid);
  }, [focusGrid, state.hasBegun]);
  const drop = useDrop(([file, ...others]) => {
    if (!file || others.length > 0) return state.say("problem", [words.dropOne]);
    if (!state.hasBegun) return begun.begin("file", file);
    if (grid && !state.isBusy) void leaving.replace(() => state.openFile(file));
  });

  const looks = [
    "shell",
    drop.isDragging && "drop-here",
    isSheetInSight && "sheet-in-sight",
    !state.hasBegun && "not-begun",
  ];
  return (
    <div className={looks.filter(Boolean).join(" ")} {...drop.on}>
      {!state.hasBegun && <First state={state} begun={begun} locale={locale} />}
      <a className="skip" href="#pane">
        {words.toPane}
      </a>
      <Bar
        name={state.name}
        isChanged={state.isChanged}
        isReady={grid !== null}
        isBusy={state.isBusy}
        dayFirst={state.dayFirst}
        isDayFirstAsked={state.hasAskedDayFirst}
        onDayFirst={state.setDayFirst}
        onOpen={(file) => void leaving.replace(() => state.openFile(file))}
        onSave={() => void state.save()}
        onNew={() => void leaving.replace(state.openEmpty)}
        isSheetInSight={isSheetInSight}
        onSheet={() => setSheetInSight(!isSheetInSight)}
      />
      <SheetSide state={state} holder={holder} focusGrid={focusGrid}>
        {begun.isShowing && <Showing state={state} begun={begun} leaving={leaving} />}
      </SheetSide>
      <aside className="pane-side" id="pane" tabIndex={-1} aria-label={words.pane} {...entryFirst}>
        <SheetInSight.Provider value={showSheet}>
          <Pane
            workbook={grid?.workbook ?? null}
            today={state.today}
            locale={locale}
            version={version}
            openNew={leaving.openNew}
            dayFirst={dayFirstWord(state.dayFirst)}
            isPartOfPage
          />
        </SheetInSight.Provider>
      </aside>
      <AskBeforeLeaving state={state} leaving={leaving} />
    </div>
  );
}

interface FirstProps {
  readonly state: GridState;
  readonly begun: Begun;
  readonly locale: string;
}

/** The first screen, until a workbook stands because somebody asked for it. */
function First({ state, begun, locale }: FirstProps) {
  const { said } = state;
  return (
    <FirstScreen
      today={state.today}
      locale={locale}
      isWaiting={begun.isWaiting || state.isBusy}
      failure={state.failure ?? (said?.kind === "problem" ? said.sentences.join(" ") : null)}
      work={state.atWork && <WorkHere {...state.atWork} />}
      onOpen={(file) => begun.begin("file", file)}
      onShow={() => begun.begin("showing")}
      onCaseload={() => begun.begin("caseload")}
      onEmpty={() => begun.begin("empty")}
    />
  );
}

interface SheetSideProps {
  readonly state: GridState;
  readonly holder: RefObject<HTMLDivElement>;
  readonly focusGrid: () => void;
  /** What is offered above the sheet. */
  readonly children: ReactNode;
}

function SheetSide({ state, holder, focusGrid, children }: SheetSideProps) {
  const { grid, atWork, failure } = state;
  /** The keyboard stood on the press that goes away with what was said. */
  function hush() {
    state.hush();
    focusGrid();
    focusHiddenEditor();
  }
  /** What was typed is typed again: an entry is never put in behind somebody's back. */
  function answerDayFirst(dayFirst: boolean) {
    state.setDayFirst(dayFirst);
    hush();
  }
  return (
    <main className="sheet-side" id="sheet" aria-label={words.sheet}>
      {atWork ? <WorkHere {...atWork} /> : <SaidHere said={state.said} onClose={hush} onDayFirst={answerDayFirst} />}
      {children}
      <div className="sheet-area" data-drop={words.dropHere}>
        <div className="grid-holder" ref={holder} />
        {!grid && (
          <div className="grid-waiting" role={failure ? "alert" : "status"}>
            {failure ?? words.starting}
          </div>
        )}
      </div>
      <SelectedRowText grid={grid} />
      <AtPointer grid={grid} />
    </main>
  );
}

interface LeavingProps {
  readonly state: GridState;
  readonly leaving: Leaving;
}

function Showing({ state, begun, leaving }: LeavingProps & { readonly begun: Begun }) {
  if (!state.grid) return null;
  return (
    <ShowMe
      grid={state.grid}
      today={state.today}
      onOpen={(file) => {
        begun.endShowing();
        void leaving.replace(() => state.openFile(file));
      }}
      onStay={begun.endShowing}
    />
  );
}

function AskBeforeLeaving({ state, leaving: { waiting, answered } }: LeavingProps) {
  if (!waiting) return null;
  return (
    <LeaveDialog
      name={state.name}
      onSave={() => {
        answered();
        void state.save().then((isSaved) => (isSaved ? waiting.go() : waiting.stay()));
      }}
      onDiscard={() => {
        answered();
        waiting.go();
      }}
      onStay={() => {
        answered();
        waiting.stay();
      }}
    />
  );
}
