/** The state of Find a lot: what is looked for, and what the workbook says of it, looked at anew whenever it has changed. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { findLots, surveyLots, type FoundLots, type LotList, type LotSurvey } from "../../actions/find-lot";
import { wantedLot } from "../../../src/lots/lot-text";
import { ownList } from "../../texts/own-list";
import { findLot as words } from "../../texts/find-lot";
import { pane as paneTexts } from "../../texts/pane";
import { capital } from "../../texts/pieces";
import type { Change, Overview, Workbook } from "../../workbook/port";
import { useAnnounce } from "../parts/announce";

export interface FindLotState {
  readonly survey: LotSurvey | null;
  readonly failure: string | null;
  readonly typed: string;
  readonly fault: string | null;
  readonly isFromLabel: boolean;
  /** Null while nothing is looked for. */
  readonly found: FoundLots | null;
  /** What became of showing rows. */
  readonly said: Said | null;
  type(text: string): void;
  find(text: string): void;
  /** Takes a similar lot along; null leaves all of them. */
  take(lot: string | null): void;
  also(key: string): void;
  look(): void;
  apply(change: Change, done: Showing): void;
}

/** The list of which only some rows are shown afterwards, or all again. */
type Showing = { readonly shown: LotList } | { readonly shownAgain: LotList };

interface Said {
  readonly sentence: string;
  readonly isDone: boolean;
  readonly filtered: LotList | null;
}

export function useFindLot(
  workbook: Workbook | null,
  overview: Overview | null,
  today: number,
  isShown: boolean,
): FindLotState {
  const announce = useAnnounce();
  const [survey, setSurvey] = useState<LotSurvey | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  const [typed, setTyped] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const [wanted, setWanted] = useState<{ readonly lots: readonly string[]; readonly isFromLabel: boolean } | null>(
    null,
  );
  const [columns, setColumns] = useState<readonly string[]>([]);
  const [said, setSaid] = useState<Said | null>(null);
  const [round, setRound] = useState(0);
  const looks = useRef(0);

  const look = useCallback(async () => {
    if (!workbook) return;
    const mine = ++looks.current;
    try {
      const fresh = await surveyLots(workbook, { today, also: columns });
      if (mine !== looks.current) return;
      setSurvey(fresh);
      setFailure(null);
    } catch (error) {
      if (mine === looks.current) setFailure(ownList.lookFailed(String(error)));
    }
  }, [columns, today, workbook]);
  useEffect(() => {
    if (isShown && overview) void look();
  }, [isShown, look, overview, round]);

  const found = useMemo(() => (survey && wanted ? findLots(survey, wanted.lots) : null), [survey, wanted]);

  return {
    survey,
    failure,
    typed,
    fault,
    isFromLabel: wanted?.isFromLabel ?? false,
    found,
    said,
    type: setTyped,
    find: (text) => {
      setTyped(text);
      setSaid(null);
      if (text.trim() === "") return setFault(words.empty);
      const read = wantedLot(text, survey?.year ?? 0);
      if ("problem" in read) {
        setWanted(null);
        return setFault(`${capital(read.problem)}.`);
      }
      setFault(null);
      setWanted({ lots: [read.lot], isFromLabel: read.isFromLabel });
    },
    take: (lot) =>
      setWanted((now) => now && { ...now, lots: lot === null ? now.lots.slice(0, 1) : [...now.lots, lot] }),
    also: (key) => setColumns((now) => [...now, key]),
    look: () => setRound((n) => n + 1),
    apply: (change, done) => {
      const not = (sentence: string): Said => ({ sentence, isDone: false, filtered: null });
      const filtered = "shown" in done ? done.shown : null;
      const sentence = "shown" in done ? words.shown(done.shown.name) : words.allShown(done.shownAgain.name);
      void workbook
        ?.apply(change, { report: () => undefined, signal: new AbortController().signal })
        .then(
          (receipt): Said =>
            receipt.outcome === "done" ? { sentence, isDone: true, filtered } : not(receipt.sentence),
          (error: unknown) => not(paneTexts.unexpected(String(error))),
        )
        .then((what) => {
          setSaid(what);
          announce(what.sentence);
        });
    },
  };
}
