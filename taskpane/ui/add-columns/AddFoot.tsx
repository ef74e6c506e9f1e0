import { columnLetters } from "../../../src/columns/formula";
import type { AddColumnsPlan } from "../../actions/add-columns/interface";
import { cannotDo, type Problem } from "../../actions/action";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import type { Workbook } from "../../workbook/port";
import { Cannot } from "../parts/Cannot";
import type { AddColumnsState } from "./useAddColumns";

const words = addColumnsTexts.preview;

interface Props {
  readonly state: AddColumnsState;
  /** Null while nothing is ticked. */
  readonly plan: AddColumnsPlan | Problem | null;
  readonly hasFaultyNumbers: boolean;
  readonly workbook: Workbook;
}

/** The press and what it does, in sight from the first moment, however long the choices are. */
export function AddFoot({ state, plan, hasFaultyNumbers, workbook }: Props) {
  const planned = plan?.outcome === "planned" ? plan : null;
  const cannot = planned && cannotDo(workbook, planned.change);
  const refreshed = planned?.columns.filter(({ refresh }) => refresh !== null).length ?? 0;
  const isOff = planned === null || cannot !== null || hasFaultyNumbers;
  return (
    <div className="job-foot">
      <Cannot why={cannot} />
      {hasFaultyNumbers && <p className="fault">{addColumnsTexts.numbers.mend}</p>}
      <div className="presses">
        <button type="button" className="button primary" disabled={isOff} onClick={() => void state.add()}>
          {planned ? words.press(planned.columns.length - refreshed, refreshed) : words.nothingYet}
        </button>
        <span className="note">
          {planned ? consequence(planned, refreshed) : plan ? words.seeAbove : words.tickFirst}
        </span>
      </div>
    </div>
  );
}

/** "H and I, nothing overwritten; 7 of 12 rows get no answer" */
function consequence({ columns, place }: AddColumnsPlan, refreshed: number): string {
  const added = columns.length - refreshed;
  const last = place.area.left + place.area.columns - 1;
  const letters = Array.from({ length: added }, (_, i) => columnLetters(last - added + 1 + i));
  const without = Math.max(...columns.map(({ filled, of }) => of - filled));
  return words.consequence(letters, refreshed, without, columns[0]!.of);
}
