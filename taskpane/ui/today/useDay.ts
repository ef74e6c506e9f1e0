/** The day as the caseload's words tell it, read anew whenever the workbook has changed; null until it is there. */
import { useEffect, useState } from "react";
import { readDay, type Day } from "../../actions/today";
import type { Overview, Workbook } from "../../workbook/port";

export function useDay(workbook: Workbook, overview: Overview, isShown: boolean): Day | null {
  const [day, setDay] = useState<Day | null>(null);
  useEffect(() => {
    if (!isShown) return;
    let isCurrent = true;
    readDay(workbook, overview).then(
      (read) => isCurrent && setDay(read.is === "day" ? read : null),
      /* A host that is busy tells again when it is done; until then no count is better than an old one. */
      () => isCurrent && setDay(null),
    );
    return () => void (isCurrent = false);
  }, [isShown, overview, workbook]);
  return day;
}
