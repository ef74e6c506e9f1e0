import { agreement } from "../../actions/clinic-settings/agreement";
import type { CheckSurvey } from "../../actions/check-sheet";
import { checkSheet as words } from "../../texts/check-sheet";
import { ownList } from "../../texts/own-list";
import { pane as paneTexts } from "../../texts/pane";
import { capital } from "../../texts/pieces";
import { ListStep } from "../add-columns/ListStep";
import { CellGroups } from "../parts/CellGroups";
import { Step } from "../parts/Step";
import { TryAgain } from "../parts/TryAgain";
import type { JobProps } from "../pane/define-job";
import { PaperFoot, PrintPress, type PaperFacts } from "../print/Paper";
import { useCheckSheet } from "./useCheckSheet";

type Props = Pick<JobProps, "workbook" | "overview" | "today" | "isShown" | "locale" | "version">;

/** What cannot be right in the list in which somebody stands, each cell one press away, and on paper. */
export function CheckSheet({ workbook, overview, today, isShown, locale, version }: Props) {
  const state = useCheckSheet(workbook, overview, today, isShown);
  if (!workbook || !overview) return <p>{paneTexts.waiting}</p>;
  const { survey, fault } = state;
  if (fault !== null) return <TryAgain sentence={fault} press={ownList.lookAgain} onPress={() => void state.look()} />;
  if (!survey) return <p>{ownList.looking}</p>;
  const paper = { overview, today, locale, version, agreed: agreement(overview, today).sentence };
  return (
    <>
      <ListStep number={1} state={state} />
      {survey.list && survey.sheet !== null && (
        <Step number={2} title={words.title}>
          <Found survey={survey} />
          {survey.groups.length > 0 && (
            <>
              <CellGroups groups={survey.groups} sheet={survey.sheet} reveal={state.reveal} />
              <div className="presses">
                <PrintPress press={words.print} page={<Findings survey={survey} paper={paper} />} />
              </div>
            </>
          )}
        </Step>
      )}
    </>
  );
}

function Found({ survey: { groups, doubtful, rows, notLookedFor } }: { readonly survey: CheckSurvey }) {
  return (
    <>
      <p>
        <strong>{groups.length === 0 ? words.none(rows) : words.counts(doubtful, rows)}</strong>
      </p>
      {groups.length > 0 && <p className="note">{words.lead}</p>}
      {notLookedFor.length > 0 && <p className="note">{words.notLookedFor(notLookedFor)}</p>}
    </>
  );
}

/** The same on paper, every cell of it, with room to tick. */
function Findings({ survey, paper }: { readonly survey: CheckSurvey; readonly paper: PaperFacts }) {
  return (
    <>
      <h1>{words.heading(survey.list!.label)}</h1>
      <Found survey={survey} />
      {survey.groups.map(({ reason, cells }) => (
        <section key={reason}>
          <h2>
            {capital(reason)} <span>{cells.length}</span>
          </h2>
          <table className="week">
            <thead>
              <tr>
                {words.columns.map((column) => (
                  <th scope="col" key={column}>
                    {column}
                  </th>
                ))}
              </tr>
            </thead>
            <tbody>
              {cells.map(({ address, text }) => (
                <tr key={address}>
                  <td>{address}</td>
                  <td>{text}</td>
                  <td />
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      ))}
      <PaperFoot {...paper} />
    </>
  );
}
