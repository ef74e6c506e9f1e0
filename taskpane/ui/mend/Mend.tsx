import { cannotDo } from "../../actions/action";
import { mend as words } from "../../texts/mend";
import { ownList } from "../../texts/own-list";
import { pane as paneTexts } from "../../texts/pane";
import type { Workbook } from "../../workbook/port";
import { ListStep } from "../add-columns/ListStep";
import { Cannot } from "../parts/Cannot";
import { CellGroups } from "../parts/CellGroups";
import { Finished } from "../parts/Finished";
import { ProblemNotice } from "../parts/ProblemNotice";
import { Sentences } from "../parts/Sentences";
import { Step } from "../parts/Step";
import { TryAgain } from "../parts/TryAgain";
import { Working } from "../parts/Working";
import type { JobProps } from "../pane/define-job";
import { ColumnStep } from "./ColumnStep";
import { DatesStep } from "./DatesStep";
import { KindsStep } from "./KindsStep";
import { PutStep } from "./PutStep";
import { SizesStep } from "./SizesStep";
import { useMend, type MendState } from "./useMend";

type Props = Pick<JobProps, "workbook" | "overview" | "today" | "isShown" | "locale">;

/** A column of somebody's own list, put right once by wording: which, what is asked, what is left, where it goes. */
export function Mend({ workbook, overview, today, isShown, locale }: Props) {
  const state = useMend({ workbook, overview, today, isShown });
  if (!workbook) return <p>{paneTexts.waiting}</p>;
  const { applying, survey, fault } = state;
  const { phase } = applying;
  if (phase.is === "working") return <Working title={words.working} {...phase} stop={applying.stop} />;
  if (phase.is === "finished")
    return (
      <Finished
        title={words.result.title[phase.words.outcome]}
        said={phase.words}
        receipt={phase.receipt}
        workbook={workbook}
        reveal={state.reveal}
        again={words.result.again}
        onAgain={state.backToChoices}
      />
    );
  if (fault !== null) return <TryAgain sentence={fault} press={ownList.lookAgain} onPress={() => void state.look()} />;
  if (!survey) return <p>{ownList.looking}</p>;
  return (
    <>
      <ListStep number={1} state={state} />
      {survey.list && <ColumnStep number={2} state={state} />}
      <Asked state={state} locale={locale} />
      <Left state={state} workbook={workbook} />
    </>
  );
}

/** What is asked of the chosen column. */
function Asked({ state, locale }: { readonly state: MendState; readonly locale: string }) {
  const { reading, choices, survey } = state;
  if (!reading || !choices || !survey?.list) return null;
  if (reading.dates) return <DatesStep number={3} state={state} questions={reading.dates} locale={locale} />;
  if (reading.sizes) return <SizesStep number={3} state={state} wordings={reading.sizes} />;
  return reading.kinds && <KindsStep number={3} state={state} found={reading.kinds} />;
}

/** What is left, where it goes, and the press. */
function Left({ state, workbook }: { readonly state: MendState; readonly workbook: Workbook }) {
  const { reading, plan, survey } = state;
  if (!reading || !plan || !survey?.list) return null;
  const { sheet } = survey.list;
  const isAskedAbove = reading.as === "sizes";
  const unread = isAskedAbove ? [] : reading.unread;
  const cells = (groups: typeof unread): number => groups.reduce((sum, group) => sum + group.cells.length, 0);
  const cannot = plan.outcome === "planned" ? cannotDo(workbook, plan.change) : null;
  return (
    <>
      <PutStep number={4} state={state} />
      <Step number={5} title={paneTexts.preview}>
        {plan.outcome === "planned" ? (
          <Sentences of={plan.says} />
        ) : (
          <ProblemNotice problem={plan} reveal={state.reveal} />
        )}
        {unread.length > 0 && (
          <div className="close-stack column-figures">
            <h4>{words.unread(cells(unread))}</h4>
            <p className="note">{words.unreadLead}</p>
            <CellGroups groups={unread} sheet={sheet} reveal={state.reveal} />
          </div>
        )}
        {reading.doubts.length > 0 && (
          <div className="close-stack column-figures">
            <h4>{words.doubts(cells(reading.doubts))}</h4>
            <CellGroups groups={reading.doubts} sheet={sheet} reveal={state.reveal} />
          </div>
        )}
      </Step>
      <div className="job-foot">
        <Cannot why={cannot} />
        <div className="presses">
          <button
            type="button"
            className="button primary"
            disabled={plan.outcome !== "planned" || cannot !== null}
            onClick={() => void state.carryOut()}
          >
            {words.press(reading.changed)}
          </button>
        </div>
      </div>
    </>
  );
}
