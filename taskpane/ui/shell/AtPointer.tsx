/** Beside the cell under the pointer: why it says what it says, in a sentence. The same stands at the pane's foot once it is selected. */
import { useEffect, useState } from "react";
import type { Grid, PointedAt } from "../../workbook/embedded/interface";
import { sentenceAbout } from "../explain/AtSelection";

/** Who only passes over cells is told nothing. */
const PAUSE_MS = 400;

interface Said {
  readonly at: PointedAt;
  readonly sentence: string;
}

export function AtPointer({ grid }: { readonly grid: Grid | null }) {
  const [said, setSaid] = useState<Said | null>(null);
  useEffect(() => {
    if (!grid) return;
    let pause: ReturnType<typeof setTimeout> | undefined;
    let now: PointedAt | null = null;
    async function tell(at: PointedAt): Promise<void> {
      const overview = await grid!.workbook.overview();
      const area = { top: at.row, left: at.column, rows: 1, columns: 1 };
      const sentence = await sentenceAbout(grid!.workbook, { ...overview, selection: { sheet: at.sheet, area } });
      if (now === at && sentence !== null) setSaid({ at, sentence });
    }
    const hush = () => {
      now = null;
      clearTimeout(pause);
      setSaid(null);
    };
    const stop = grid.onPointer((at) => {
      hush();
      now = at;
      /* A cell that cannot be read just now is asked about when the pointer comes back. */
      if (at) pause = setTimeout(() => void tell(at).catch(hush), PAUSE_MS);
    });
    const onKey = () => hush();
    window.addEventListener("keydown", onKey, true);
    return () => {
      hush();
      stop();
      window.removeEventListener("keydown", onKey, true);
    };
  }, [grid]);
  if (!said) return null;
  const { left, top, bottom } = said.at;
  /* Below the cell; in the lower half of the window above it, so that it is never cut. */
  const isLow = bottom > window.innerHeight / 2;
  return (
    <p
      className="at-pointer"
      role="tooltip"
      style={{
        insetInlineStart: Math.min(left, window.innerWidth - 340),
        ...(isLow ? { insetBlockEnd: window.innerHeight - top + 4 } : { insetBlockStart: bottom + 4 }),
      }}
    >
      {said.sentence}
    </p>
  );
}
