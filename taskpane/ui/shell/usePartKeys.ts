import { useEffect } from "react";

/** The page's parts in the order in which F6 visits them; Shift goes back. */
const PARTS = ["bar", "sheet", "pane"] as const;

/** The grid listens to keys in an editor of its own inside the sheet; only there do they reach it. */
export function focusHiddenEditor(): void {
  document.querySelector<HTMLElement>("#sheet [contenteditable='true'], #sheet [contenteditable='']")?.focus();
}

const LOOK_MS = 100;
const LOOKS = 30;

/**
 * Puts the keyboard into the sheet, and again while the grid is still putting itself together: its editor comes anew with
 * each workbook. It ends by itself, and at once when somebody goes elsewhere: a press that is gone there leaves the keyboard
 * nowhere for a moment, and that is no wish to be in the sheet. Returns what ends it.
 */
export function keepInSheet(focusGrid: () => void): () => void {
  let looks = LOOKS;
  const look = () => {
    if (document.activeElement === document.body || document.activeElement === null) {
      focusGrid();
      focusHiddenEditor();
    }
    if (--looks === 0) end();
  };
  const onFocus = ({ target }: FocusEvent) => (target as Element).closest("#bar, #pane") && end();
  const timer = setInterval(look, LOOK_MS);
  document.addEventListener("focusin", onFocus);
  function end() {
    clearInterval(timer);
    document.removeEventListener("focusin", onFocus);
  }
  look();
  return end;
}

/** The formula bar's editor is a point nobody sees, at the end of the page: a stop of Tab at which the keyboard is lost. */
function keepHiddenEditorsFromTab(): void {
  const editors = "body > [id^='univer-doc-selection-container'] [contenteditable]:not([tabindex])";
  for (const editor of document.querySelectorAll<HTMLElement>(editors)) editor.tabIndex = -1;
}

/**
 * F6 moves between bar, sheet and pane, as it does in Office. The grid takes the Tab key for itself, so without this
 * the keyboard could not leave it.
 */
export function usePartKeys(focusGrid: () => void): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key === "Tab") return keepHiddenEditorsFromTab();
      if (event.key !== "F6" || event.ctrlKey || event.altKey || event.metaKey) return;
      event.preventDefault();
      event.stopPropagation();
      const here = PARTS.findIndex((part) => document.getElementById(part)?.contains(document.activeElement));
      const step = event.shiftKey ? PARTS.length - 1 : 1;
      const next = PARTS[here < 0 ? 0 : (here + step) % PARTS.length];
      if (next === "sheet") {
        focusGrid();
        return focusHiddenEditor();
      }
      const part = next && document.getElementById(next);
      if (!part) return;
      part.querySelector<HTMLElement>("button:not(:disabled), select:not(:disabled)")?.focus();
    };
    window.addEventListener("keydown", onKey, true);
    return () => window.removeEventListener("keydown", onKey, true);
  }, [focusGrid]);
}
