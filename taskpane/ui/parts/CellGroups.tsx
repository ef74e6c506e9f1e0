import { useState } from "react";
import { capital } from "../../texts/pieces";
import { ownList as words } from "../../texts/own-list";
import { parseArea } from "../../workbook/area";
import type { Place, SheetId } from "../../workbook/port";

/** Cells of a reason shown at once; the rest in pages. */
const FIRST = 5;
const PAGE = 50;

interface Cell {
  /** "C14" */
  readonly address: string;
  /** What stands there. */
  readonly text: string;
}

interface Group {
  readonly reason: string;
  readonly cells: readonly Cell[];
}

interface Props {
  readonly groups: readonly Group[];
  readonly sheet: SheetId;
  readonly reveal: (place: Place) => void;
}

/** Cells by reason, each with a press that goes there. */
export const CellGroups = ({ groups, sheet, reveal }: Props) => (
  <ul className="rows">
    {groups.map((group) => (
      <li key={group.reason} className="close-stack">
        <span>
          <strong>{capital(group.reason)}</strong> <span className="note">{words.cells(group.cells.length)}</span>
        </span>
        <CellList cells={group.cells} sheet={sheet} reveal={reveal} />
      </li>
    ))}
  </ul>
);

interface ListProps {
  readonly cells: readonly Cell[];
  readonly sheet: SheetId;
  readonly reveal: (place: Place) => void;
}

/** Some cells at once, each with a press that goes there. */
export function CellList({ cells, sheet, reveal }: ListProps) {
  const [shown, setShown] = useState(FIRST);
  const hidden = cells.length - shown;
  return (
    <>
      <ul className="plain-list">
        {cells.slice(0, shown).map(({ address, text }) => (
          <li key={address}>
            <button
              type="button"
              className="press"
              aria-label={words.goTo(address, text)}
              onClick={() => reveal({ sheet, area: parseArea(address)! })}
            >
              {address}
            </button>{" "}
            <span className="samples">{text}</span>
          </li>
        ))}
      </ul>
      {hidden > 0 && (
        <button type="button" className="press" onClick={() => setShown((now) => now + PAGE)}>
          {words.more(hidden)}
        </button>
      )}
    </>
  );
}
