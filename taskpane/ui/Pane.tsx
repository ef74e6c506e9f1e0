/** The side pane: its sections, the quiet line that is always there, and the one voice for screen readers. */
import { lazy, Suspense, useId, useRef, useState, type ReactNode } from "react";
import { pane as words, product } from "../texts/pane";
import type { Workbook } from "../workbook/port";
import { AddColumns } from "./addColumns/AddColumns";
import { Announcer } from "./announce";
import type { DayFirstWord } from "./help/Help";
import { Fallible } from "./parts/Fallible";
import { useOverview } from "./useOverview";

/* Fetched when first shown. The guide brings every function with its examples, which nothing else in the pane needs. */
const Guide = lazy(() =>
  import(/* webpackChunkName: "guide" */ "./guide/Guide").then(({ Guide }) => ({ default: Guide })),
);
const Help = lazy(() => import(/* webpackChunkName: "help" */ "./help/Help").then(({ Help }) => ({ default: Help })));

export interface PaneProps {
  /** Null while the host is starting. */
  readonly workbook: Workbook | null;
  /** Today as a day number, by the computer's clock. */
  readonly today: number;
  /** How dates are written on screen: the host's language. */
  readonly locale: string;
  readonly version: string;
  /** How typed dates are read; null where the host decides (Excel). */
  readonly dayFirst?: DayFirstWord | null;
  /** The page's own heading stands elsewhere (the browser's bar). */
  readonly isPartOfPage?: boolean;
}

const sections = ["addColumns", "functions", "help"] as const;
type SectionKey = (typeof sections)[number];

export function Pane(props: PaneProps) {
  return (
    <Announcer>
      <Sections {...props} />
    </Announcer>
  );
}

function Sections({ workbook, today, locale, version, dayFirst = null, isPartOfPage = false }: PaneProps) {
  const id = useId();
  const [shown, setShown] = useState<SectionKey>("addColumns");
  /* A section keeps what was typed in it once it has been shown. */
  const [visited, setVisited] = useState<readonly SectionKey[]>(["addColumns"]);
  const body = useRef<HTMLDivElement>(null);
  const overview = useOverview(workbook);

  function show(key: SectionKey) {
    setShown(key);
    setVisited((before) => (before.includes(key) ? before : [...before, key]));
    if (body.current) body.current.scrollTop = 0;
  }

  const section = (key: SectionKey, content: ReactNode) => (
    <section hidden={shown !== key} aria-labelledby={`${id}${key}`}>
      <header>
        <h2 id={`${id}${key}`}>{words[key]}</h2>
        <p className="note">{words.leads[key]}</p>
      </header>
      <Fallible>
        <Suspense fallback={<p>{words.loading}</p>}>{visited.includes(key) && content}</Suspense>
      </Fallible>
    </section>
  );

  return (
    <div className="pane">
      <div className="pane-head">
        {!isPartOfPage && <h1>{product}</h1>}
        <nav aria-label={words.sections}>
          <ul className="sections">
            {sections.map((key) => (
              <li key={key}>
                <button type="button" aria-current={shown === key ? "page" : undefined} onClick={() => show(key)}>
                  {words[key]}
                </button>
              </li>
            ))}
          </ul>
        </nav>
      </div>
      {/* It scrolls by itself and may hold nothing to press (help), so the keyboard must be able to stand on it. */}
      <div className="pane-body" ref={body} role="group" aria-label={words[shown]} tabIndex={0}>
        {section(
          "addColumns",
          <AddColumns
            workbook={workbook}
            overview={overview}
            today={today}
            locale={locale}
            isShown={shown === "addColumns"}
          />,
        )}
        {section("functions", <Guide workbook={workbook} overview={overview} locale={locale} />)}
        {section("help", <Help overview={overview} locale={locale} version={version} dayFirst={dayFirst} />)}
      </div>
      <p className="pane-foot">{words.quietLine}</p>
    </div>
  );
}
