import { useState } from "react";
import type { Brought } from "../../../src/caseload/brought";
import { identifierIn } from "../../actions/list/identifier";
import type { SurveyedList } from "../../actions/list/interface";
import { setUp } from "../../actions/set-up";
import { pane as paneTexts } from "../../texts/pane";
import { setUp as setUpTexts } from "../../texts/set-up";
import { thisList as thisListTexts } from "../../texts/this-list";
import { useAnnounce } from "../parts/announce";
import { Notice } from "../parts/Notice";
import { Sentences } from "../parts/Sentences";
import { Step } from "../parts/Step";
import type { OpenNew } from "../pane/open-new";

const words = thisListTexts.bring;

interface Props {
  readonly list: SurveyedList;
  readonly is1904: boolean;
  readonly today: number;
  readonly openNew: OpenNew;
}

type Phase =
  | { readonly is: "asking" }
  | { readonly is: "busy"; readonly text: string }
  /** Of the list as it was read then. */
  | { readonly is: "looked"; readonly brought: Brought; readonly of: SurveyedList }
  | { readonly is: "opened" }
  | { readonly is: "failed"; readonly sentence: string };

/** The list as a ready-made caseload, by two presses: what comes along and what does not is shown between them. */
export function BringStep({ list, is1904, today, openNew }: Props) {
  const announce = useAnnounce();
  const [phase, setPhase] = useState<Phase>({ is: "asking" });

  function fail(sentence: string) {
    setPhase({ is: "failed", sentence });
    announce(sentence);
  }

  async function busy(text: string, work: () => Promise<void>): Promise<void> {
    setPhase({ is: "busy", text });
    announce(text);
    await work().catch((error: unknown) => fail(words.failed(String(error))));
  }

  const look = () =>
    busy(words.looking, async () => {
      const maker = await setUp.load();
      setPhase({ is: "looked", brought: maker.bring(list), of: list });
    });

  const make = (brought: Brought) =>
    busy(words.working, async () => {
      const maker = await setUp.load();
      const opened = await openNew(maker.describeBrought(brought, today), words.fileName);
      if (opened.outcome === "refused") return fail(opened.sentence);
      setPhase({ is: "opened" });
      announce(words.open);
    });

  /* What was looked at is of the list as it stood then. */
  const looked = phase.is === "looked" && phase.of === list ? phase.brought : null;
  return (
    <Step title={words.title}>
      <p className="note">{is1904 ? words.from1904 : words.lead}</p>
      {looked && <Sentences of={sentencesOf(looked, list)} />}
      {looked && <p className="note">{setUpTexts.preview.inPlace}</p>}
      {phase.is === "busy" && <p>{phase.text}</p>}
      {(phase.is === "failed" || phase.is === "opened") && (
        <Notice kind={phase.is === "opened" ? "done" : "problem"}>
          <p>{phase.is === "opened" ? words.open : phase.sentence}</p>
        </Notice>
      )}
      <div className="presses">
        {looked ? (
          <>
            <button type="button" className="button" onClick={() => void make(looked)}>
              {words.make}
            </button>
            <button type="button" className="button" onClick={() => setPhase({ is: "asking" })}>
              {paneTexts.keepIt}
            </button>
          </>
        ) : (
          <button type="button" className="button" disabled={is1904 || phase.is === "busy"} onClick={() => void look()}>
            {words.look}
          </button>
        )}
      </div>
    </Step>
  );
}

/** What does not come along comes first. */
function sentencesOf({ carried, notBrought, beside }: Brought, list: SurveyedList): readonly string[] {
  return [
    words.left(notBrought.length),
    ...(identifierIn(list) === null ? [words.noIdentifier] : []),
    words.rows(carried.rows.tubes.length, carried.rows.checks.length),
    ...(beside.length > 0 ? [words.beside(beside)] : []),
    words.changes,
  ];
}
