/**
 * The arrow of a table's column says whether the column is filtered, as those of a sheet's own filter do. The grid
 * (0.25.1) knows it and draws one arrow for both, and in white on whatever ground the header has: it stands on a white
 * field of its own here.
 */
import { Scene, type BaseObject, type UniverRenderingContext2D } from "@univerjs/preset-sheets-core";
import { SheetsTableButtonStateEnum } from "@univerjs/sheets-table";

/** How the grid names these arrows. */
const ARROW = "sheets-table-filter-button-";

const FILTERED: ReadonlySet<number> = new Set([
  SheetsTableButtonStateEnum.FilteredSortNone,
  SheetsTableButtonStateEnum.FilteredSortAsc,
  SheetsTableButtonStateEnum.FilteredSortDesc,
]);

/** Private in the grid: the class itself is not given out. */
interface Arrow {
  readonly _filterParams?: { readonly buttonState: SheetsTableButtonStateEnum };
  _drawChevron(context: UniverRenderingContext2D, color: string): void;
}

let isMended = false;

/** Before the grid starts. */
export function markFilteredColumns(): void {
  if (isMended) return;
  isMended = true;
  const { addObjects } = Scene.prototype;
  Scene.prototype.addObjects = function (this: Scene, objects: BaseObject[], ...more: [number?]) {
    const arrow = objects.find(({ oKey }) => oKey.startsWith(ARROW));
    if (arrow) mend(Object.getPrototypeOf(arrow) as Arrow);
    return addObjects.call(this, objects, ...more);
  };
}

const mended = new WeakSet<Arrow>();

function mend(arrows: Arrow): void {
  if (mended.has(arrows)) return;
  mended.add(arrows);
  const { _drawChevron: drawArrow } = arrows;
  arrows._drawChevron = function (this: Arrow, context) {
    drawField(context);
    if (this._filterParams && FILTERED.has(this._filterParams.buttonState)) drawFunnel(context, INK);
    else drawArrow.call(this, context, INK);
  };
}

const INK = "#084452";
const FIELD = "#ffffff";
const EDGE = "#707b7b";

/** In the arrow's square of 16 pixels. */
function drawField(context: UniverRenderingContext2D): void {
  context.save();
  context.fillStyle = FIELD;
  context.strokeStyle = EDGE;
  context.lineWidth = 1;
  context.fillRect(0.5, 0.5, 15, 15);
  context.strokeRect(0.5, 0.5, 15, 15);
  context.restore();
}

/** In the arrow's square of 16 pixels. */
function drawFunnel(context: UniverRenderingContext2D, color: string): void {
  context.save();
  context.beginPath();
  context.fillStyle = color;
  context.moveTo(2.5, 3);
  context.lineTo(13.5, 3);
  context.lineTo(9.5, 8.5);
  context.lineTo(9.5, 13.5);
  context.lineTo(6.5, 12);
  context.lineTo(6.5, 8.5);
  context.closePath();
  context.fill();
  context.restore();
}
