/**
 * What jobs on somebody's own list share: a look at the sheet where somebody stands, what is chosen of what was found
 * there, a new look once that one is out of date, and the way to the press and back.
 */
import { useCallback, useEffect, useRef, useState } from "react";
import type { Asked, SurveyedList, Wish } from "../../actions/list/interface";
import { ownList } from "../../texts/own-list";
import { contains } from "../../workbook/area";
import type { Overview, Place, Workbook } from "../../workbook/port";
import { useApply, type Applying } from "./useApply";
import { useReveal } from "./useReveal";

/** Where a job stands: the workbook, what is known of it, the day, and whether the job is in sight. */
export interface Standing {
  readonly workbook: Workbook | null;
  readonly overview: Overview | null;
  readonly today: number;
  readonly isShown: boolean;
}

interface Looked<C> {
  readonly list: Pick<SurveyedList, "key" | "columns"> | null;
  /** What is chosen as long as nobody has chosen anything. */
  readonly proposal: C;
}

interface Ways<S> {
  readonly survey: (workbook: Workbook, asked: Asked) => Promise<S>;
  /** What besides sheets and tables makes a look out of date; of the selection, as long as it counts, only this. */
  readonly alsoSeen?: (overview: Overview, withSelection: boolean) => unknown;
  /** What of the look before still counts after one at the same list. */
  readonly renewed?: (before: S, fresh: S) => S;
  /** What was chosen stays through every look at the same list, not only where somebody has not asked for another. */
  readonly keepsChoices?: boolean;
}

/** What was found, and what was chosen of it. */
interface Found<S, C> {
  readonly survey: S;
  readonly choices: C;
  /** Somebody has chosen something: the selection counts no more. */
  readonly isTouched: boolean;
  readonly round: number;
}

export interface ListJob<S, C> {
  readonly applying: Applying;
  /** Null while the first look lasts. */
  readonly survey: S | null;
  readonly choices: C | null;
  /** Why the sheet could not be read. */
  readonly fault: string | null;
  readonly setFault: (sentence: string) => void;
  /** How often choices were put in by a look at the sheet: what people have typed belongs to one of them. */
  readonly round: number;
  choose(change: Partial<C>): void;
  /** As `choose`, from what was found and chosen before. */
  chooseFrom(change: (survey: S, before: C) => C): void;
  /** What is chosen next time, without a person having chosen it. */
  propose(change: Partial<C>): void;
  /** From now on the selection counts no more. */
  touch(): void;
  /** Looks where somebody stands now, or at another list. */
  look(wish?: Wish): Promise<void>;
  /** Reads the same cells again and keeps what was chosen. */
  readAgain(): void;
  backToChoices(): void;
  reveal(place: Place): void;
}

/** In which list somebody stands. */
export function listStoodIn({ tables, selection }: Overview): readonly unknown[] {
  if (!selection) return [];
  const { sheet, area } = selection;
  const table = tables.find((one) => one.sheet === sheet && contains(one.area, area.top, area.left));
  return [sheet, table?.name];
}

const inWhichList = (overview: Overview, withSelection: boolean): unknown =>
  withSelection ? listStoodIn(overview) : [];

const asFound = <S>(_before: S, fresh: S): S => fresh;

/** A list is the same as long as its columns are; what was chosen for it still holds. */
const identityOf = ({ list }: Looked<unknown>): string =>
  JSON.stringify([list?.key, list?.columns.map(({ header }) => header)]);

export function useListJob<S extends Looked<C>, C extends object>(
  { workbook, overview, today, isShown }: Standing,
  { survey: surveyOf, alsoSeen = inWhichList, renewed = asFound, keepsChoices = false }: Ways<S>,
): ListJob<S, C> {
  const applying = useApply(workbook);
  const reveal = useReveal(workbook);
  const [found, setFound] = useState<Found<S, C> | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const seen = useRef<string | null>(null);
  const looks = useRef(0);
  const wished = useRef<Wish>({});

  const look = useCallback(
    async (wish: Wish, isKept: boolean) => {
      if (!workbook) return;
      const mine = ++looks.current;
      wished.current = wish;
      try {
        const fresh = await surveyOf(workbook, { today, ...wish });
        if (mine !== looks.current) return;
        setFault(null);
        setFound((before) =>
          before && (isKept || keepsChoices) && identityOf(before.survey) === identityOf(fresh)
            ? { ...before, survey: renewed(before.survey, fresh) }
            : { survey: fresh, choices: fresh.proposal, isTouched: false, round: (before?.round ?? 0) + 1 },
        );
      } catch (error) {
        if (mine === looks.current) setFault(ownList.lookFailed(String(error)));
      }
    },
    [keepsChoices, renewed, surveyOf, today, workbook],
  );

  const { survey = null, choices = null, isTouched = false, round = 0 } = found ?? {};
  const isChoosing = applying.phase.is === "choosing";
  const signature =
    overview && JSON.stringify([overview.title, overview.sheets, overview.tables, alsoSeen(overview, !isTouched)]);
  useEffect(() => {
    if (!isShown || !isChoosing || signature === null || signature === seen.current) return;
    seen.current = signature;
    void look(isTouched ? wished.current : {}, isTouched);
  }, [isChoosing, isShown, isTouched, look, signature]);

  const change = (to: (before: Found<S, C>) => Partial<Found<S, C>>): void =>
    setFound((before) => before && { ...before, ...to(before) });
  return {
    applying,
    survey,
    choices,
    fault,
    setFault,
    round,
    choose: (some) => change((before) => ({ isTouched: true, choices: { ...before.choices, ...some } })),
    chooseFrom: (to) => change((before) => ({ isTouched: true, choices: to(before.survey, before.choices) })),
    propose: (some) => change((before) => ({ choices: { ...before.choices, ...some } })),
    touch: () => change(() => ({ isTouched: true })),
    look: (wish) => look(wish ?? {}, false),
    readAgain: () => void look(wished.current, true),
    backToChoices: () => {
      seen.current = signature;
      applying.backToChoices();
      void look(wished.current, false);
    },
    reveal,
  };
}
