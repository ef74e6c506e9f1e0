/**
 * Where the grid (0.25.1) puts the colours of a cell together on each repaint: it merges what all rules of the cell say,
 * key by key, also where none of them says anything, which in a caseload is most cells: a quarter of a repaint
 * (measured). A cell of which no rule says anything is left as it is, and what rules say together is kept for as long as
 * the grid keeps what each says.
 * tests/hosts/grid/colours-put-together.test.ts says whether a new version still needs this.
 */
import { ConditionalFormattingService } from "@univerjs/sheets-conditional-formatting";

type OfCell<T> = (unitId: string, sheetId: string, row: number, column: number) => T;

interface Said {
  readonly result: unknown;
}

/** What the grid's service has inside. */
export interface Colours {
  readonly _conditionalFormattingViewModelV2: { readonly getCellCfs: OfCell<readonly Said[] | undefined> };
  composeStyle: OfCell<unknown>;
}

const saysNothing = ({ result }: Said): boolean =>
  !result || (typeof result === "object" && Object.keys(result).length === 0);

export function puttingTogetherOnce(composeStyle: Colours["composeStyle"]): Colours["composeStyle"] {
  const together = new WeakMap<readonly Said[], unknown>();
  return function (this: Colours, unitId, sheetId, row, column) {
    const said = this._conditionalFormattingViewModelV2.getCellCfs(unitId, sheetId, row, column);
    if (said === undefined || said.every(saysNothing)) return null;
    if (!together.has(said)) together.set(said, composeStyle.call(this, unitId, sheetId, row, column));
    return together.get(said);
  };
}

let isHastened = false;

/** Before the grid starts. */
export function hastenColours(): void {
  if (isHastened) return;
  isHastened = true;
  const service = ConditionalFormattingService.prototype as unknown as Colours;
  service.composeStyle = puttingTogetherOnce(service.composeStyle);
}
