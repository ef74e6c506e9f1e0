/** The cell under the pointer, and where it stands in the page. */
import { HoverManagerService } from "@univerjs/sheets-ui";
import type { Engine } from "../engine";
import type { PointedAt } from "../interface";

const CANVAS = "canvas[id^='univer-sheet-main-canvas']";

/** @returns what stops it */
export function watchPointer(
  { injector }: Engine,
  container: HTMLElement,
  tell: (at: PointedAt | null) => void,
): () => void {
  const told = injector.get(HoverManagerService).currentCell$.subscribe((cell) => {
    const canvas = container.querySelector(CANVAS)?.getBoundingClientRect();
    if (!cell || !canvas) return tell(null);
    const { position, location } = cell;
    tell({
      sheet: location.subUnitId,
      row: location.row,
      column: location.col,
      left: canvas.left + position.startX,
      top: canvas.top + position.startY,
      bottom: canvas.top + position.endY,
    });
  });
  const leave = () => tell(null);
  container.addEventListener("pointerleave", leave);
  container.addEventListener("wheel", leave, { passive: true });
  container.addEventListener("pointerdown", leave);
  return () => {
    told.unsubscribe();
    for (const event of ["pointerleave", "wheel", "pointerdown"]) container.removeEventListener(event, leave);
  };
}
