/** The section Now: the telephone call, and what is written down day by day, each one press away. */
import { useState, type ComponentType } from "react";
import { recogniseCaseload } from "../../actions/caseload/recognise";
import { agreement } from "../../actions/clinic-settings/agreement";
import { now } from "../../texts/now";
import { pane as paneTexts } from "../../texts/pane";
import type { Overview, Workbook } from "../../workbook/port";
import { Kept } from "../parts/Kept";
import { Notice } from "../parts/Notice";
import { AddPerson } from "./AddPerson";
import { RecordChange } from "./RecordChange";
import { RecordCheck } from "./RecordCheck";
import { DoFirst, TubeOut } from "./TubeOut";
import type { SectionProps } from "../sectionProps";

type Props = Pick<SectionProps, "workbook" | "overview" | "today" | "locale" | "isShown">;

export interface JobProps {
  readonly workbook: Workbook;
  readonly overview: Overview;
  readonly today: number;
  readonly locale: string;
  /** Whether the clinic has agreed its settings, in a sentence. */
  readonly agreed: string;
}

const jobs = ["tubeOut", "check", "change", "person"] as const;
type Job = (typeof jobs)[number];
const forms: Readonly<Record<Job, ComponentType<JobProps>>> = {
  tubeOut: TubeOut,
  check: RecordCheck,
  change: RecordChange,
  person: AddPerson,
};

export function Now({ workbook, overview, today, locale, isShown }: Props) {
  const [job, setJob] = useState<Job>("tubeOut");
  /* A job keeps what was typed in it while the telephone rings. */
  const [visited, setVisited] = useState<readonly Job[]>(["tubeOut"]);
  if (!workbook || !overview) return <p>{paneTexts.waiting}</p>;
  const found = recogniseCaseload(overview);
  const agreed = agreement(overview, today).sentence;

  function show(key: Job) {
    setJob(key);
    setVisited((before) => (before.includes(key) ? before : [...before, key]));
  }

  return (
    <div className="stack">
      <div className="parts" role="group" aria-label={now.jobs}>
        {jobs.map((key) => (
          <button key={key} type="button" aria-pressed={job === key} onClick={() => show(key)}>
            {now.job[key]}
          </button>
        ))}
      </div>
      {found.is === "caseload" ? (
        visited.map((key) => {
          const Form = forms[key];
          return (
            <Kept key={key} isShown={isShown && job === key}>
              <Form workbook={workbook} overview={overview} today={today} locale={locale} agreed={agreed} />
            </Kept>
          );
        })
      ) : (
        <>
          {job === "tubeOut" && <DoFirst />}
          <Notice kind="caution">
            <p>{found.sentence}</p>
            {found.is === "none" && <p>{now.noCaseload}</p>}
          </Notice>
        </>
      )}
    </div>
  );
}
