/** The state of Set up a caseload: what was chosen, what would be made, what became of it. */
import { useEffect, useState } from "react";
import type { BookDescription } from "../../../src/caseload/book";
import { setUp } from "../../actions/set-up";
import type { SetUpChoices } from "../../actions/set-up/interface";
import type { Maker } from "../../actions/set-up/make";
import { setUp as words } from "../../texts/set-up";
import { useAnnounce } from "../parts/announce";
import type { OpenNew } from "../pane/open-new";

export type SetUpPhase =
  | { readonly is: "choosing" }
  | { readonly is: "making" }
  | { readonly is: "opened"; readonly name: string }
  | { readonly is: "refused"; readonly sentence: string };

/** What would be made from the choices; null while it is being worked out. */
type Described = { readonly choices: SetUpChoices; readonly book: BookDescription };

export interface SetUpState {
  readonly phase: SetUpPhase;
  readonly choices: SetUpChoices;
  readonly book: BookDescription | null;
  readonly failure: string | null;
  choose(change: Partial<SetUpChoices>): void;
  make(): Promise<void>;
  backToChoices(): void;
}

export function useSetUp(today: number, openNew: OpenNew, load: () => Promise<Maker> = setUp.load): SetUpState {
  const announce = useAnnounce();
  const [phase, setPhase] = useState<SetUpPhase>({ is: "choosing" });
  const [choices, setChoices] = useState(setUp.proposal);
  const [described, setDescribed] = useState<Described | null>(null);
  const [failure, setFailure] = useState<string | null>(null);

  useEffect(() => {
    let isCurrent = true;
    load()
      .then((maker) => {
        if (!isCurrent) return;
        setDescribed({ choices, book: maker.describe(choices, today) });
        setFailure(null);
      })
      .catch((error: unknown) => {
        if (isCurrent) setFailure(words.failed(String(error)));
      });
    return () => {
      isCurrent = false;
    };
  }, [choices, load, today]);

  const isDescribed = described !== null && described.choices === choices;

  async function make(): Promise<void> {
    if (!isDescribed || phase.is === "making") return;
    setPhase({ is: "making" });
    announce(words.working);
    const name = setUp.fileName(choices);
    const outcome = await openNew(described.book, name).catch((error: unknown) => ({
      outcome: "refused" as const,
      sentence: words.failed(String(error)),
    }));
    if (outcome.outcome === "opened") setPhase({ is: "opened", name });
    else setPhase({ is: "refused", sentence: outcome.sentence });
    announce(outcome.outcome === "opened" ? words.done.title : `${words.notDone}. ${outcome.sentence}`);
  }

  return {
    phase,
    choices,
    book: isDescribed ? described.book : null,
    failure,
    choose: (change) => setChoices((before) => ({ ...before, ...change })),
    make,
    backToChoices: () => setPhase({ is: "choosing" }),
  };
}
