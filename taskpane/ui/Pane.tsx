/** The side pane: its sections, the quiet line that is always there, and the one voice for screen readers. */
import { useId, useRef, useState } from "react";
import type { SheetFunction } from "../../src/worksheet/define";
import { texts } from "../texts";
import type { Workbook } from "../workbook/port";
import { AddColumns } from "./addColumns/AddColumns";
import { Announcer } from "./announce";
import { Guide } from "./guide/Guide";
import { Help, type DayFirstWord } from "./help/Help";
import { useOverview } from "./useOverview";

export interface PaneProps {
  /** Null while the host is starting. */
  readonly workbook: Workbook | null;
  readonly functions: readonly SheetFunction[];
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

function Sections({ workbook, functions, today, locale, version, dayFirst = null, isPartOfPage = false }: PaneProps) {
  const id = useId();
  const [shown, setShown] = useState<SectionKey>("addColumns");
  const body = useRef<HTMLDivElement>(null);
  const overview = useOverview(workbook);

  function show(key: SectionKey) {
    setShown(key);
    if (body.current) body.current.scrollTop = 0;
  }

  const lead: Record<SectionKey, string> = {
    addColumns: texts.addColumns.lead,
    functions: texts.guide.lead,
    help: texts.help.lead,
  };
  const section = (key: SectionKey, content: React.ReactNode) => (
    <section hidden={shown !== key} aria-labelledby={`${id}${key}`}>
      <header>
        <h2 id={`${id}${key}`}>{texts.pane[key]}</h2>
        <p className="note">{lead[key]}</p>
      </header>
      {content}
    </section>
  );

  return (
    <div className="pane">
      <div className="pane-head">
        {!isPartOfPage && <h1>{texts.product}</h1>}
        <nav aria-label={texts.pane.sections}>
          <ul className="sections">
            {sections.map((key) => (
              <li key={key}>
                <button type="button" aria-current={shown === key ? "page" : undefined} onClick={() => show(key)}>
                  {texts.pane[key]}
                </button>
              </li>
            ))}
          </ul>
        </nav>
      </div>
      <div className="pane-body" ref={body} tabIndex={-1}>
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
        {section("functions", <Guide functions={functions} workbook={workbook} overview={overview} locale={locale} />)}
        {section("help", <Help overview={overview} locale={locale} version={version} dayFirst={dayFirst} />)}
      </div>
      <p className="pane-foot">{texts.pane.quietLine}</p>
    </div>
  );
}
