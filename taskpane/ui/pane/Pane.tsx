/**
 * The side pane: where one is and the press for the telephone call at the top, the places at the foot, the quiet line
 * that is always there, and the one voice for screen readers.
 */
import { Suspense, useCallback, useEffect, useId, useRef, useState } from "react";
import { recogniseCaseload } from "../../actions/caseload/recognise";
import { pane as words, product } from "../../texts/pane";
import type { Workbook } from "../../workbook/port";
import { AtSelection } from "../explain/AtSelection";
import { Announcer } from "../parts/announce";
import { dayText } from "../parts/dates";
import type { DayFirstWord } from "./part-props";
import type { OpenNew } from "./open-new";
import { Fallible } from "../parts/Fallible";
import { TryAgain } from "../parts/TryAgain";
import { places, tubeOut, type Part, type Place } from "./places";
import type { Go, PartProps } from "./part-props";
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

const FIRST: Place["key"] = "list";
/** Where a ready-made caseload is open, the day comes first. */
const FIRST_ON_CASELOAD: Place["key"] = "today";
const all: readonly Place[] = [tubeOut, ...places];

function Places({ isPartOfPage = false, dayFirst = null, ...props }: PaneProps) {
  const [shown, setShown] = useState<Place["key"]>(FIRST);
  const [parts, setParts] = useState<Partial<Record<Place["key"], Part["key"]>>>({});
  /* A part keeps what was typed in it once it has been shown. */
  const [visited, setVisited] = useState<readonly Part["key"][]>([]);
  const body = useRef<HTMLDivElement>(null);
  const whole = useRef<HTMLDivElement>(null);
  useKeptFocus(whole);
  const { overview, unread, readNow } = useOverview(props.workbook);
  const hasChosen = useRef(false);
  const isCaseload = overview !== null && recogniseCaseload(overview).is === "caseload";
  useEffect(() => {
    if (!hasChosen.current) setShown(isCaseload ? FIRST_ON_CASELOAD : FIRST);
  }, [isCaseload]);

  const place = all.find(({ key }) => key === shown)!;
  const part = partOf(place);
  useEffect(() => {
    setVisited((before) => (before.includes(part) ? before : [...before, part]));
    if (body.current) body.current.scrollTop = 0;
  }, [part]);

  function partOf({ key, parts: [first] }: Place): Part["key"] {
    return parts[key] ?? first!.key;
  }

  const go = useCallback<Go>((key, wanted) => {
    hasChosen.current = true;
    setShown(key);
    if (wanted !== undefined) setParts((before) => ({ ...before, [key]: wanted }));
  }, []);

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
          aria-current={shown === tubeOut.key ? "page" : undefined}
          onClick={() => go(tubeOut.key)}
        >
          {tubeOut.label}
        </button>
      </div>
      <nav className="places" aria-label={words.places}>
        <ul>
          {places.map(({ key, label }) => (
            <li key={key}>
              <button type="button" aria-current={shown === key ? "page" : undefined} onClick={() => go(key)}>
                {label}
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
            key={one.key}
            place={one}
            part={partOf(one)}
            visited={visited}
            show={(key) => go(one.key, key)}
            props={{ ...props, dayFirst, overview, go, isShown: shown === one.key }}
          />
        ))}
      </div>
      {props.workbook && overview && shown !== tubeOut.key && part !== "explain" && (
        <AtSelection workbook={props.workbook} overview={overview} onSteps={() => go("more", "explain")} />
      )}
      <p className="pane-foot">{words.quietLine}</p>
    </div>
  );
}

interface OnePlaceProps {
  readonly place: Place;
  /** The part that is shown. */
  readonly part: Part["key"];
  readonly visited: readonly Part["key"][];
  readonly show: (part: Part["key"]) => void;
  readonly props: PartProps;
}

function OnePlace({ place, part, visited, show, props }: OnePlaceProps) {
  const id = useId();
  const isAlone = place.parts.length === 1;
  const { label } = place.parts.find(({ key }) => key === part)!;
  return (
    <section hidden={!props.isShown} aria-labelledby={id}>
      {!isAlone && (
        <div className="parts" role="group" aria-label={words.parts(place.label)}>
          {place.parts.map((one) => (
            <button key={one.key} type="button" aria-pressed={part === one.key} onClick={() => show(one.key)}>
              {one.label}
            </button>
          ))}
        </div>
      )}
      {/* Where presses name the parts, the pressed one is the heading that is seen. */}
      <header className="for-ears">
        <h2 id={id}>{label}</h2>
        {!isAlone && <p>{words.leads[part]}</p>}
      </header>
      <Fallible>
        <Suspense fallback={<p>{words.loading}</p>}>
          {place.parts.map(
            ({ key, Content }) =>
              visited.includes(key) && (
                <Kept key={key} isShown={props.isShown && part === key}>
                  <Content {...props} isShown={props.isShown && part === key} />
                </Kept>
              ),
          )}
        </Suspense>
      </Fallible>
    </section>
  );
}
