/** The state of Add columns: what was found, what was chosen, and what became of it. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { addColumns } from "../../actions/add-columns";
import type { AddColumnsPlan, Choices, Survey } from "../../actions/add-columns/interface";
import type { Wish } from "../../actions/list/interface";
import type { Problem } from "../../actions/action";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import { ownList } from "../../texts/own-list";
import { contains } from "../../workbook/area";
import type { Overview, Place, Receipt, Workbook } from "../../workbook/port";
import { useAnnounce } from "../parts/announce";
import { useApply, type ApplyPhase } from "../parts/useApply";
import { useReveal } from "../parts/useReveal";

export interface AddColumnsState {
  readonly phase: ApplyPhase;
  /** Null while the first look lasts. */
  readonly survey: Survey | null;
  /** Why the sheet could not be read. */
  readonly failure: string | null;
  readonly choices: Choices | null;
  readonly plan: AddColumnsPlan | Problem | null;
  /** How often a survey has put in other choices: what people have typed belongs to one of them. */
  readonly round: number;
  choose(change: Partial<Choices>): void;
  look(wish?: Wish): Promise<void>;
  add(): Promise<void>;
  stop(): void;
  backToChoices(): void;
  reveal(place: Place): void;
}

/** What makes a look at the sheet out of date. The selection counts until somebody has chosen something. */
function signatureOf({ title, sheets, tables, names, selection }: Overview, withSelection: boolean): string {
  const at =
    selection && withSelection
      ? [
          selection.sheet,
          tables.find(
            ({ sheet, area }) => sheet === selection.sheet && contains(area, selection.area.top, selection.area.left),
          )?.name,
        ]
      : [];
  return JSON.stringify([title, sheets, tables, names, at]);
}

/** A list is the same as long as its columns are; what was chosen for it still holds. */
const identityOf = ({ list }: Survey): string => JSON.stringify([list?.key, list?.columns.map(({ header }) => header)]);

/** What was found, and what was chosen of it. */
interface Found {
  readonly survey: Survey;
  readonly choices: Choices;
  /** Somebody has chosen something: the selection counts no more. */
  readonly isTouched: boolean;
  readonly round: number;
}

const afterLook = (before: Found | null, fresh: Survey): Found =>
  before && identityOf(before.survey) === identityOf(fresh)
    ? { ...before, survey: fresh }
    : { survey: fresh, choices: fresh.proposal, isTouched: false, round: (before?.round ?? 0) + 1 };

/** "Columns added", "Columns written anew", or what became of it instead. */
export function titleOf(outcome: Receipt["outcome"], { done }: Receipt): string {
  const { title, refreshed } = addColumnsTexts.result;
  return outcome === "done" && !done.some(({ step }) => step.kind === "addColumns") ? refreshed : title[outcome];
}

export function useAddColumns(
  workbook: Workbook | null,
  overview: Overview | null,
  today: number,
  isShown: boolean,
): AddColumnsState {
  const announce = useAnnounce();
  const reveal = useReveal(workbook);
  const { phase, apply, stop, backToChoices } = useApply(workbook);
  const [found, setFound] = useState<Found | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  const seen = useRef<string | null>(null);
  const looks = useRef(0);
  const asked = useRef<Wish>({});

  const look = useCallback(
    async (wish?: Wish) => {
      if (!workbook) return;
      const mine = ++looks.current;
      asked.current = wish ?? {};
      try {
        const fresh = await addColumns.survey(workbook, { today, ...wish });
        if (mine !== looks.current) return;
        setFailure(null);
        setFound((before) => afterLook(before, fresh));
      } catch (error) {
        if (mine === looks.current) setFailure(ownList.lookFailed(String(error)));
      }
    },
    [today, workbook],
  );

  const { survey = null, choices = null, isTouched = false, round = 0 } = found ?? {};
  const signature = overview ? signatureOf(overview, !isTouched) : null;
  useEffect(() => {
    if (!isShown || phase.is !== "choosing" || signature === null || signature === seen.current) return;
    seen.current = signature;
    void look(isTouched ? asked.current : undefined);
  }, [isShown, isTouched, look, phase.is, signature]);

  const plan = useMemo(
    () => (survey?.list && choices && choices.recipes.length > 0 ? addColumns.plan(survey, choices) : null),
    [choices, survey],
  );

  return {
    phase,
    survey,
    failure,
    choices,
    plan,
    round,
    choose: (change) =>
      setFound((before) => before && { ...before, isTouched: true, choices: { ...before.choices, ...change } }),
    look,
    add: async () => {
      if (plan?.outcome !== "planned") return;
      announce(addColumnsTexts.working.title);
      const carried = await apply(plan.change, (done) => addColumns.afterwards(plan, done));
      if (!carried) return;
      const { receipt, words } = carried;
      announce([`${titleOf(words.outcome, receipt)}.`, ...words.sentences].join(" "));
      if (receipt.outcome === "done")
        setFound((before) => before && { ...before, choices: { ...before.choices, recipes: [] } });
    },
    stop,
    backToChoices: () => {
      seen.current = signature;
      backToChoices();
      void look(asked.current);
    },
    reveal,
  };
}
