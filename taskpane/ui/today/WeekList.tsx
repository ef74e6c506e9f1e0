/** The week list on paper: room to tick and to write, so that nobody copies it by hand. */
import { weekOf, type WeekRow } from "../../actions/today/week";
import type { Day } from "../../actions/today";
import { today as todayTexts } from "../../texts/today";
import { dateText, dayText } from "../parts/dates";
import { PaperFoot, type PaperFacts } from "../print/Paper";

const words = todayTexts.week;

export function WeekList({ day, paper }: { readonly day: Day; readonly paper: PaperFacts }) {
  const week = weekOf(day, paper.today);
  const { locale } = paper;
  return (
    <>
      <h1>{words.title(dayText(week.from, locale), dayText(week.until, locale))}</h1>
      <p>{words.lead(day.rows.length)}</p>
      {(["act", "due", "arrange", "ask"] as const).map((part) => (
        <Rows key={part} title={words.parts[part]} rows={week[part]} locale={locale} />
      ))}
      <PaperFoot {...paper} />
    </>
  );
}

interface RowsProps {
  readonly title: string;
  readonly rows: readonly WeekRow[];
  readonly locale: string;
}

function Rows({ title, rows, locale }: RowsProps) {
  const dayIn = ({ day, isBooked }: WeekRow) =>
    day === null ? words.noDay : isBooked ? words.booked(dateText(day, locale)) : words.due(dateText(day, locale));
  return (
    <section>
      <h2>
        {title} <span>{rows.length}</span>
      </h2>
      {rows.length === 0 ? (
        <p>{words.none}</p>
      ) : (
        <table className="week">
          <thead>
            <tr>
              <th scope="col">{words.done}</th>
              {words.columns.map((column) => (
                <th scope="col" key={column}>
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, i) => (
              <tr key={`${row.id} ${i}`}>
                <td className="tick-box" />
                <th scope="row">{row.id || todayTexts.noIdentifier}</th>
                <td>
                  {row.says === "" ? todayTexts.noWord : row.says}
                  {row.missing !== "" && <span className="missing-too"> ({row.missing})</span>}
                </td>
                <td>{row.tube === "" ? words.noTube : row.tube}</td>
                <td>{dayIn(row)}</td>
                <td />
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
