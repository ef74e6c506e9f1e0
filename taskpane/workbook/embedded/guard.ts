/**
 * What the grid could do but a saved file could not hold is not begun: a sentence says so. Saving changes a stranger's
 * file cell by cell; rows, columns and sheets that move would leave its charts, rules and formulas pointing astray.
 */
import { CanceledError, CommandType, ICommandService, type IRange } from "@univerjs/core";
import type { Engine } from "./engine";

const IN_EXCEL = "Do that in Excel, then open the file here again.";

type Kind = "anywhere" | "in a file";

/** Commands by what they do; the first that fits counts. */
const REFUSED: readonly (readonly [RegExp, Kind, string])[] = [
  [
    /\.(?:insert-(?:multi-)?rows?|insert-row|remove-row|move-rows|table-(?:insert|remove)-row)|append-row/,
    "in a file",
    `Rows are not inserted, removed or moved in a file. ${IN_EXCEL} New rows can be typed below the last one; copy the formulas down to them.`,
  ],
  [
    /\.(?:insert-(?:multi-)?cols?|insert-col|remove-col|move-cols|table-(?:insert|remove)-col)/,
    "in a file",
    `Columns are not inserted, removed or moved in a file. ${IN_EXCEL} New columns can be typed at the right.`,
  ],
  [/\.(?:insert-range|delete-range)/, "in a file", `Cells are not pushed aside in a file. ${IN_EXCEL}`],
  [
    /\.(?:move-range)/,
    "in a file",
    `Cells are not moved in a file, because formulas and charts elsewhere would lose them. Copy them, or use Excel.`,
  ],
  [
    /\.(?:insert-sheet|remove-sheet|copy-worksheet|copy-sheet|set-worksheet-name|set-worksheet-order|set-worksheet-hidden|set-worksheet-right-to-left|set-tab-color|set-workbook-name)/,
    "in a file",
    `Sheets are not added, removed, renamed or moved in a file. ${IN_EXCEL}`,
  ],
  [
    /\.(?:add-worksheet-merge|remove-worksheet-merge)/,
    "in a file",
    `Cells are not merged or unmerged in a file. ${IN_EXCEL}`,
  ],
  [
    /\.(?:add-table|delete-table|set-table-config|add-table-theme|remove-table-theme)|sheet\.command\.(?:insert|create)-table/,
    "anywhere",
    `Tables are not made or changed here. ${IN_EXCEL}`,
  ],
  [/protection|permission-points/, "anywhere", `Protection is not changed here. ${IN_EXCEL}`],
  [
    /conditional-rule|conditional-formatting\.panel/,
    "anywhere",
    `Conditional formats are not changed here. ${IN_EXCEL}`,
  ],
  [/data-validation/, "anywhere", `Validation rules are not changed here. ${IN_EXCEL}`],
  [
    /\.(?:update-note|delete-note|add-note|add-popup-note|add-note-popup)/,
    "anywhere",
    `Notes are not changed here. ${IN_EXCEL}`,
  ],
  [/defined-name/, "anywhere", `Names are not changed here. ${IN_EXCEL}`],
  [
    /\.(?:set-border|set-font|set-range-font|set-underline|set-range-underline|set-strike|set-range-stroke|set-stroke|set-overline|set-range-(?:sub|super)script|set-text-rotation|set-vertical-text-align)/,
    "anywhere",
    `This look is not saved by this page. ${IN_EXCEL}`,
  ],
  [
    /\.(?:set-col-hidden|hide-col|set-selected-cols-visible|set-col-visible|set-specific-cols)/,
    "in a file",
    `Columns are not hidden or shown in a file. ${IN_EXCEL}`,
  ],
  [
    /\.(?:set-frozen|cancel-frozen|set-(?:selection|row|col|first-row|first-column)-frozen|toggle-gridlines|set-gridlines)/,
    "in a file",
    `How the sheet is held on screen is not saved by this page. ${IN_EXCEL}`,
  ],
  [
    /\.(?:smart-toggle-filter|set-filter-range|set-filter-criteria|clear-filter-criteria|remove-sheet-filter|set-table-filter)/,
    "in a file",
    "",
  ],
];

/** Read, not changed: the rules' own popups ask for these while looking. */
const HARMLESS = /show-popup|\.operation\.|toggle-note-popup/;

export interface Ward {
  readonly isFile: () => boolean;
  readonly say: (sentence: string) => void;
  /** The sheet a command works on is protected in the file. */
  readonly isProtected: (sheetId: string | undefined) => string | undefined;
  /** Why cells of a range may not change their rows; undefined where they may. */
  readonly isTied: (sheetId: string | undefined, range: IRange) => string | undefined;
  /** The pane's own changes pass. */
  readonly isOurs: () => boolean;
}

const WRITES =
  /set-range-values|clear-selection|auto-fill|sort-range|reorder-range|set-style|paste|text-to-number|split-text/;

const SORTS = /\.(?:sort-range|reorder-range)$/;

export function guard({ injector }: Engine, ward: Ward): void {
  injector.get(ICommandService).beforeCommandExecuted((command) => {
    if (command.type !== CommandType.COMMAND || ward.isOurs() || HARMLESS.test(command.id)) return;
    const found = REFUSED.find(([pattern, kind]) => pattern.test(command.id) && (kind === "anywhere" || ward.isFile()));
    if (found && found[2] !== "") {
      ward.say(found[2]);
      throw new CanceledError();
    }
    if (!WRITES.test(command.id)) return;
    const { subUnitId, range } = (command.params ?? {}) as { subUnitId?: string; range?: IRange };
    const tie = SORTS.test(command.id) && range ? ward.isTied(subUnitId, range) : undefined;
    if (tie !== undefined) {
      ward.say(tie);
      throw new CanceledError();
    }
    const name = ward.isProtected(subUnitId);
    if (name === undefined) return;
    ward.say(
      `The sheet "${name}" is protected in this file. Take the protection off in Excel, then open it here again.`,
    );
    throw new CanceledError();
  });
}
