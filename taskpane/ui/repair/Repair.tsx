import { useCallback, useEffect, useState } from "react";
import { afterRepair, surveyRepair, type RepairSurvey } from "../../actions/repair";
import { cannotDo } from "../../actions/action";
import { ownList } from "../../texts/own-list";
import { pane as paneTexts } from "../../texts/pane";
import { together } from "../../texts/pieces";
import { repair as words } from "../../texts/repair";
import type { Workbook } from "../../workbook/port";
import { functions } from "../guide/documented";
import type { JobProps } from "../pane/define-job";
import { Cannot } from "../parts/Cannot";
import { Finished } from "../parts/Finished";
import { TryAgain } from "../parts/TryAgain";
import { useApply } from "../parts/useApply";
import { useReveal } from "../parts/useReveal";
import { Working } from "../parts/Working";

/** So many cells are named; the count says how many there are. */
const SHOWN = 40;

/** Lost formulas of ours in the whole workbook: how many, where, and one press that enters them again. */
export function Repair({ workbook, isShown }: Pick<JobProps, "workbook" | "isShown">) {
  const { phase, apply, stop, backToChoices } = useApply(workbook);
  const reveal = useReveal(workbook);
  const [survey, setSurvey] = useState<RepairSurvey | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const look = useCallback(async (of: Workbook) => {
    setFault(null);
    setSurvey(null);
    try {
      setSurvey(await surveyRepair(of, functions));
    } catch (error) {
      setFault(ownList.lookFailed(String(error)));
    }
  }, []);
  useEffect(() => {
    if (isShown && workbook) void look(workbook);
  }, [isShown, look, workbook]);
  if (!workbook) return <p>{paneTexts.waiting}</p>;
  if (phase.is === "working") return <Working title={words.working} {...phase} stop={stop} />;
  if (phase.is === "finished")
    return (
      <Finished
        title={words.title[phase.words.outcome]}
        said={phase.words}
        receipt={phase.receipt}
        workbook={workbook}
        reveal={reveal}
        again={words.again}
        onAgain={() => {
          backToChoices();
          void look(workbook);
        }}
      />
    );
  if (fault !== null)
    return <TryAgain sentence={fault} press={ownList.lookAgain} onPress={() => void look(workbook)} />;
  if (!survey) return <p>{words.looking}</p>;
  return (
    <Found
      survey={survey}
      workbook={workbook}
      reveal={reveal}
      onLook={() => void look(workbook)}
      onRepair={(change) => void apply(change, (receipt) => afterRepair(survey, receipt))}
    />
  );
}

interface FoundProps {
  readonly survey: RepairSurvey;
  readonly workbook: Workbook;
  readonly reveal: ReturnType<typeof useReveal>;
  readonly onLook: () => void;
  readonly onRepair: (change: NonNullable<RepairSurvey["change"]>) => void;
}

function Found({ survey: { broken, locked, change }, workbook, reveal, onLook, onRepair }: FoundProps) {
  const mendable = broken.filter(({ sheet }) => !locked.includes(sheet)).length;
  const cannot = change && cannotDo(workbook, change);
  return (
    <section className="stack">
      <p>
        <strong>{broken.length === 0 ? words.none : words.found(broken.length)}</strong>
      </p>
      {mendable > 0 && <p className="note">{words.lead}</p>}
      {locked.length > 0 && <p className="fault">{words.locked(together(locked))}</p>}
      {broken.length > 0 && (
        <details className="fold">
          <summary>{words.full}</summary>
          <ul className="rows">
            {broken.slice(0, SHOWN).map(({ sheet, address, place, after }) => (
              <li key={`${sheet}!${address}`} className="close-stack">
                <button type="button" className="press" onClick={() => reveal(place)}>
                  {sheet} {address}
                </button>
                <code className="formula">{after}</code>
              </li>
            ))}
          </ul>
        </details>
      )}
      <Cannot why={cannot} />
      <div className="presses">
        {change && (
          <button type="button" className="button primary" disabled={cannot !== null} onClick={() => onRepair(change)}>
            {words.press(mendable)}
          </button>
        )}
        <button type="button" className="button" onClick={onLook}>
          {words.again}
        </button>
      </div>
    </section>
  );
}
