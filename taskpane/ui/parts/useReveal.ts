import { pane as paneTexts } from "../../texts/pane";
import type { Place, Workbook } from "../../workbook/port";
import { useAnnounce } from "../announce";

/** Shows a place on its sheet, or says why it cannot be shown. */
export function useReveal(workbook: Workbook | null): (place: Place) => void {
  const announce = useAnnounce();
  return (place) =>
    void workbook?.reveal(place).catch((error: unknown) => announce(paneTexts.unexpected(String(error))));
}
