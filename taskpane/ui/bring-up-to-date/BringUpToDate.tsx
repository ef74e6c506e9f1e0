import { useEffect, useRef, useState } from "react";
import type { OlderCaseload } from "../../actions/bring-up-to-date/interface";
import { newsSince, previewOfOlder } from "../../actions/bring-up-to-date/preview";
import { setUp } from "../../actions/set-up";
import { pane as paneTexts } from "../../texts/pane";
import { setUp as setUpTexts } from "../../texts/set-up";
import type { Workbook } from "../../workbook/port";
import { useAnnounce } from "../parts/announce";
import type { OpenNew } from "../pane/open-new";
import { Notice } from "../parts/Notice";
import { Sentences } from "../parts/Sentences";
import { Step } from "../parts/Step";

const words = setUpTexts.older;

interface Props {
  readonly workbook: Workbook;
  /** The number of the description that the caseload was set up by; null where it is none that is older. */
  readonly schema: number | null;
  readonly today: number;
  readonly openNew: OpenNew;
}

type Phase =
  | { readonly is: "asking" }
  | { readonly is: "busy"; readonly text: string }
  | { readonly is: "looked"; readonly older: OlderCaseload }
  | { readonly is: "opened"; readonly name: string }
  | { readonly is: "failed"; readonly sentence: string };

/** What an older caseload lacks, and a new one made from it by two presses: what comes along is shown before. */
export function BringUpToDate({ workbook, schema, today, openNew }: Props) {
  const announce = useAnnounce();
  const [phase, setPhase] = useState<Phase>({ is: "asking" });
  const outcome = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (phase.is !== "asking" && phase.is !== "busy") outcome.current?.focus();
  }, [phase]);

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
      const older = await (await setUp.load()).surveyOlder(workbook);
      if (older) setPhase({ is: "looked", older });
      else fail(words.unreadable);
    });

  const make = (older: OlderCaseload) =>
    busy(setUpTexts.working, async () => {
      const maker = await setUp.load();
      const opened = await openNew(maker.describeAnew(older, today), words.fileName);
      if (opened.outcome === "refused") return fail(opened.sentence);
      setPhase({ is: "opened", name: words.fileName });
      announce(words.done);
    });

  /* In the browser the new one stands in place of the old: what to do with both is said all the same. */
  if (schema === null)
    return phase.is === "opened" ? (
      <div ref={outcome} tabIndex={-1}>
        <Opened name={phase.name} />
      </div>
    ) : null;
  return (
    <Step title={words.title}>
      <p>{words.lead}</p>
      <Sentences of={newsSince(schema)} />
      <div ref={outcome} tabIndex={-1} className="stack">
        {phase.is === "looked" && (
          <>
            <h4>{words.preview}</h4>
            <Sentences of={previewOfOlder(phase.older).says} />
          </>
        )}
        {phase.is === "failed" && (
          <Notice kind="problem">
            <p>{phase.sentence}</p>
          </Notice>
        )}
        {phase.is === "opened" && <Opened name={phase.name} />}
        {phase.is === "busy" && <p>{phase.text}</p>}
      </div>
      {phase.is === "looked" ? (
        <>
          <p className="note">{setUpTexts.preview.inPlace}</p>
          <div className="presses">
            <button type="button" className="button primary" onClick={() => void make(phase.older)}>
              {words.make}
            </button>
            <button type="button" className="button" onClick={() => setPhase({ is: "asking" })}>
              {paneTexts.keepIt}
            </button>
          </div>
        </>
      ) : (
        <div className="presses">
          <button type="button" className="button" disabled={phase.is === "busy"} onClick={() => void look()}>
            {words.look}
          </button>
        </div>
      )}
    </Step>
  );
}

const Opened = ({ name }: { readonly name: string }) => (
  <Notice kind="done">
    <p>{words.done}</p>
    <p>{words.opened(name)}</p>
  </Notice>
);
