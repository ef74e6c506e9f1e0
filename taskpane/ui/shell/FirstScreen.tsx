/** What a newcomer sees: one question, three ways on, and what the page does to a list. No sheet until one is open. */
import { useMemo, type ReactNode } from "react";
import { addMonths } from "../../../src/maths/calendar";
import { changeState } from "../../../src/columns/change-state";
import { settingNamed } from "../../../src/settings/index";
import { shell } from "../../texts/shell";
import { pane as paneTexts, product } from "../../texts/pane";
import { dateText } from "../parts/dates";
import { OpenButton } from "./Bar";
import { exampleRows } from "./example-list";

const words = shell.first;

interface Props {
  readonly today: number;
  readonly locale: string;
  /** The grid is on its way: a choice that was made is waiting for it. */
  readonly isWaiting: boolean;
  /** Why no workbook can be opened at all. */
  readonly failure: string | null;
  /** How far the opening of a file is, and the press that stops it. */
  readonly work: ReactNode;
  readonly onOpen: (file: File) => void;
  readonly onShow: () => void;
  readonly onCaseload: () => void;
  readonly onEmpty: () => void;
}

export function FirstScreen({ today, locale, isWaiting, failure, work, onOpen, onShow, onCaseload, onEmpty }: Props) {
  const isOff = isWaiting || failure !== null;
  return (
    <div className="first">
      <header className="first-bar">
        <p className="first-name">{product}</p>
        <p className="note">{words.stays}</p>
      </header>
      <main className="first-main" aria-label={product}>
        <div className="first-ways">
          <h1>{words.question}</h1>
          <p className="first-lead">{words.lead}</p>
          {failure !== null && (
            <p className="notice problem" role="alert">
              {failure}
            </p>
          )}
          {work}
          <Way title={words.own} note={words.ownNote} isMain>
            <OpenButton className="button primary" label={words.open} isDisabled={isOff} onOpen={onOpen} />
          </Way>
          <Way title={words.show} note={words.showNote(exampleRows.length)}>
            <button type="button" className="button" disabled={isOff} onClick={onShow}>
              {words.try}
            </button>
          </Way>
          <Way title={words.caseload} note={words.caseloadNote}>
            <button type="button" className="button" disabled={isOff} onClick={onCaseload}>
              {words.start}
            </button>
          </Way>
          <p className="presses">
            <button type="button" className="press" disabled={isOff} onClick={onEmpty}>
              {words.empty}
            </button>
            <span className="note" role="status">
              {isWaiting ? shell.starting : ""}
            </span>
          </p>
        </div>
        <BeforeAndAfter today={today} locale={locale} />
      </main>
      <p className="first-foot">{paneTexts.quietLine}</p>
    </div>
  );
}

interface WayProps {
  readonly title: string;
  readonly note: string;
  readonly isMain?: boolean;
  readonly children: ReactNode;
}

const Way = ({ title, note, isMain = false, children }: WayProps) => (
  <section className={isMain ? "way main" : "way"}>
    <div>
      <h2>{title}</h2>
      <p className="note">{note}</p>
    </div>
    {children}
  </section>
);

/** Four rows of the invented list. */
const SHOWN = ["D-003", "D-002", "D-006", "D-001"];
const LOOKS: Readonly<Record<string, string>> = {
  "past limit": "act",
  overdue: "act",
  "due soon": "soon",
  later: "quiet",
  "no set change": "quiet",
};
/** As the settings begin; a clinic sets its own. */
const INTERVAL = settingNamed("Int_Balloon_G").default;
const RULE = { soonDays: settingNamed("Soon_Days").default, farMonths: settingNamed("Far_Months").default };

/** Worked out by the rule of the columns themselves, so that it shows what will stand there. */
function BeforeAndAfter({ today, locale }: Pick<Props, "today" | "locale">) {
  const rows = useMemo(
    () =>
      SHOWN.map((id) => {
        const { identifier, kind, lastChange } = exampleRows.find((row) => row.identifier === id)!;
        const last = typeof lastChange === "number" ? today - lastChange : null;
        const due = last === null ? null : addMonths(last, INTERVAL);
        const { state } = changeState({ due: due ?? "no date", last }, { asOf: today, ...RULE });
        return { identifier, kind, last, due, state };
      }),
    [today],
  );
  const day = (serial: number | null) => (serial === null ? words.blank : dateText(serial, locale));
  const [identifier, kind, lastChange, changeDue, change] = words.columns;
  return (
    <div className="first-shown">
      <div className="card">
        <table>
          <caption>{words.before}</caption>
          <thead>
            <tr>
              <th scope="col">{identifier}</th>
              <th scope="col">{kind}</th>
              <th scope="col" className="number">
                {lastChange}
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.identifier}>
                <td>{row.identifier}</td>
                <td>{row.kind}</td>
                <td className="number">{day(row.last)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="first-step">{words.step}</p>
      <div className="card">
        <table>
          <caption>{words.after}</caption>
          <thead>
            <tr>
              <th scope="col">{identifier}</th>
              <th scope="col" className="number">
                {lastChange}
              </th>
              <th scope="col" className="number added">
                {changeDue}
              </th>
              <th scope="col" className="added">
                {change}
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.identifier}>
                <td>{row.identifier}</td>
                <td className="number">{day(row.last)}</td>
                <td className="number">{day(row.due)}</td>
                <td>
                  <span className={`state ${LOOKS[row.state] ?? "missing"}`}>{row.state}</span>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="note">{words.invented(INTERVAL)}</p>
    </div>
  );
}
