import type { Reading } from "../../actions/convert-sizes/interface";
import { convertSizes as convertTexts } from "../../texts/convert-sizes";
import type { Place, SheetId } from "../../workbook/port";
import { CellGroups } from "../parts/CellGroups";

const words = convertTexts.unread;

interface Props {
  readonly reading: Reading;
  readonly sheet: SheetId;
  readonly reveal: (place: Place) => void;
}

/** The cells that were not read and those to look at, by reason, each with a press that goes there. */
export function Unread({ reading, sheet, reveal }: Props) {
  return (
    <>
      {reading.notRead > 0 && (
        <div className="close-stack column-figures">
          <h4>{words.title(reading.notRead)}</h4>
          <p className="note">{words.lead}</p>
          <CellGroups groups={reading.unread} sheet={sheet} reveal={reveal} />
        </div>
      )}
      {reading.doubtful > 0 && (
        <div className="close-stack column-figures">
          <h4>{words.doubtful(reading.doubtful)}</h4>
          <CellGroups groups={reading.doubts} sheet={sheet} reveal={reveal} />
        </div>
      )}
    </>
  );
}
