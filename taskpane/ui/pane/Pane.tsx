/**
 * The side pane: where one is and the press for the telephone call at the top, the places at the foot, the quiet line
 * that is always there, and the one voice for screen readers.
 */
import { Suspense, useCallback, useEffect, useId, useRef, useState, type RefObject } from "react";
import { recogniseCaseload } from "../../actions/caseload/recognise";
import { pane as words, product } from "../../texts/pane";
import type { Overview, Workbook } from "../../workbook/port";
import { AtSelection } from "../explain/AtSelection";
import { explain } from "../explain/job";
import { Announcer } from "../parts/announce";
import { dayText } from "../parts/dates";
import type { OpenNew } from "./open-new";
import { Fallible } from "../parts/Fallible";
import { TryAgain } from "../parts/TryAgain";
import { call, day, list, places, type Place } from "./places";
import type { DayFirstWord, Go, Job, JobProps } from "./define-job";
import { Kept } from "../parts/Kept";
import { useKeptFocus } from "./useKeptFocus";
import { useOverview } from "./useOverview";

export interface PaneProps {
  readonly workbook: Workbook | null;
  readonly today: number;
  readonly locale: string;
  readonly version: string;
  readonly openNew: OpenNew;
  readonly dayFirst?: DayFirstWord | null;
  /** The page's own heading stands elsewhere (the browser's bar). */
  readonly isPartOfPage?: boolean;
}

export function Pane(props: PaneProps) {
  return (
    <Announcer>
      <Places {...props} />
    </Announcer>
  );
}

const all: readonly Place[] = [call, ...places];

function Places({ isPartOfPage = false, dayFirst = null, ...props }: PaneProps) {
  const body = useRef<HTMLDivElement>(null);
  const whole = useRef<HTMLDivElement>(null);
  useKeptFocus(whole);
  const { overview, unread, readNow } = useOverview(props.workbook);
  const { place, jobOf, visited, enter, go } = useWhere(overview, body);

  return (
    <div className="pane" ref={whole}>
      <div className="pane-head">
        {!isPartOfPage && <h1 className="for-ears">{product}</h1>}
        <p className="where">
          <strong>{place.label}</strong> <span className="note">{dayText(props.today, props.locale)}</span>
        </p>
        <button
          type="button"
          className="button alarm"
          aria-current={place === call ? "page" : undefined}
          onClick={() => enter(call)}
        >
          {call.label}
        </button>
      </div>
      <nav className="places" aria-label={words.places}>
        <ul>
          {places.map((one) => (
            <li key={one.label}>
              <button type="button" aria-current={place === one ? "page" : undefined} onClick={() => enter(one)}>
                {one.label}
              </button>
            </li>
          ))}
        </ul>
      </nav>
      {/* It scrolls by itself and may hold nothing to press (help), so the keyboard must be able to stand on it. */}
      <div className="pane-body" ref={body} role="group" aria-label={place.label} tabIndex={0}>
        {unread !== null && <TryAgain sentence={words.unread(unread)} press={words.tryAgain} onPress={readNow} />}
        {all.map((one) => (
          <OnePlace
            key={one.label}
            place={one}
            job={jobOf(one)}
            visited={visited}
            props={{ ...props, dayFirst, overview, go, isShown: place === one }}
          />
        ))}
      </div>
      {props.workbook && overview && place !== call && jobOf(place) !== explain && (
        <AtSelection workbook={props.workbook} overview={overview} onSteps={() => go(explain)} />
      )}
      <p className="pane-foot">{words.quietLine}</p>
    </div>
  );
}

interface Where {
  readonly place: Place;
  /** The job that a place shows when it is entered: the one shown there last. */
  readonly jobOf: (place: Place) => Job;
  /** Jobs that have been shown. */
  readonly visited: readonly Job[];
  readonly enter: (place: Place) => void;
  readonly go: Go;
}

/** Where somebody stands in the pane. Until they have chosen, a ready-made caseload opens on its day. */
function useWhere(overview: Overview | null, body: RefObject<HTMLDivElement>): Where {
  const [place, setPlace] = useState(list);
  const [jobs, setJobs] = useState<ReadonlyMap<Place, Job>>(new Map());
  /* A job keeps what was typed in it once it has been shown. */
  const [visited, setVisited] = useState<readonly Job[]>([]);
  const hasChosen = useRef(false);
  const isCaseload = overview !== null && recogniseCaseload(overview).is === "caseload";
  useEffect(() => {
    if (!hasChosen.current) setPlace(isCaseload ? day : list);
  }, [isCaseload]);

  const jobOf = (one: Place): Job => jobs.get(one) ?? one.jobs[0];
  const job = jobOf(place);
  useEffect(() => {
    setVisited((before) => (before.includes(job) ? before : [...before, job]));
    if (body.current) body.current.scrollTop = 0;
  }, [body, job]);

  const enter = useCallback((one: Place) => {
    hasChosen.current = true;
    setPlace(one);
  }, []);
  const go = useCallback<Go>(
    (wanted) => {
      const where = all.find((one) => one.jobs.includes(wanted))!;
      enter(where);
      setJobs((before) => new Map(before).set(where, wanted));
    },
    [enter],
  );
  return { place, jobOf, visited, enter, go };
}

interface OnePlaceProps {
  readonly place: Place;
  /** The one of its jobs that is shown. */
  readonly job: Job;
  readonly visited: readonly Job[];
  readonly props: JobProps;
}

function OnePlace({ place, job, visited, props }: OnePlaceProps) {
  const id = useId();
  const isAlone = place.jobs.length === 1;
  return (
    <section hidden={!props.isShown} aria-labelledby={id}>
      {!isAlone && (
        <div className="parts" role="group" aria-label={words.jobs(place.label)}>
          {place.jobs.map((one) => (
            <button key={one.key} type="button" aria-pressed={job === one} onClick={() => props.go(one)}>
              {one.label}
            </button>
          ))}
        </div>
      )}
      {/* Where presses name the jobs, the pressed one is the heading that is seen. */}
      <header className="for-ears">
        <h2 id={id}>{job.label}</h2>
        {!isAlone && <p>{job.lead}</p>}
      </header>
      <Fallible>
        <Suspense fallback={<p>{words.loading}</p>}>
          {place.jobs.map(
            (one) =>
              visited.includes(one) && (
                <Kept key={one.key} isShown={props.isShown && job === one}>
                  <one.Content {...props} isShown={props.isShown && job === one} />
                </Kept>
              ),
          )}
        </Suspense>
      </Fallible>
    </section>
  );
}
