import { useEffect, useState } from "react";
import { shell as words } from "../../texts/shell";
import type { Grid, SelectedRow } from "../../workbook/embedded/interface";

/** Arrow keys held down move the selection faster than anybody reads. */
const PAUSE_MS = 120;

/** The selected row as text: the grid is a picture to a screen reader. */
export function SelectedRowText({ grid }: { readonly grid: Grid | null }) {
  const [isOpen, setOpen] = useState(false);
  const [row, setRow] = useState<SelectedRow | null>(null);
  useEffect(() => {
    if (!grid || !isOpen) return;
    let pause: ReturnType<typeof setTimeout> | undefined;
    // not put off by what comes while it waits: after an edit the grid goes on telling of itself for a while
    const stop = grid.workbook.onChange(() => {
      pause ??= setTimeout(() => {
        pause = undefined;
        setRow(grid.selectedRow());
      }, PAUSE_MS);
    });
    setRow(grid.selectedRow());
    return () => {
      clearTimeout(pause);
      stop();
    };
  }, [grid, isOpen]);
  return (
    <details className="selected-row fold" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.selectedRow}</summary>
      {row === null ? (
        <p className="note">{words.noRow}</p>
      ) : (
        <table>
          <caption>{words.rowTitle(row.row, row.sheet)}</caption>
          <thead>
            <tr>
              <th scope="col">{words.cell}</th>
              <th scope="col">{words.header}</th>
              <th scope="col">{words.value}</th>
            </tr>
          </thead>
          <tbody>
            {row.entries.map(({ address, header, value }) => (
              <tr key={address}>
                <td>{address}</td>
                <th scope="row">{header === "" ? words.noHeader : header}</th>
                <td>{value === "" ? words.blank : value}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </details>
  );
}
