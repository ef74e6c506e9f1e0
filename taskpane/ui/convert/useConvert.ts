/** The state of Convert sizes: what was found, what was chosen, and what became of it. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { convertSizes, roomFor } from "../../actions/convert-sizes";
import type { Choices, SizesPlan, SizesSurvey } from "../../actions/convert-sizes/interface";
import type { Problem } from "../../actions/action";
import type { Wish } from "../../actions/add-columns/interface";
import { convert as words } from "../../texts/convert";
import { ownList } from "../../texts/own-list";
import { contains } from "../../workbook/area";
import type { Overview, Place, Workbook } from "../../workbook/port";
import { useAnnounce } from "../announce";
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
const identityOf = (survey: SizesSurvey | null): string =>
  JSON.stringify([survey?.list?.key, survey?.list?.columns.map(({ header }) => header)]);

export function useConvert(
  workbook: Workbook | null,
  overview: Overview | null,
  today: number,
  isShown: boolean,
): ConvertState {
  const announce = useAnnounce();
  const applying = useApply(workbook);
  const reveal = useReveal(workbook);
  const [survey, setSurvey] = useState<SizesSurvey | null>(null);
  const [choices, setChoices] = useState<Choices | null>(null);
  const [carriedOut, setCarriedOut] = useState<SizesPlan | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [isTouched, setTouched] = useState(false);
  const [round, setRound] = useState(0);
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
        setSurvey((before) => {
          const isKept = keep && identityOf(before) === identityOf(fresh);
          setChoices((chosen) => (isKept && chosen ? { ...chosen, room: null } : fresh.proposal));
          if (!isKept) {
            setTouched(false);
            setRound((n) => n + 1);
          }
          return isKept && before ? { ...fresh, selected: fresh.selected ?? before.selected } : fresh;
        });
      } catch (error) {
        if (mine === looks.current) setFault(ownList.lookFailed(String(error)));
      }
    },
    [today, workbook],
  );

  const isChoosing = applying.phase.is === "choosing";
  const signature = overview ? signatureOf(overview, !isTouched) : null;
  useEffect(() => {
    if (!isShown || !isChoosing || signature === null || signature === seen.current) return;
    seen.current = signature;
    void look(isTouched ? wished.current : {}, isTouched);
  }, [isChoosing, isShown, isTouched, look, signature]);

  useRoom(workbook, survey, choices, setChoices);

  const plan = useMemo(() => (survey && choices ? convertSizes.plan(survey, choices) : null), [choices, survey]);

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
    choose: (change) => {
      setTouched(true);
      setChoices((before) => before && { ...before, ...change });
    },
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
      setTouched(true);
      reveal(place);
    },
  };
}

/** Looks whether a formula's cells are free, whenever somebody names another first cell. */
function useRoom(
  workbook: Workbook | null,
  survey: SizesSurvey | null,
  choices: Choices | null,
  setChoices: (change: (before: Choices | null) => Choices | null) => void,
) {
  const isNeeded = choices?.put === "spill" && choices.room === null;
  useEffect(() => {
    if (!workbook || !survey || !choices || !isNeeded) return;
    let current = true;
    const put = (room: Choices["room"]) => current && setChoices((before) => before && { ...before, room });
    void roomFor(workbook, survey, choices).then(put, () => undefined);
    return () => {
      current = false;
    };
  }, [choices, isNeeded, setChoices, survey, workbook]);
}
