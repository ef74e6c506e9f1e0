/** An entry that is still being typed into a cell comes first: whatever is pressed after it must find it in its cell. */
import { useRef, type MouseEvent, type SyntheticEvent } from "react";
import type { Grid } from "../../workbook/embedded/interface";

export interface EntryFirst {
  readonly onPointerDownCapture: () => void;
  readonly onFocusCapture: (event: SyntheticEvent) => void;
  readonly onClickCapture: (event: MouseEvent) => void;
}

/** For the part of the page whose presses have to wait; a press is dropped where the entry was turned down. */
export function useEntryFirst(grid: Grid | null): EntryFirst {
  const ending = useRef<Promise<boolean> | null>(null);

  function end(): Promise<boolean> | null {
    if (!ending.current && grid?.hasEntry()) ending.current = grid.endEntry();
    return ending.current;
  }

  return {
    onPointerDownCapture() {
      ending.current = null;
      end();
    },
    onFocusCapture({ target, currentTarget }) {
      const isByKey = ending.current === null;
      const ended = end();
      void ended?.then(() => {
        if (isByKey) ending.current = null;
        // the grid takes the keyboard to itself when its editor closes
        if (!currentTarget.contains(document.activeElement)) (target as HTMLElement).focus();
      });
    },
    onClickCapture(event) {
      const ended = end();
      if (!ended) return;
      event.preventDefault();
      event.stopPropagation();
      const { target } = event;
      void ended.then((isEntered) => {
        ending.current = null;
        if (isEntered) target.dispatchEvent(new window.MouseEvent("click", { bubbles: true, cancelable: true }));
      });
    },
  };
}
