/** The side pane: its sections, the quiet line that is always there, and the one voice for screen readers. */
import { Suspense, useEffect, useId, useRef, useState } from "react";
import { recogniseCaseload } from "../actions/caseload/recognise";
import { pane as words, product } from "../texts/pane";
import type { Workbook } from "../workbook/port";
import { Announcer } from "./announce";
import type { DayFirstWord } from "./help/Help";
import type { OpenNew } from "./openNew";
import { Fallible } from "./parts/Fallible";
import { TryAgain } from "./parts/TryAgain";
import { sections, type Section } from "./sections";
import type { SectionProps } from "./sectionProps";
import { Kept } from "./parts/Kept";
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
      <Sections {...props} />
    </Announcer>
  );
}

const FIRST: Section["key"] = "caseload";
/** Where a ready-made caseload is open, its daily jobs come first. */
const FIRST_ON_CASELOAD: Section["key"] = "now";

function Sections({ isPartOfPage = false, dayFirst = null, ...props }: PaneProps) {
  const [shown, setShown] = useState<Section["key"]>(FIRST);
  /* A section keeps what was typed in it once it has been shown. */
  const [visited, setVisited] = useState<readonly Section["key"][]>([FIRST]);
  const body = useRef<HTMLDivElement>(null);
  const whole = useRef<HTMLDivElement>(null);
  useKeptFocus(whole);
  const { overview, unread, readNow } = useOverview(props.workbook);
  const hasChosen = useRef(false);
  const isCaseload = overview !== null && recogniseCaseload(overview).is === "caseload";
  useEffect(() => {
    if (!hasChosen.current) open(isCaseload ? FIRST_ON_CASELOAD : FIRST);
  }, [isCaseload]);

  function open(key: Section["key"]) {
    setShown(key);
    setVisited((before) => (before.includes(key) ? before : [...before, key]));
    if (body.current) body.current.scrollTop = 0;
  }

  function show(key: Section["key"]) {
    hasChosen.current = true;
    open(key);
  }

  return (
    <div className="pane" ref={whole}>
      <div className="pane-head">
        {!isPartOfPage && <h1>{product}</h1>}
        <nav aria-label={words.sections}>
          <ul className="sections">
            {sections.map(({ key, label }) => (
              <li key={key}>
                <button type="button" aria-current={shown === key ? "page" : undefined} onClick={() => show(key)}>
                  {label}
                </button>
              </li>
            ))}
          </ul>
        </nav>
      </div>
      {/* It scrolls by itself and may hold nothing to press (help), so the keyboard must be able to stand on it. */}
      <div
        className="pane-body"
        ref={body}
        role="group"
        aria-label={sections.find(({ key }) => key === shown)?.label}
        tabIndex={0}
      >
        {unread !== null && <TryAgain sentence={words.unread(unread)} press={words.tryAgain} onPress={readNow} />}
        {sections.map((section) => (
          <OneSection
            key={section.key}
            section={section}
            isVisited={visited.includes(section.key)}
            props={{ ...props, dayFirst, overview, isShown: shown === section.key }}
          />
        ))}
      </div>
      <p className="pane-foot">{words.quietLine}</p>
    </div>
  );
}

interface OneSectionProps {
  readonly section: Section;
  readonly isVisited: boolean;
  readonly props: SectionProps;
}

function OneSection({ section, isVisited, props }: OneSectionProps) {
  const id = useId();
  const [first] = section.parts;
  const [shown, setShown] = useState(first!.key);
  const [visited, setVisited] = useState<readonly string[]>([first!.key]);

  function show(key: string) {
    setShown(key);
    setVisited((before) => (before.includes(key) ? before : [...before, key]));
  }

  return (
    <section hidden={!props.isShown} aria-labelledby={id}>
      <header>
        <h2 id={id}>{section.label}</h2>
        <p className="note">{words.leads[section.key]}</p>
      </header>
      {section.parts.length > 1 && (
        <div className="parts" role="group" aria-label={words.parts(section.label)}>
          {section.parts.map(({ key, label }) => (
            <button key={key} type="button" aria-pressed={shown === key} onClick={() => show(key)}>
              {label}
            </button>
          ))}
        </div>
      )}
      <Fallible>
        <Suspense fallback={<p>{words.loading}</p>}>
          {isVisited &&
            section.parts.map(
              ({ key, Content }) =>
                visited.includes(key) && (
                  <Kept key={key} isShown={props.isShown && shown === key}>
                    <Content {...props} isShown={props.isShown && shown === key} />
                  </Kept>
                ),
            )}
        </Suspense>
      </Fallible>
    </section>
  );
}
