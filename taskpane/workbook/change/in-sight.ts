/** After rows were shown and hidden: the view may stand on an empty stretch, and the selected cell in a hidden row. */
import type { Place, Workbook } from "../port";
import type { Target } from "./target";

/** The first row that is shown, at the left of its list; the headers where none is. */
async function firstShown(targets: readonly Target[], workbook: Pick<Workbook, "read">): Promise<Place | undefined> {
  const shown = targets.filter((target) => target.kind === "showRows").at(-1);
  if (!shown) return undefined;
  const { sheet, area } = shown;
  const { hidden } = await workbook.read({ sheet, area: { ...area, columns: 1 } }, ["hidden"]);
  const row = hidden!.findIndex((isHidden, at) => at > 0 && !isHidden);
  return { sheet, area: { top: area.top + Math.max(0, row), left: area.left, rows: 1, columns: 1 } };
}

/** The rows are shown all the same where a host cannot go there just now, for example while a cell is being edited. */
export async function goToShown(
  targets: readonly Target[],
  workbook: Pick<Workbook, "read" | "reveal">,
): Promise<void> {
  try {
    const place = await firstShown(targets, workbook);
    if (place) await workbook.reveal(place);
  } catch {
    return;
  }
}
