/** One picture with its sentence first, its figures as a table, and a copy to take away. */
import { useRef, useState, type ReactNode } from "react";
import type { PutFigure } from "../../actions/pictures/put-in-sheet";
import { pictures as words } from "../../texts/pictures";
import { useAnnounce } from "../parts/announce";
import { PutInSheet } from "./PutInSheet";
import { pngOf, svgFile } from "./copy";
import { figureText, type FigureRow } from "./figure-table";

interface Props {
  readonly title: string;
  /** What is seen, in words; the picture follows. */
  readonly sentences: readonly string[];
  /** What this picture alone lets a person choose. */
  readonly choice?: ReactNode;
  /** Stands under the sentences: what else must be said or asked before the picture. */
  readonly more?: ReactNode;
  readonly picture: ReactNode;
  readonly columns: readonly string[];
  readonly rows: readonly FigureRow[];
  /** What its sheet is called; left out: it is not put into one. */
  readonly sheetName?: string;
  /** The chart that its figures give in a sheet; left out: a table alone. */
  readonly chart?: PutFigure["chart"];
  /** On paper: no presses, the table open. */
  readonly isPaper: boolean;
}

export function Figure({
  title,
  sentences,
  choice,
  more,
  picture,
  columns,
  rows,
  sheetName,
  chart = null,
  isPaper,
}: Props) {
  const drawn = useRef<HTMLDivElement>(null);
  const [said, setSaid] = useState("");
  const announce = useAnnounce();
  const svg = () => drawn.current!.querySelector("svg")!;

  async function copy() {
    const outcome = await pngOf(svg())
      .then((png) => navigator.clipboard.write([new ClipboardItem({ "image/png": png })]))
      .then(
        () => words.copied,
        () => words.notCopied,
      );
    setSaid(outcome);
    announce(outcome);
  }

  const table = (
    <table className="figures">
      <thead>
        <tr>
          {columns.map((column, i) => (
            <th scope="col" key={i}>
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, i) => (
          <tr key={i}>
            {row.map((cell, column) =>
              column === 0 ? (
                <th scope="row" key={column}>
                  {figureText(cell)}
                </th>
              ) : (
                <td key={column}>{figureText(cell)}</td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
  return (
    <section className="step figure">
      {isPaper ? <h2>{title}</h2> : <h3>{title}</h3>}
      {!isPaper && choice}
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {!isPaper && more}
      {picture && <div ref={drawn}>{picture}</div>}
      {rows.length > 0 &&
        (isPaper ? (
          table
        ) : (
          <details>
            <summary>{words.figures}</summary>
            {table}
          </details>
        ))}
      {picture && !isPaper && (
        <div className="presses">
          <button type="button" className="button" onClick={() => void copy()}>
            {words.copy}
          </button>
          <button type="button" className="button" onClick={() => svgFile(svg(), title)}>
            {words.save}
          </button>
          {sheetName !== undefined && <PutInSheet figure={{ sheetName, title, sentences, columns, rows, chart }} />}
          {said !== "" && <p className="note">{said}</p>}
        </div>
      )}
    </section>
  );
}
