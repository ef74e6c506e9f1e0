/** The recall on paper: a tick box for everybody who must be told, with room for when and by whom. */
import { groups, type FoundLots, type LotRow } from "../../actions/find-lot";
import { findLot as words } from "../../texts/find-lot";
import { PaperFoot, type PaperFacts } from "../print/Paper";
import { countedText, openText, writtenLots } from "./counted";

export function LotPage({ found, paper }: { readonly found: FoundLots; readonly paper: PaperFacts }) {
  const similar = found.similar.map(({ lot, why, rows }) => words.similarLine(lot, rows.length, words.likeness[why]));
  return (
    <>
      <h1>{words.page.heading(writtenLots(found))}</h1>
      <p>
        {countedText(found)} {found.open.length > 0 && <strong>{openText(found)}</strong>}
      </p>
      {similar.length > 0 && <p>{words.page.similar(similar)}</p>}
      {groups.map((group) => (
        <Rows
          key={group}
          title={words.groups[group]}
          columns={words.page.columns}
          rows={found.found.filter((row) => row.group === group)}
        />
      ))}
      {groups.map((group) => (
        <Rows
          key={group}
          title={words.openIn(words.groups[group])}
          columns={words.page.openColumns}
          rows={found.open
            .filter((row) => row.group === group)
            .map((row) => ({ ...row, lot: row.lot || words.why[row.why] }))}
        />
      ))}
      <p>{words.caution}</p>
      <PaperFoot {...paper} />
    </>
  );
}

interface RowsProps {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly LotRow[];
}

function Rows({ title, columns, rows }: RowsProps) {
  if (rows.length === 0) return null;
  return (
    <section>
      <h2>
        {title} <span>{rows.length}</span>
      </h2>
      <table className="week">
        <thead>
          <tr>
            {columns.map((column) => (
              <th scope="col" key={column}>
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={`${row.list.key} ${row.row} ${row.column}`}>
              <td className="tick-box" />
              <th scope="row">{row.id || words.noId}</th>
              <td>{row.about}</td>
              <td>{row.lot}</td>
              <td />
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
