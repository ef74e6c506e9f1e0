/** Today: how many rows ask for what, the most urgent of them, and what is written down day by day. */
import { useEffect, useState } from "react";
import { callsIn } from "../../actions/caseload/calls";
import { namesOf } from "../../actions/caseload/read";
import { recogniseCaseload } from "../../actions/caseload/recognise";
import type { FormKey } from "../../actions/clinic-settings";
import { agreement } from "../../actions/clinic-settings/agreement";
import type { UrgencyClass } from "../../../src/caseload/urgency";
import { classes, type TodayRow } from "../../actions/today";
import { readOwnDay, type OwnDay } from "../../actions/today/own-list";
import { pane as paneTexts } from "../../texts/pane";
import { today as words } from "../../texts/today";
import type { Overview, Workbook } from "../../workbook/port";
import type { RecordingJob } from "../forms/recording-job";
import { EntryForms, WhileWriting } from "../clinic-settings/EntryForms";
import { useClinicSettings } from "../clinic-settings/useClinicSettings";
import { Kept } from "../parts/Kept";
import { Notice } from "../parts/Notice";
import { Step } from "../parts/Step";
import { useReveal } from "../parts/useReveal";
import type { JobProps } from "../pane/define-job";
import { PrintPress, type PaperFacts } from "../print/Paper";
import { addColumns } from "../add-columns/job";
import { clinicSettings } from "../clinic-settings/job";
import { setUp } from "../set-up/job";
import { showOnly } from "../show-only/job";
import { recordings } from "./recordings";
import { useDay } from "./useDay";
import { WearsFast } from "./WearsFast";
import { WeekList } from "./WeekList";

export function Today({ workbook, overview, today, locale, version, isShown, go }: JobProps) {
  const [job, setJob] = useState<RecordingJob | null>(null);
  /* A job keeps what was typed in it while the telephone rings. */
  const [visited, setVisited] = useState<readonly RecordingJob[]>([]);
  if (!workbook || !overview) return <p>{paneTexts.waiting}</p>;
  const found = recogniseCaseload(overview);
  if (found.is !== "caseload")
    return (
      <>
        {found.is === "none" && <OwnGlance key={overview.book} {...{ workbook, overview, today, isShown, go }} />}
        <Notice kind={found.is === "none" ? "plain" : "caution"}>
          <p>{found.is === "none" ? words.noCaseload : found.sentence}</p>
          <div className="presses">
            <button type="button" className="button" onClick={() => go(addColumns)}>
              {words.toList}
            </button>
            <button type="button" className="button" onClick={() => go(setUp)}>
              {words.toSetUp}
            </button>
          </div>
        </Notice>
      </>
    );
  const agreed = agreement(overview, today);

  function start(one: RecordingJob) {
    setJob(one);
    setVisited((before) => (before.includes(one) ? before : [...before, one]));
  }

  return (
    <>
      <Kept isShown={isShown && job === null}>
        {/* What was read of one workbook is never shown while another one stands there. */}
        <AtAGlance
          key={overview.book}
          workbook={workbook}
          isShown={isShown && job === null}
          go={go}
          paper={{ overview, today, locale, version, agreed: agreed.sentence }}
        />
        <WearsFast key={`wear ${overview.book}`} {...{ workbook, overview, today }} isShown={isShown && job === null} />
        <Step title={words.write}>
          <div className="presses">
            {recordings.map((one) => (
              <button key={one.key} type="button" className="button" onClick={() => start(one)}>
                {one.label}
              </button>
            ))}
          </div>
        </Step>
        <Before {...{ workbook, overview, today, locale }} look={() => go(clinicSettings)} />
      </Kept>
      {visited.map((one) => (
        <Kept key={one.key} isShown={isShown && job === one}>
          <div className="presses">
            <button type="button" className="button" onClick={() => setJob(null)}>
              {words.back}
            </button>
          </div>
          <h3>{one.heading}</h3>
          <one.Form workbook={workbook} overview={overview} today={today} locale={locale} agreed={agreed.sentence} />
        </Kept>
      ))}
    </>
  );
}

type BeforeProps = Pick<JobProps, "today" | "locale"> & {
  readonly workbook: Workbook;
  readonly overview: Overview;
  /** Leads to all settings: whoever agrees them has to see them. */
  readonly look: () => void;
};

/** What the clinic has not entered, once for all rows, with the forms to enter it here. */
function Before({ workbook, overview, today, locale, look }: BeforeProps) {
  const state = useClinicSettings(workbook, today);
  const agreed = agreement(overview, today);
  const isWithoutNumber = callsIn(namesOf(overview)).some(({ isMissing }) => isMissing);
  const missing: readonly FormKey[] = [
    ...(isWithoutNumber ? (["calls"] as const) : []),
    ...(agreed.agreed ? [] : (["agreement"] as const)),
  ];
  if (missing.length === 0 && state.applying.phase.is === "choosing") return null;
  return (
    <WhileWriting state={state} workbook={workbook} again={words.back}>
      <Notice kind="caution">
        <p>
          <strong>{words.before}</strong>
        </p>
        {isWithoutNumber && <p>{words.noNumbers}</p>}
        {!agreed.agreed && <p>{agreed.sentence}</p>}
      </Notice>
      {missing.map((form) => (
        <details className="fold" key={form}>
          <summary>{words.enter[form]}</summary>
          {form === "agreement" && (
            <div className="presses">
              <button type="button" className="button" onClick={look}>
                {words.look}
              </button>
            </div>
          )}
          <EntryForms forms={[form]} {...{ workbook, overview, today, locale, state }} />
        </details>
      ))}
    </WhileWriting>
  );
}

type GlanceProps = Pick<JobProps, "isShown" | "go"> & { readonly workbook: Workbook; readonly paper: PaperFacts };

/** So many of the most urgent rows are named; the list has the others. */
const NAMED = 5;
const asking = ["act", "soon", "missing"] as const;

function AtAGlance({ workbook, isShown, go, paper }: GlanceProps) {
  const { overview } = paper;
  const day = useDay(workbook, overview, isShown);
  if (!day) return <p>{paneTexts.loading}</p>;
  const named = day.rows.filter(({ asks }) => asks === "act" || asks === "soon" || asks === "missing").slice(0, NAMED);
  const left = asking.reduce((sum, one) => sum + day.counts[one], 0) - named.length;
  return (
    <>
      <Counts day={day} of={words.counted(day.rows.length)} />
      {named.length === 0 && <p>{words.none}</p>}
      {asking.map((asks) => {
        const rows = named.filter((row) => row.asks === asks);
        return rows.length === 0 ? null : (
          <Worst key={asks} title={words.headings[asks]} rows={rows} workbook={workbook} />
        );
      })}
      <div className="presses">
        {left > 0 && (
          <button type="button" className="press" onClick={() => go(showOnly)}>
            {words.more(left)}
          </button>
        )}
        <PrintPress press={words.printWeek} page={<WeekList day={day} paper={paper} />} />
      </div>
    </>
  );
}

interface OwnGlanceProps {
  readonly workbook: Workbook;
  readonly overview: Overview;
  readonly today: number;
  readonly isShown: boolean;
  readonly go: JobProps["go"];
}

/** On somebody's own list: what the columns that were added there say. */
function OwnGlance({ workbook, overview, today, isShown, go }: OwnGlanceProps) {
  const [day, setDay] = useState<OwnDay | null>(null);
  useEffect(() => {
    if (!isShown) return;
    let isCurrent = true;
    readOwnDay(workbook, today).then(
      (read) => isCurrent && setDay(read),
      /* A host that is busy tells again when it is done; until then no count is better than an old one. */
      () => isCurrent && setDay(null),
    );
    return () => void (isCurrent = false);
  }, [isShown, overview, today, workbook]);
  if (!day) return null;
  const urgent = day.rows.filter(({ asks }) => asks !== "quiet");
  const named = urgent.slice(0, NAMED);
  const left = urgent.length - named.length;
  return (
    <>
      <Counts day={day} of={words.own.counted(day.rows.length, day.label)} quiet={words.own.quiet} />
      <p className="note">{words.own.read(day.read)}</p>
      {asking.map((asks) => {
        const rows = named.filter((row) => row.asks === asks);
        return rows.length === 0 ? null : (
          <Worst key={asks} title={words.headings[asks]} rows={rows} workbook={workbook} />
        );
      })}
      {left > 0 && (
        <div className="presses">
          <button type="button" className="press" onClick={() => go(showOnly)}>
            {words.more(left)}
          </button>
        </div>
      )}
    </>
  );
}

interface CountsProps {
  readonly day: { readonly counts: Readonly<Partial<Record<UrgencyClass, number>>> };
  /** Of how many. */
  readonly of: string;
  readonly quiet?: string;
}

/** The bar says in lengths what the figures under it say. */
function Counts({ day: { counts }, of, quiet = words.classes.quiet }: CountsProps) {
  const there = classes.filter((one) => (counts[one] ?? 0) > 0);
  return (
    <div className="close-stack">
      <div className="bar-of-counts" aria-hidden="true">
        {there.map((one) => (
          <span key={one} className={`state ${one}`} style={{ flexGrow: counts[one] }}>
            {counts[one]}
          </span>
        ))}
      </div>
      <ul className="legend">
        {there.map((one) => (
          <li key={one}>
            <span className={`swatch state ${one}`} aria-hidden="true" />
            <strong>{counts[one]}</strong> {one === "quiet" ? quiet : words.classes[one]}
          </li>
        ))}
      </ul>
      <p className="note">{of}</p>
    </div>
  );
}

interface WorstProps {
  readonly title: string;
  readonly rows: readonly Pick<TodayRow, "id" | "says" | "asks" | "place">[];
  readonly workbook: Workbook;
}

function Worst({ title, rows, workbook }: WorstProps) {
  const reveal = useReveal(workbook);
  return (
    <div className="close-stack">
      <h3>{title}</h3>
      <ul className="worst">
        {rows.map(({ id, says, asks, place }, i) => {
          const word = says === "" ? words.noWord : says;
          return (
            <li key={`${id} ${i}`}>
              <button type="button" onClick={() => reveal(place)}>
                <strong>{id || words.noIdentifier}</strong>
                <span>
                  <span className={`state ${asks}`}>{word}</span>
                  <span className="for-ears">{words.show}</span>
                </span>
              </button>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
