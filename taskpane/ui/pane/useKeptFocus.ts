import { useEffect, type RefObject } from "react";

/** React has put what follows into the page by then, and has moved the keyboard itself where it knows better. */
const SETTLED_MS = 50;
/** A press that stays refused for so long will not come back by itself. */
const PATIENCE_MS = 700;

const isThere = (element: Element): boolean => element.isConnected && element.checkVisibility();
const isRefused = (element: Element): boolean => element.matches(":disabled");

const headingIn = (element: Element): HTMLElement | undefined =>
  [...element.querySelectorAll<HTMLElement>("h2, h3, h4")].find(isThere);

/**
 * Whatever is pressed may go away or be refused for a while, and a browser then leaves the keyboard nowhere: the next Tab
 * begins at the top of the page, and a screen reader falls silent. Here it goes back to the press once that can be
 * pressed again, else to the heading of what is now nearest to where it stood.
 */
export function useKeptFocus(within: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const root = within.current;
    if (!root) return;
    /** From where the keyboard stood outwards; empty where it left by itself. */
    let path: readonly Element[] = [];
    let wasRefused = false;
    let timer: ReturnType<typeof setTimeout> | undefined;

    function onFocus({ target }: FocusEvent) {
      const found: Element[] = [];
      for (let at = target as Element | null; at && root!.contains(at); at = at.parentElement) found.push(at);
      path = found;
      wasRefused = false;
    }

    function look(isPatient: boolean) {
      /* In Excel the pane is a page within: it must not take the keyboard from the sheet. */
      if (!document.hasFocus()) return;
      const [stood, ...around] = path;
      const { activeElement, body } = document;
      if (!stood || (activeElement !== null && activeElement !== body && activeElement !== stood)) return;
      if (isThere(stood)) {
        if (isRefused(stood)) {
          wasRefused = true;
          if (isPatient) return void (timer = setTimeout(() => look(false), PATIENCE_MS));
        } else {
          // Else somebody has pressed beside it.
          if (wasRefused && activeElement !== stood) (stood as HTMLElement).focus();
          wasRefused = false;
          return;
        }
      }
      const heading = around.filter(isThere).map(headingIn).find(Boolean);
      const next = heading ?? root!;
      if (!next.hasAttribute("tabindex")) next.tabIndex = -1;
      next.focus();
    }

    const observer = new MutationObserver(() => {
      clearTimeout(timer);
      timer = setTimeout(() => look(true), SETTLED_MS);
    });
    observer.observe(root, {
      childList: true,
      subtree: true,
      attributes: true,
      attributeFilter: ["hidden", "disabled"],
    });
    document.addEventListener("focusin", onFocus);
    return () => {
      clearTimeout(timer);
      observer.disconnect();
      document.removeEventListener("focusin", onFocus);
    };
  }, [within]);
}
