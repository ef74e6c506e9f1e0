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

/** Its editor, which takes the keyboard when a workbook is opened (0.25.1). */
const isEditor = (target: EventTarget | null): target is HTMLElement =>
  target instanceof HTMLElement && target.isContentEditable && target.closest("[data-u-comp='editor']") !== null;

export interface Doorkeeper {
  /** Somebody wants to type in the sheet. */
  readonly open: () => void;
  /** A workbook is opened: nobody has come to it yet. */
  readonly close: () => void;
}

/** Nothing takes the keyboard before somebody clicks into the sheet or goes there with F6 or Tab. */
export function keepDoor(container: HTMLElement): Doorkeeper {
  let isOpen = false;
  const open = (): void => void (isOpen = true);
  container.addEventListener("pointerdown", open, true);
  window.addEventListener("keydown", ({ key }) => (key === "F6" || key === "Tab") && open(), true);
  window.addEventListener("focusin", ({ target }) => !isOpen && isEditor(target) && target.blur(), true);
  return { open, close: () => void (isOpen = false) };
}
