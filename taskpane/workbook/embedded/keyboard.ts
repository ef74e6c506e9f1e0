/**
 * The grid takes the keyboard to itself when it selects cells (0.25.1). Whoever pressed something beside it goes on there:
 * nobody else learns that the keyboard was away, and the page gives it back to the press (ui/useKeptFocus.ts).
 */
const isInGrid = (target: EventTarget | null): boolean =>
  target instanceof Element && target.closest("#sheet") !== null;

export async function leavingKeyboard(work: () => Promise<void>): Promise<void> {
  if (typeof document === "undefined" || isInGrid(document.activeElement)) return work();
  const unheard = (event: FocusEvent) => {
    if (isInGrid(event.target)) event.stopImmediatePropagation();
  };
  window.addEventListener("focusin", unheard, true);
  try {
    await work();
  } finally {
    if (isInGrid(document.activeElement)) (document.activeElement as HTMLElement).blur();
    window.removeEventListener("focusin", unheard, true);
  }
}
