/** The state of Convert sizes: what was found, what was chosen, and what became of it. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { convertSizes, roomFor, spillCells } from "../../actions/convert-sizes";
import type { Choices, Room, SizesPlan, SizesSurvey } from "../../actions/convert-sizes/interface";
import type { Problem } from "../../actions/action";
import type { Wish } from "../../actions/list/interface";
import { convertSizes as words } from "../../texts/convert-sizes";
import { ownList } from "../../texts/own-list";
import { areaAddress, contains } from "../../workbook/area";
import type { Overview, Place, Workbook } from "../../workbook/port";
import { useAnnounce } from "../parts/announce";
import { useApply, type Applying } from "../parts/useApply";
import { useReveal } from "../parts/useReveal";

export interface ConvertState {
  readonly applying: Applying;
  readonly survey: SizesSurvey | null;
  readonly choices: Choices | null;
  readonly plan: SizesPlan | Problem | null;
  /** The plan that was carried out last. */
  readonly carriedOut: SizesPlan | null;
  /** Why the sheet could not be read. */
  readonly fault: string | null;
  /** How often choices were put in by a look at the sheet: what people have typed belongs to one of them. */
  readonly round: number;
  choose(change: Partial<Choices>): void;
  /** Looks where somebody stands now, or at another list. */
  look(wish?: Wish): Promise<void>;
  /** Reads the same cells again and keeps what was chosen. */
  readAgain(): void;
  convert(): Promise<void>;
  backToChoices(): void;
  reveal(place: Place): void;
}

/**
 * What makes a look at the sheet out of date. Until somebody has chosen something, selected cells count, and of a single
 * cell only where it stands: a long list is not read again at every press of an arrow key.
 */
function signatureOf({ title, sheets, tables, selection }: Overview, withSelection: boolean): string {
  if (!selection || !withSelection) return JSON.stringify([title, sheets, tables]);
  const { sheet, area } = selection;
  const isOne = area.rows === 1 && area.columns === 1;
  const table = tables.find((one) => one.sheet === sheet && contains(one.area, area.top, area.left));
  return JSON.stringify([title, sheets, tables, sheet, isOne ? table?.name : area]);
}

/** A list is the same as long as its columns are; what was chosen for it still holds. */
const identityOf = ({ list }: SizesSurvey): string =>
  JSON.stringify([list?.key, list?.columns.map(({ header }) => header)]);

/** What was found, and what was chosen of it. */
interface Found {
  readonly survey: SizesSurvey;
  readonly choices: Choices;
  /** Somebody has chosen, or gone to a cell: the selection counts no more. */
  readonly isTouched: boolean;
  readonly round: number;
}

/** @param isKept what was chosen is to stay, as long as it is about the same list */
function afterLook(before: Found | null, fresh: SizesSurvey, isKept: boolean): Found {
  if (!before || !isKept || identityOf(before.survey) !== identityOf(fresh))
    return { survey: fresh, choices: fresh.proposal, isTouched: false, round: (before?.round ?? 0) + 1 };
  return { ...before, survey: { ...fresh, selected: fresh.selected ?? before.survey.selected } };
}

export function useConvert(
  workbook: Workbook | null,
  overview: Overview | null,
  today: number,
  isShown: boolean,
): ConvertState {
  const announce = useAnnounce();
  const applying = useApply(workbook);
  const reveal = useReveal(workbook);
  const [found, setFound] = useState<Found | null>(null);
  const [carriedOut, setCarriedOut] = useState<SizesPlan | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const seen = useRef<string | null>(null);
  const looks = useRef(0);
  const wished = useRef<Wish>({});

  const look = useCallback(
    async (wish: Wish, keep: boolean) => {
      if (!workbook) return;
      const mine = ++looks.current;
      wished.current = wish;
      try {
        const fresh = await convertSizes.survey(workbook, { today, ...wish });
        if (mine !== looks.current) return;
        setFault(null);
        setFound((before) => afterLook(before, fresh, keep));
      } catch (error) {
        if (mine === looks.current) setFault(ownList.lookFailed(String(error)));
      }
    },
    [today, workbook],
  );

  const { survey = null, choices = null, isTouched = false, round = 0 } = found ?? {};
  const isChoosing = applying.phase.is === "choosing";
  const signature = overview ? signatureOf(overview, !isTouched) : null;
  useEffect(() => {
    if (!isShown || !isChoosing || signature === null || signature === seen.current) return;
    seen.current = signature;
    void look(isTouched ? wished.current : {}, isTouched);
  }, [isChoosing, isShown, isTouched, look, signature]);

  const room = useRoom(workbook, survey, choices, isShown, setFault);
  const plan = useMemo(
    () => (survey && choices ? convertSizes.plan(survey, choices, room) : null),
    [choices, room, survey],
  );

  async function convert() {
    if (plan?.outcome !== "planned") return;
    announce(words.working);
    setCarriedOut(plan);
    await applying.apply(plan.change, (receipt) => convertSizes.afterwards(plan, receipt));
  }

  return {
    applying,
    survey,
    choices,
    plan,
    carriedOut,
    fault,
    round,
    choose: (change) =>
      setFound((before) => before && { ...before, isTouched: true, choices: { ...before.choices, ...change } }),
    look: (wish) => look(wish ?? {}, false),
    readAgain: () => void look(wished.current, true),
    convert,
    backToChoices: () => {
      seen.current = signature;
      applying.backToChoices();
      void look(wished.current, false);
    },
    reveal: (place) => {
      /* Going to a cell selects it: that is no other choice of column. */
      setFound((before) => before && { ...before, isTouched: true });
      reveal(place);
    },
  };
}

/**
 * Whether a formula's cells are free, looked at whenever other cells are named or the sheet was read anew; null until
 * that is known. What was found stands in a state of its own, beside what it was found for: a look that changed what it
 * depends on would look for ever.
 */
function useRoom(
  workbook: Workbook | null,
  survey: SizesSurvey | null,
  choices: Choices | null,
  isShown: boolean,
  onFault: (sentence: string) => void,
): Room | null {
  const [found, setFound] = useState<{ readonly of: SizesSurvey; readonly at: string; readonly room: Room } | null>(
    null,
  );
  const cells = survey && choices && spillCells(survey, choices);
  /* The same cells are another object at every choice. */
  const at = cells && `${cells.sheet} ${areaAddress(cells.area)}`;
  useEffect(() => {
    if (!workbook || !survey || !cells || at === null || !isShown) return;
    let isCurrent = true;
    roomFor(workbook, cells).then(
      (room) => isCurrent && setFound({ of: survey, at, room }),
      (error: unknown) => isCurrent && onFault(ownList.lookFailed(String(error))),
    );
    return () => {
      isCurrent = false;
    };
  }, [at, isShown, onFault, survey, workbook]);
  return found?.of === survey && found?.at === at ? found.room : null;
}
