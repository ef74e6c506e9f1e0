/** The state of Show only: what was found, what was ticked, and what became of it. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { Afterwards } from "../../actions/action";
import type { SurveyedList } from "../../actions/list/interface";
import { afterSorting, surveyList, type ShowChoices, type ShowSurvey } from "../../actions/show-only";
import { ownList } from "../../texts/own-list";
import { pane as paneTexts } from "../../texts/pane";
import type { Change, Overview, Receipt, Workbook } from "../../workbook/port";
import { useAnnounce } from "../parts/announce";
import { useReveal } from "../parts/useReveal";

export interface ShowOnlyState {
  readonly survey: ShowSurvey | null;
  readonly failure: string | null;
  readonly choices: ShowChoices;
  readonly isWorking: boolean;
  /** What was said of the last press. */
  readonly said: Afterwards | null;
  choose(choices: ShowChoices): void;
  /** Another list: ticks and columns begin anew. */
  chooseList(key: string): void;
  look(): void;
  /** The list itself, wherever somebody stands now. */
  reveal(list: SurveyedList): void;
  /** Looks once more before it acts: somebody may have typed in the sheet since the counts were made. */
  apply(wish: (survey: ShowSurvey) => Wished | null): Promise<void>;
  /** The rows of a table in the order of its column of numbers. */
  sort(order: { readonly table: string; readonly by: string }): Promise<void>;
}

interface Wished {
  readonly change: Change;
  readonly afterwards: (receipt: Receipt) => Afterwards;
}

const NOTHING: ShowChoices = { ticked: {}, columns: {} };

/** What makes a look out of date: the sheets and tables, not where the cursor stands. */
const signatureOf = ({ title, sheets, tables }: Overview): string => JSON.stringify([title, sheets, tables]);

export function useShowOnly(
  workbook: Workbook | null,
  overview: Overview | null,
  today: number,
  isShown: boolean,
): ShowOnlyState {
  const announce = useAnnounce();
  const reveal = useReveal(workbook);
  const [survey, setSurvey] = useState<ShowSurvey | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  const [choices, setChoices] = useState<ShowChoices>(NOTHING);
  const [list, setList] = useState<string | undefined>(undefined);
  const [isWorking, setWorking] = useState(false);
  const [said, setSaid] = useState<Afterwards | null>(null);
  const [round, setRound] = useState(0);
  const looks = useRef(0);

  const { columns } = choices;
  const lookNow = useCallback(
    () => surveyList(workbook!, { today, ...(list !== undefined && { list }) }, columns),
    [columns, list, today, workbook],
  );
  const look = useCallback(async () => {
    if (!workbook) return;
    const mine = ++looks.current;
    try {
      const fresh = await lookNow();
      if (mine !== looks.current) return;
      setSurvey(fresh);
      setFailure(null);
    } catch (error) {
      if (mine === looks.current) setFailure(ownList.lookFailed(String(error)));
    }
  }, [lookNow, workbook]);

  const signature = overview ? signatureOf(overview) : null;
  useEffect(() => {
    if (isShown && !isWorking && signature !== null) void look();
  }, [isShown, isWorking, look, round, signature]);

  async function trying(work: (of: Workbook) => Promise<Afterwards | null>) {
    if (!workbook) return;
    setWorking(true);
    /* A look that is still under way began before this: it must not come in after it. */
    looks.current++;
    const tried = await work(workbook).catch((error: unknown): Afterwards => ({
      outcome: "stopped",
      sentences: [paneTexts.unexpected(String(error))],
      where: null,
      canTakeBack: false,
    }));
    setSaid(tried);
    setWorking(false);
    if (tried) announce(tried.sentences.join(" "));
  }

  return {
    survey,
    failure,
    choices,
    isWorking,
    said,
    choose: (next) => {
      setSaid(null);
      setChoices(next);
    },
    chooseList: (key) => {
      setSaid(null);
      setChoices(NOTHING);
      setList(key);
    },
    reveal: ({ sheet, area }) => reveal({ sheet, area: { ...area, rows: 1, columns: 1 } }),
    look: () => setRound((n) => n + 1),
    apply: (wish) =>
      trying(async (of) => {
        const fresh = await lookNow();
        setSurvey(fresh);
        const wished = wish(fresh);
        if (!wished) return null;
        const { change, afterwards } = wished;
        return afterwards(await of.apply(change, { report: () => undefined, signal: new AbortController().signal }));
      }),
    sort: ({ table, by }) => trying(async (of) => afterSorting(await of.sort(table, by))),
  };
}
