/** The state of Add columns: what was found, what was chosen, and what became of it. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { addColumns } from "../../actions/add-columns";
import type { AddColumnsPlan, Asked, Choices, Survey } from "../../actions/add-columns/interface";
import type { Afterwards, Problem } from "../../actions/action";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import { pane as paneTexts } from "../../texts/pane";
import type { Overview, Place, Receipt, Workbook } from "../../workbook/port";
import { useAnnounce } from "../announce";

export type Phase =
  | { readonly is: "looking" }
  | { readonly is: "failed"; readonly sentence: string }
  | { readonly is: "choosing" }
  | { readonly is: "working"; readonly done: number; readonly of: number; readonly isStopping: boolean }
  | { readonly is: "finished"; readonly plan: AddColumnsPlan; readonly receipt: Receipt; readonly words: Afterwards };

export interface AddColumnsState {
  readonly phase: Phase;
  readonly survey: Survey | null;
  readonly choices: Choices | null;
  readonly plan: AddColumnsPlan | Problem | null;
  /** How often a survey has put in other choices: what people have typed belongs to one of them. */
  readonly round: number;
  choose(change: Partial<Choices>): void;
  look(asked?: Omit<Asked, "today">): Promise<void>;
  add(): Promise<void>;
  stop(): void;
  backToChoices(): void;
  reveal(place: Place): void;
}

/** What makes a look at the sheet out of date. The selection counts until somebody has chosen something. */
function signatureOf({ title, sheets, tables, selection }: Overview, withSelection: boolean): string {
  const at =
    selection && withSelection
      ? [
          selection.sheet,
          tables.find(({ sheet, area }) => sheet === selection.sheet && within(area, selection.area))?.name,
        ]
      : [];
  return JSON.stringify([title, sheets, tables, at]);
}

const within = (
  outer: { top: number; left: number; rows: number; columns: number },
  inner: { top: number; left: number },
): boolean =>
  inner.top >= outer.top &&
  inner.top < outer.top + outer.rows &&
  inner.left >= outer.left &&
  inner.left < outer.left + outer.columns;

const headersOf = (survey: Survey | null): string =>
  JSON.stringify([survey?.list?.key, survey?.list?.columns.map(({ header }) => header)]);

export function useAddColumns(
  workbook: Workbook | null,
  overview: Overview | null,
  today: number,
  isShown: boolean,
): AddColumnsState {
  const announce = useAnnounce();
  const [phase, setPhase] = useState<Phase>({ is: "looking" });
  const [survey, setSurvey] = useState<Survey | null>(null);
  const [choices, setChoices] = useState<Choices | null>(null);
  const [isTouched, setTouched] = useState(false);
  const [round, setRound] = useState(0);
  const seen = useRef<string | null>(null);
  const looks = useRef(0);
  const asked = useRef<Omit<Asked, "today">>({});
  const stopper = useRef<AbortController | null>(null);

  const look = useCallback(
    async (wish?: Omit<Asked, "today">) => {
      if (!workbook) return;
      const mine = ++looks.current;
      asked.current = wish ?? {};
      setPhase((before) => (before.is === "choosing" ? before : { is: "looking" }));
      try {
        const fresh = await addColumns.survey(workbook, { today, ...wish });
        if (mine !== looks.current) return;
        setSurvey((before) => {
          const isSameList = headersOf(before) === headersOf(fresh);
          setChoices((chosen) => (chosen && isSameList ? chosen : fresh.proposal));
          if (!isSameList) {
            setTouched(false);
            setRound((n) => n + 1);
          }
          return fresh;
        });
        setPhase({ is: "choosing" });
      } catch (error) {
        if (mine === looks.current) setPhase({ is: "failed", sentence: addColumnsTexts.lookFailed(String(error)) });
      }
    },
    [today, workbook],
  );

  const isSettled = phase.is !== "working" && phase.is !== "finished";
  const signature = overview ? signatureOf(overview, !isTouched) : null;
  useEffect(() => {
    if (!isShown || !isSettled || signature === null || signature === seen.current) return;
    seen.current = signature;
    void look(isTouched ? asked.current : undefined);
  }, [isSettled, isShown, isTouched, look, signature]);

  const plan = useMemo(
    () => (survey?.list && choices && choices.recipes.length > 0 ? addColumns.plan(survey, choices) : null),
    [choices, survey],
  );

  async function add() {
    if (!workbook || plan?.outcome !== "planned") return;
    const controller = new AbortController();
    stopper.current = controller;
    announce(addColumnsTexts.working.title);
    setPhase({ is: "working", done: 0, of: 1, isStopping: false });
    const receipt = await workbook
      .apply(plan.change, {
        report: (done, of) =>
          setPhase((before) => ({ is: "working", done, of, isStopping: before.is === "working" && before.isStopping })),
        signal: controller.signal,
      })
      .catch((error: unknown): Receipt => ({
        outcome: "stopped",
        sentence: paneTexts.unexpected(String(error)),
        done: [],
      }));
    stopper.current = null;
    const words = addColumns.afterwards(plan, receipt);
    setPhase({ is: "finished", plan, receipt, words });
    announce([`${addColumnsTexts.result.title[words.outcome]}.`, ...words.sentences].join(" "));
  }

  return {
    phase,
    survey,
    choices,
    plan,
    round,
    choose: (change) => {
      setTouched(true);
      setChoices((before) => before && { ...before, ...change });
    },
    look,
    add,
    stop: () => {
      stopper.current?.abort();
      setPhase((before) => (before.is === "working" ? { ...before, isStopping: true } : before));
    },
    backToChoices: () => {
      seen.current = signature;
      setPhase({ is: "looking" });
      void look(asked.current);
    },
    reveal: (place) =>
      void workbook?.reveal(place).catch((error: unknown) => announce(paneTexts.unexpected(String(error)))),
  };
}
