/** Another workbook in place of the one that stands there: unsaved changes are asked about first. */
import { useState } from "react";
import type { BookDescription } from "../../../src/caseload/book";
import { shell as words } from "../../texts/shell";
import type { OpenNew } from "../pane/open-new";
import type { GridState } from "./useGrid";

/** What to do once unsaved changes are dealt with, or when somebody rather stays. */
export interface Waiting {
  readonly go: () => void;
  readonly stay: () => void;
}

export interface Leaving {
  /** What is waiting for an answer about unsaved changes. */
  readonly waiting: Waiting | null;
  /** It has been answered. */
  answered(): void;
  replace(go: () => Promise<void>): Promise<void>;
  readonly openNew: OpenNew;
}

export function useLeaving(state: GridState, writeBook: (book: BookDescription) => Promise<Uint8Array>): Leaving {
  const [waiting, setWaiting] = useState<Waiting | null>(null);

  async function replace(go: () => Promise<void>, stay: () => void = () => undefined): Promise<void> {
    const left = await state.endEntry();
    if (left === null) return stay();
    if (left === "saved") return go();
    /* A dialog that is taken away may still tell that it was closed: the first answer counts. */
    let isAnswered = false;
    const once = (answer: () => void) => () => {
      if (!isAnswered) answer();
      isAnswered = true;
    };
    setWaiting({ go: once(() => void go()), stay: once(stay) });
  }

  const openNew: OpenNew = async (book, name) => {
    const bytes = await writeBook(book);
    return new Promise((resolve) => {
      void replace(
        async () => {
          const stands = await state.openMade(bytes, name);
          resolve(stands ? { outcome: "opened" } : { outcome: "refused", sentence: words.notOpened });
        },
        () => resolve({ outcome: "refused", sentence: words.leave.stayed }),
      );
    });
  };

  return { waiting, answered: () => setWaiting(null), replace: (go) => replace(go), openNew };
}
