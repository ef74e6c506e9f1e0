/** What was chosen on the first screen: it waits for the grid, which comes later. */
import { useEffect, useState } from "react";
import { setUp } from "../../actions/set-up";
import { shell as words } from "../../texts/shell";
import type { OpenNew } from "../pane/open-new";
import type { GridState } from "./useGrid";

interface Beginning {
  readonly by: "file" | "showing" | "caseload" | "empty";
  readonly file?: File;
}

export interface Begun {
  /** A choice waits for the grid. */
  readonly isWaiting: boolean;
  begin(by: Beginning["by"], file?: File): void;
  /** The invented list stands there, and two columns are offered. */
  readonly isShowing: boolean;
  endShowing(): void;
}

export function useBeginning(
  state: GridState,
  loadExample: (today: number) => Promise<Uint8Array>,
  openNew: OpenNew,
): Begun {
  const [beginning, setBeginning] = useState<Beginning | null>(null);
  const [isShowing, setShowing] = useState(false);

  /** The invented list, and what two columns make of it. */
  async function showMe() {
    await state.openBytes(await loadExample(state.today), words.example);
    setShowing(true);
  }

  /** As Set up a caseload proposes it: invented people, all columns. */
  async function tryCaseload() {
    const { proposal } = setUp;
    try {
      const maker = await setUp.load();
      await openNew(maker.describe(proposal, state.today), setUp.fileName(proposal));
    } catch (error) {
      state.say("problem", [words.notOpened, String(error)]);
    }
  }

  const ways: { readonly [B in Beginning["by"]]: (file?: File) => Promise<void> } = {
    file: (file) => state.openFile(file!),
    showing: showMe,
    caseload: tryCaseload,
    empty: state.openEmpty,
  };
  useEffect(() => {
    if (!state.grid || !beginning) return;
    setBeginning(null);
    void ways[beginning.by](beginning.file);
  });

  return {
    isWaiting: beginning !== null,
    begin: (by, file) => setBeginning({ by, ...(file && { file }) }),
    isShowing,
    endShowing: () => setShowing(false),
  };
}
