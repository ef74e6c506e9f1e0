import { useId, useState } from "react";
import { cannotDo } from "../../actions/action";
import { removeInvented } from "../../actions/set-up";
import type { RemovePlan, RemoveSurvey } from "../../actions/set-up/remove-invented";
import { setUp as setUpTexts } from "../../texts/set-up";
import type { Place, Workbook } from "../../workbook/port";
import { Cannot } from "../parts/Cannot";
import { Finished } from "../parts/Finished";
import { Notice } from "../parts/Notice";
import { ProblemNotice } from "../parts/ProblemNotice";
import { Sentences } from "../parts/Sentences";
import { Step } from "../parts/Step";
import { useApply } from "../parts/useApply";
import { useReveal } from "../parts/useReveal";
import { Working } from "../parts/Working";

const words = setUpTexts.remove;
/** Presses for single rows shown at once; the rest are counted. */
const ROWS_SHOWN = 20;

interface Props {
  readonly workbook: Workbook;
  readonly isMarked: boolean;
}

/** Looked at first, removed by a second press. What was done stays in sight when the mark is gone, with the way back. */
export function RemoveInvented({ workbook, isMarked }: Props) {
  const { phase, apply, stop, backToChoices } = useApply(workbook);
  const [survey, setSurvey] = useState<RemoveSurvey | null>(null);
  const [isLooking, setLooking] = useState(false);
  const [failure, setFailure] = useState<string | null>(null);
  const [withChanged, setWithChanged] = useState(false);

  async function look() {
    setLooking(true);
    setFailure(null);
    try {
      setSurvey(await removeInvented.survey(workbook, undefined));
    } catch (error) {
      setFailure(words.lookFailed(String(error)));
    }
    setLooking(false);
  }
  const reveal = useReveal(workbook);

  if (phase.is === "working") {
    return <Working title={words.working} {...phase} stop={stop} />;
  }
  if (phase.is === "finished") {
    const { receipt, words: said } = phase;
    return (
      <Finished
        title={words.finished[said.outcome]}
        said={said}
        receipt={receipt}
        workbook={workbook}
        reveal={reveal}
        again={words.again}
        onAgain={() => {
          setSurvey(null);
          backToChoices();
        }}
      />
    );
  }
  if (!isMarked) return null;
  const plan = survey && removeInvented.plan(survey, { withChanged });
  return (
    <Step title={words.title}>
      <p>{words.lead}</p>
      {failure !== null && (
        <Notice kind="problem">
          <p>{failure}</p>
        </Notice>
      )}
      {!plan && (
        <div className="presses">
          <button type="button" className="button" disabled={isLooking} onClick={() => void look()}>
            {isLooking ? words.looking : words.look}
          </button>
        </div>
      )}
      {plan?.outcome === "problem" && <ProblemNotice problem={plan} reveal={reveal} />}
      {survey?.is === "invented" && (
        <ChangedTick survey={survey} withChanged={withChanged} setWithChanged={setWithChanged} />
      )}
      {plan?.outcome === "planned" && (
        <Planned
          plan={plan}
          reveal={reveal}
          cannot={cannotDo(workbook, plan.change)}
          onRemove={() => void apply(plan.change, (receipt) => removeInvented.afterwards(plan, receipt))}
        />
      )}
    </Step>
  );
}

interface TickProps {
  readonly survey: Extract<RemoveSurvey, { is: "invented" }>;
  readonly withChanged: boolean;
  readonly setWithChanged: (withChanged: boolean) => void;
}

function ChangedTick({ survey, withChanged, setWithChanged }: TickProps) {
  const id = useId();
  const { tubes, checks, changes } = survey.found.tables;
  const count = tubes.changed.length + checks.changed.length + changes.changed.length;
  if (count === 0) return null;
  return (
    <div className="tick">
      <input type="checkbox" id={id} checked={withChanged} onChange={() => setWithChanged(!withChanged)} />
      <label htmlFor={id}>{words.withChanged(count)}</label>
    </div>
  );
}

interface PlannedProps {
  readonly plan: RemovePlan;
  readonly reveal: (place: Place) => void;
  readonly cannot: string | null;
  readonly onRemove: () => void;
}

function Planned({ plan, reveal, cannot, onRemove }: PlannedProps) {
  const more = plan.changed.length - ROWS_SHOWN;
  return (
    <>
      <Sentences of={plan.says} />
      {plan.changed.length > 0 && (
        <div className="close-stack">
          <h4>{words.changed}</h4>
          <div className="presses">
            {plan.changed.slice(0, ROWS_SHOWN).map(({ label, where }) => (
              <button
                key={label}
                type="button"
                className="press"
                aria-label={words.goTo(label)}
                onClick={() => reveal(where)}
              >
                {label}
              </button>
            ))}
          </div>
          {more > 0 && <p className="note">{words.more(more)}</p>}
        </div>
      )}
      <Cannot why={cannot} />
      <div className="presses">
        <button type="button" className="button primary" disabled={cannot !== null} onClick={onRemove}>
          {words.press(plan.removed)}
        </button>
      </div>
    </>
  );
}
