/**
 * The grid takes the keyboard to itself when it selects cells (0.25.1). Whoever pressed something beside it goes on there:
 * nobody else learns that the keyboard was away, and the page gives it back to the press (ui/pane/useKeptFocus.ts).
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
const isEditor = (element: HTMLElement): boolean =>
  element.isContentEditable && element.closest("[data-u-comp='editor']") !== null;

export interface Doorkeeper {
  /** Somebody wants to type in the sheet. */
  readonly open: () => void;
  /** A workbook is opened: nobody has come to it yet. */
  readonly close: () => void;
}

/** To where it stood; where it stood nowhere, to the top of the page: a browser goes on with Tab from what it left last. */
function giveBack(editor: HTMLElement, before: EventTarget | null): void {
  editor.blur();
  if (before instanceof HTMLElement && before.isConnected && !isEditor(before)) return before.focus();
  const { body } = document;
  body.tabIndex = -1;
  body.focus();
  body.removeAttribute("tabindex");
}

/** Nothing takes the keyboard before somebody clicks into the sheet or goes there with F6 or Tab. */
export function keepDoor(container: HTMLElement): Doorkeeper {
  let isOpen = false;
  const open = (): void => void (isOpen = true);
  container.addEventListener("pointerdown", open, true);
  window.addEventListener("keydown", ({ key }) => (key === "F6" || key === "Tab") && open(), true);
  window.addEventListener(
    "focusin",
    ({ target, relatedTarget }) =>
      !isOpen && target instanceof HTMLElement && isEditor(target) && giveBack(target, relatedTarget),
    true,
  );
  return { open, close: () => void (isOpen = false) };
}
