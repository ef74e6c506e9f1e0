/** Print: the pages for paper, and where the pages of one person, one lot or one list are made. */
import { recogniseCaseload } from "../../actions/caseload/recognise";
import { agreement } from "../../actions/clinic-settings/agreement";
import { pane as paneTexts } from "../../texts/pane";
import { print as printTexts } from "../../texts/print";
import { today as todayTexts } from "../../texts/today";
import type { Overview, Workbook } from "../../workbook/port";
import { checkSheet } from "../check-sheet/job";
import { findLot } from "../find-lot/job";
import { overdueTable } from "../overdue-table/job";
import type { Job, JobProps } from "../pane/define-job";
import { Step } from "../parts/Step";
import { pictures } from "../pictures/job";
import { serviceFigures } from "../service-figures/job";
import { useDay } from "../today/useDay";
import { WeekList } from "../today/WeekList";
import { tubeOut } from "../tube-out/job";
import { PrintPress, type PaperFacts } from "./Paper";

const words = printTexts.pages;

/** Pages that are made where their question is asked. */
const elsewhere: readonly { readonly job: Job; readonly page: keyof typeof words.elsewhere; readonly any: boolean }[] =
  [
    { job: tubeOut, page: "tubeOut", any: false },
    { job: pictures, page: "pictures", any: false },
    { job: serviceFigures, page: "board", any: false },
    { job: overdueTable, page: "overdue", any: true },
    { job: findLot, page: "lot", any: true },
    { job: checkSheet, page: "findings", any: true },
  ];

export function Print({ workbook, overview, today, locale, version, isShown, go }: JobProps) {
  if (!workbook || !overview) return <p>{paneTexts.waiting}</p>;
  const isCaseload = recogniseCaseload(overview).is === "caseload";
  const agreed = agreement(overview, today).sentence;
  return (
    <>
      {isCaseload && <Week {...{ workbook, isShown }} paper={{ overview, today, locale, version, agreed }} />}
      {elsewhere
        .filter(({ any }) => any || isCaseload)
        .map(({ job, page }) => (
          <Step key={page} title={words.elsewhere[page].title}>
            <p className="note">{words.elsewhere[page].note}</p>
            <div className="presses">
              <button type="button" className="button" onClick={() => go(job)}>
                {words.goTo(job.label)}
              </button>
            </div>
          </Step>
        ))}
      {isCaseload && <p className="note">{words.foot}</p>}
    </>
  );
}

interface WeekProps {
  readonly workbook: Workbook;
  readonly isShown: boolean;
  readonly paper: PaperFacts & { readonly overview: Overview };
}

function Week({ workbook, isShown, paper }: WeekProps) {
  const day = useDay(workbook, paper.overview, isShown);
  return (
    <Step title={words.week.title}>
      <p className="note">{words.week.note}</p>
      <div className="presses">
        {day ? (
          <PrintPress press={todayTexts.printWeek} page={<WeekList day={day} paper={paper} />} />
        ) : (
          <p>{paneTexts.loading}</p>
        )}
      </div>
    </Step>
  );
}
