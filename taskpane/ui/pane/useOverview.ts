import { useEffect, useRef, useState } from "react";
import type { Overview, Workbook } from "../../workbook/port";
import { watchOverview, type OverviewWatch } from "./overview-watch";

export interface OverviewNow {
  /** Null until the first one is there. */
  readonly overview: Overview | null;
  /** Why the workbook cannot be read now: what is shown may be out of date. */
  readonly unread: string | null;
  readNow(): void;
}

export function useOverview(workbook: Workbook | null): OverviewNow {
  const [overview, setOverview] = useState<Overview | null>(null);
  const [unread, setUnread] = useState<string | null>(null);
  const watch = useRef<OverviewWatch | null>(null);
  useEffect(() => {
    if (!workbook) return setOverview(null);
    const mine = watchOverview(workbook, setOverview, setUnread);
    watch.current = mine;
    return () => mine.stop();
  }, [workbook]);
  return { overview, unread, readNow: () => watch.current?.readNow() };
}
