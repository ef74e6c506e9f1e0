import { useId } from "react";
import {
  afterAll,
  afterShown,
  afterWithoutDate,
  showAll,
  showWithoutDate,
  urgencyOrder,
  viewOf,
  withoutDateSentence,
  type ShowSurvey,
} from "../../actions/show-only";
import type { SurveyedList } from "../../actions/list/interface";
import { ownList } from "../../texts/own-list";
import { pane as paneTexts } from "../../texts/pane";
import { showOnly as words } from "../../texts/show-only";
import { Cannot } from "../parts/Cannot";
import { TryAgain } from "../parts/TryAgain";
import { Notice } from "../parts/Notice";
import { Step } from "../parts/Step";
import { ColumnsField } from "./ColumnsField";
import { FacetField } from "./FacetField";
import { useShowOnly, type ShowOnlyState } from "./useShowOnly";
import type { JobProps } from "../pane/define-job";

type Props = Pick<JobProps, "workbook" | "overview" | "today" | "isShown">;

export function ShowOnly({ workbook, overview, today, isShown }: Props) {
  const state = useShowOnly(workbook, overview, today, isShown);
  if (!workbook) return <p>{paneTexts.waiting}</p>;
  if (state.failure !== null)
    return <TryAgain sentence={state.failure} press={ownList.lookAgain} onPress={state.look} />;
  if (!state.survey) return <p>{ownList.looking}</p>;
  const can = workbook.can("showRows");
  return <Choosing state={state} survey={state.survey} cannot={can === true ? null : can} />;
}

/** With more headings than this all are folded: what is chosen by is found among them at a glance. */
const OPEN_AT_ONCE = 3;

interface ChoosingProps {
  readonly state: ShowOnlyState;
  readonly survey: ShowSurvey;
  readonly cannot: string | null;
}

function Choosing({ state, survey, cannot }: ChoosingProps) {
  const { choices } = state;
  const view = viewOf(survey, choices);
  const { list } = survey.list;
  return (
    <>
      <ListChoice state={state} survey={survey} />
      <Cannot why={cannot} />
      {list && (
        <>
          <OrderStep state={state} list={list} isFiltered={survey.hidden.size > 0} />
          <DatesStep state={state} survey={survey} sentence={withoutDateSentence(survey, view, choices)} />
          <Step title={words.choose}>
            <p className="note">{survey.facets.length > 0 ? words.chooseLead : words.nothingToChoose}</p>
            {view.facets.map((counted) => (
              <FacetField
                key={counted.facet.role}
                counted={counted}
                isOpen={view.facets.length <= OPEN_AT_ONCE && counted === view.facets[0]}
                onTick={(keys) =>
                  state.choose({ ...choices, ticked: { ...choices.ticked, [counted.facet.role]: keys } })
                }
              />
            ))}
            <ColumnsField survey={survey} choices={choices} choose={state.choose} />
          </Step>
          <Step title={paneTexts.preview}>
            {view.says.length === 0 && <p className="note">{words.nothingTicked}</p>}
            {view.says.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
            {survey.hidden.size > 0 && <p className="note">{words.hiddenNow(survey.hidden.size)}</p>}
            {state.said && (
              <Notice kind={state.said.outcome === "done" ? "done" : "problem"}>
                {state.said.sentences.map((sentence) => (
                  <p key={sentence}>{sentence}</p>
                ))}
                <div className="presses">
                  <button type="button" className="press" onClick={() => state.reveal(list)}>
                    {paneTexts.show}
                  </button>
                </div>
              </Notice>
            )}
          </Step>
          <div className="job-foot">
            <div className="presses">
              <button
                type="button"
                className="button primary"
                disabled={view.change === null || state.isWorking || cannot !== null}
                onClick={() =>
                  void state.apply((fresh) => {
                    const seen = viewOf(fresh, choices);
                    return seen.change && { change: seen.change, afterwards: (receipt) => afterShown(seen, receipt) };
                  })
                }
              >
                {words.show(view.shown)}
              </button>
              <button
                type="button"
                className="button"
                disabled={survey.hidden.size === 0 || state.isWorking}
                onClick={() =>
                  void state.apply((fresh) =>
                    fresh.list.list
                      ? { change: showAll(fresh.list.list), afterwards: (receipt) => afterAll(fresh, receipt) }
                      : null,
                  )
                }
              >
                {words.showAll}
              </button>
              {view.change && (
                <button type="button" className="button" onClick={() => state.choose({ ...choices, ticked: {} })}>
                  {words.clear}
                </button>
              )}
            </div>
          </div>
        </>
      )}
    </>
  );
}

function ListChoice({ state, survey }: { readonly state: ShowOnlyState; readonly survey: ShowSurvey }) {
  const id = useId();
  const { lists, list, sentence } = survey.list;
  return (
    <Step
      title={ownList.title}
      press={
        <button type="button" className="press" onClick={state.look}>
          {ownList.lookAgain}
        </button>
      }
    >
      <p>{sentence}</p>
      {lists.length > 1 && (
        <div className="row-field">
          <label htmlFor={id}>{ownList.choose}</label>
          <select id={id} value={list?.key ?? ""} onChange={({ target }) => state.chooseList(target.value)}>
            {!list && <option value="">{ownList.chooseOne}</option>}
            {lists.map(({ key, label }) => (
              <option key={key} value={key}>
                {label}
              </option>
            ))}
          </select>
        </div>
      )}
    </Step>
  );
}

interface OrderProps {
  readonly state: ShowOnlyState;
  readonly list: SurveyedList;
  readonly isFiltered: boolean;
}

/** Only for a list that has an order of its own. */
function OrderStep({ state, list, isFiltered }: OrderProps) {
  const order = urgencyOrder(list);
  if (!order) return null;
  return (
    <Step
      title={words.order.title}
      press={
        <button
          type="button"
          className="press"
          disabled={isFiltered || state.isWorking}
          onClick={() => void state.sort(order)}
        >
          {words.order.press}
        </button>
      }
    >
      <p className="note">{isFiltered ? words.order.filtered : words.order.note}</p>
    </Step>
  );
}

interface DatesProps {
  readonly state: ShowOnlyState;
  readonly survey: ShowSurvey;
  readonly sentence: string;
}

/** Whoever has no usable date is named before anything is chosen, and one press away. */
function DatesStep({ state, survey, sentence }: DatesProps) {
  const change = showWithoutDate(survey);
  return (
    <Step title={words.dates}>
      <p>{sentence}</p>
      {change && (
        <div className="presses">
          <button
            type="button"
            className="button"
            disabled={state.isWorking}
            onClick={() =>
              void state.apply((fresh) => {
                const rows = showWithoutDate(fresh);
                return rows && { change: rows, afterwards: (receipt) => afterWithoutDate(fresh, receipt) };
              })
            }
          >
            {words.showThese}
          </button>
        </div>
      )}
    </Step>
  );
}
