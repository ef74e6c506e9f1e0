import { useState } from "react";
import type { Reading, SizeCell, SizeGroup } from "../../actions/convert-sizes/interface";
import { convertSizes as convertTexts } from "../../texts/convert-sizes";
import { capital } from "../../texts/pieces";
import { parseArea } from "../../workbook/area";
import type { Place, SheetId } from "../../workbook/port";

const words = convertTexts.unread;
/** Cells of a reason shown at once; the rest in pages. */
const FIRST = 5;
const PAGE = 50;

interface Props {
  readonly reading: Reading;
  readonly sheet: SheetId;
  readonly reveal: (place: Place) => void;
}

/** The cells that were not read and those to look at, by reason, each with a press that goes there. */
export function Unread({ reading, sheet, reveal }: Props) {
  const goTo = ({ address }: SizeCell) => reveal({ sheet, area: parseArea(address)! });
  return (
    <>
      {reading.notRead > 0 && (
        <div className="close-stack column-figures">
          <h4>{words.title(reading.notRead)}</h4>
          <p className="note">{words.lead}</p>
          <Groups groups={reading.unread} goTo={goTo} />
        </div>
      )}
      {reading.doubtful > 0 && (
        <div className="close-stack column-figures">
          <h4>{words.doubtful(reading.doubtful)}</h4>
          <Groups groups={reading.doubts} goTo={goTo} />
        </div>
      )}
    </>
  );
}

interface GroupsProps {
  readonly groups: readonly SizeGroup[];
  readonly goTo: (cell: SizeCell) => void;
}

const Groups = ({ groups, goTo }: GroupsProps) => (
  <ul className="rows">
    {groups.map((group) => (
      <li key={group.reason} className="close-stack">
        <span>
          <strong>{capital(group.reason)}</strong> <span className="note">{words.cells(group.cells.length)}</span>
        </span>
        <Cells cells={group.cells} goTo={goTo} />
      </li>
    ))}
  </ul>
);

function Cells({ cells, goTo }: { readonly cells: readonly SizeCell[]; readonly goTo: GroupsProps["goTo"] }) {
  const [shown, setShown] = useState(FIRST);
  const hidden = cells.length - shown;
  return (
    <>
      <ul className="plain-list">
        {cells.slice(0, shown).map((cell) => (
          <li key={cell.address}>
            <button
              type="button"
              className="press"
              aria-label={words.goTo(cell.address, cell.text)}
              onClick={() => goTo(cell)}
            >
              {cell.address}
            </button>{" "}
            <span className="samples">{cell.text}</span>
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
