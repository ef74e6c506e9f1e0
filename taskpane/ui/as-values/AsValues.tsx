import { useCallback, useEffect, useId, useRef, useState } from "react";
import { afterValues, planValues, surveyValues, type ValuesSurvey } from "../../actions/as-values";
import { cannotDo } from "../../actions/action";
import type { Wish } from "../../actions/list/interface";
import { asValues as words } from "../../texts/as-values";
import { ownList } from "../../texts/own-list";
import { pane as paneTexts } from "../../texts/pane";
import { ListStep } from "../add-columns/ListStep";
import type { JobProps } from "../pane/define-job";
import { Cannot } from "../parts/Cannot";
import { Finished } from "../parts/Finished";
import { Step } from "../parts/Step";
import { TryAgain } from "../parts/TryAgain";
import { useApply } from "../parts/useApply";
import { useReveal } from "../parts/useReveal";
import { Working } from "../parts/Working";

/** Columns that were added here: kept as what they say now, and given their formulas back. */
export function AsValues({
  workbook,
  overview,
  today,
  isShown,
}: Pick<JobProps, "workbook" | "overview" | "today" | "isShown">) {
  const { phase, apply, stop, backToChoices } = useApply(workbook);
  const reveal = useReveal(workbook);
  const [survey, setSurvey] = useState<ValuesSurvey | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [chosen, setChosen] = useState<readonly number[]>([]);
  const looks = useRef(0);
  const wished = useRef<Wish>({});
  const look = useCallback(
    async (wish: Wish = wished.current) => {
      if (!workbook) return;
      const mine = ++looks.current;
      wished.current = wish;
      try {
        const fresh = await surveyValues(workbook, { today, ...wish });
        if (mine !== looks.current) return;
        setFault(null);
        setSurvey(fresh);
      } catch (error) {
        if (mine === looks.current) setFault(ownList.lookFailed(String(error)));
      }
    },
    [today, workbook],
  );
  useEffect(() => {
    if (isShown && overview && phase.is === "choosing") void look();
  }, [isShown, look, overview, phase.is]);
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
          setChosen([]);
          backToChoices();
        }}
      />
    );
  if (fault !== null) return <TryAgain sentence={fault} press={ownList.lookAgain} onPress={() => void look()} />;
  if (!survey) return <p>{ownList.looking}</p>;
  const plan = planValues(survey, chosen);
  const cannot = plan.outcome === "planned" ? cannotDo(workbook, plan.change) : null;
  const press = plan.outcome === "planned" && plan.to === "formulas" ? words.toFormulas : words.toValues;
  return (
    <>
      <p className="note">{words.lead}</p>
      <ListStep number={1} state={{ survey, look: (wish) => look(wish ?? {}), reveal }} />
      {survey.list && (
        <Step number={2} title={words.choose}>
          {survey.columns.length + survey.kept.length === 0 && <p>{words.none}</p>}
          <Ticks of={survey.columns} chosen={chosen} onChosen={setChosen} />
          {survey.kept.length > 0 && <p className="note">{words.back}</p>}
          <Ticks of={survey.kept} chosen={chosen} onChosen={setChosen} />
          <Cannot why={cannot} />
          <div className="presses">
            <button
              type="button"
              className="button primary"
              disabled={plan.outcome !== "planned" || cannot !== null}
              onClick={() =>
                plan.outcome === "planned" && void apply(plan.change, (receipt) => afterValues(plan, receipt))
              }
            >
              {press(Math.max(1, plan.outcome === "planned" ? plan.headers.length : 1))}
            </button>
            <span className="note">{plan.outcome === "planned" ? plan.says.join(" ") : plan.sentence}</span>
          </div>
        </Step>
      )}
    </>
  );
}

interface TicksProps {
  readonly of: readonly { readonly column: number; readonly header: string; readonly day?: string }[];
  readonly chosen: readonly number[];
  readonly onChosen: (chosen: readonly number[]) => void;
}

function Ticks({ of, chosen, onChosen }: TicksProps) {
  const id = useId();
  return (
    <>
      {of.map(({ column, header, day }) => (
        <div className="tick" key={column}>
          <input
            type="checkbox"
            id={`${id}${column}`}
            checked={chosen.includes(column)}
            onChange={(event) =>
              onChosen(event.target.checked ? [...chosen, column] : chosen.filter((other) => other !== column))
            }
          />
          <label htmlFor={`${id}${column}`}>{day === undefined ? header : `${header} (${day})`}</label>
        </div>
      ))}
    </>
  );
}
