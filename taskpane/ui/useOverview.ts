import { useEffect, useState } from "react";
import type { Overview, Workbook } from "../workbook/port";

/** Hosts tell of every key pressed in a cell; reading an overview for each would make typing slow. */
const PAUSE_MS = 150;

/** The workbook's overview, kept up to date; null until the first one is there. */
export function useOverview(workbook: Workbook | null): Overview | null {
  const [overview, setOverview] = useState<Overview | null>(null);
  useEffect(() => {
    if (!workbook) return setOverview(null);
    let current = true;
    let pause: ReturnType<typeof setTimeout> | undefined;
    const readNow = () =>
      workbook.overview().then(
        (fresh) => current && setOverview(fresh),
        /* A host that is busy (somebody types in a cell) tells again when it is done. */
        () => undefined,
      );
    const stop = workbook.onChange(() => {
      clearTimeout(pause);
      pause = setTimeout(readNow, PAUSE_MS);
    });
    void readNow();
    return () => {
      current = false;
      clearTimeout(pause);
      stop();
    };
  }, [workbook]);
  return overview;
}
