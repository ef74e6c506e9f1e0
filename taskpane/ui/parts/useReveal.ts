import { createContext, useContext } from "react";
import { pane as paneTexts } from "../../texts/pane";
import type { Place, Workbook } from "../../workbook/port";
import { useAnnounce } from "./announce";

/** Brings the sheet in sight where the pane covers it (a telephone). */
export const SheetInSight = createContext<() => void>(() => undefined);

/** Shows a place on its sheet, or says why it cannot be shown. */
export function useReveal(workbook: Workbook | null): (place: Place) => void {
  const announce = useAnnounce();
  const showSheet = useContext(SheetInSight);
  return (place) => {
    showSheet();
    void workbook?.reveal(place).catch((error: unknown) => announce(paneTexts.unexpected(String(error))));
  };
}
