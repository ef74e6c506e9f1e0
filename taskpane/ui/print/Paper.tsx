/**
 * A page for paper. It stands beside the page of the screen, out of sight, for as long as it is being printed; the style
 * sheet for print then shows it and nothing else.
 */
import { useEffect, useState, type ReactNode } from "react";
import { createPortal } from "react-dom";
import { INVENTED_ON } from "../../../src/caseload/names";
import { AS_OF } from "../../../src/columns/as-of";
import { readDate } from "../../../src/worksheet/dates";
import { namesOf, named } from "../../actions/caseload/read";
import { pane as paneTexts } from "../../texts/pane";
import { print as words } from "../../texts/print";
import type { Overview } from "../../workbook/port";
import { dateText } from "../parts/dates";

export interface PaperFacts {
  readonly overview: Overview;
  /** By the computer's clock. */
  readonly today: number;
  readonly locale: string;
  readonly version: string;
  /** Whether the clinic has agreed its settings, in a sentence. */
  readonly agreed: string;
}

interface Props {
  /** What the press says. */
  readonly press: string;
  readonly page: ReactNode;
}

/** The press that prints a page. */
export function PrintPress({ press, page }: Props) {
  const [isPrinting, setPrinting] = useState(false);
  useEffect(() => {
    if (!isPrinting) return;
    const done = () => setPrinting(false);
    window.addEventListener("afterprint", done);
    window.print();
    return () => window.removeEventListener("afterprint", done);
  }, [isPrinting]);
  return (
    <>
      <button type="button" className="button" onClick={() => setPrinting(true)}>
        {press}
      </button>
      {isPrinting && createPortal(<div className="paper">{page}</div>, document.body)}
    </>
  );
}

/** Under every page: from when it is, who agreed the settings, and what decides. */
export function PaperFoot({ overview, today, locale, version, agreed }: PaperFacts) {
  const names = namesOf(overview);
  const asOf = readDate(named(names, AS_OF) ?? "");
  const isInvented = (named(names, INVENTED_ON) ?? "") !== "";
  return (
    <footer className="paper-foot">
      <p>
        {words.printed(dateText(today, locale))}{" "}
        {typeof asOf === "number" ? words.dataAsOn(dateText(asOf, locale)) : words.noDataDay} {words.version(version)}{" "}
        <strong>{agreed}</strong>
        {isInvented && <strong> {words.invented}</strong>}
      </p>
      <p>{paneTexts.quietLine}</p>
    </footer>
  );
}
