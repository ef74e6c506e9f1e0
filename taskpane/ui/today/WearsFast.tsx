/** People who wear devices through fast: one line each, and the way to their picture. */
import { useEffect, useState } from "react";
import { wearsFast, type FastWearer } from "../../actions/today/wears-fast";
import { today as words } from "../../texts/today";
import type { Overview, Workbook } from "../../workbook/port";
import { Step } from "../parts/Step";
import { shownId } from "../pictures/shown-id";

const NAMED = 5;

interface Props {
  readonly workbook: Workbook;
  readonly overview: Overview;
  readonly today: number;
  readonly isShown: boolean;
}

export function WearsFast({ workbook, overview, today, isShown }: Props) {
  const [fast, setFast] = useState<readonly FastWearer[]>([]);
  useEffect(() => {
    if (!isShown) return;
    let isCurrent = true;
    wearsFast(workbook, overview, today).then(
      (found) => isCurrent && setFast(found),
      /* A host that is busy tells again when it is done. */
      () => isCurrent && setFast([]),
    );
    return () => void (isCurrent = false);
  }, [isShown, overview, today, workbook]);
  if (fast.length === 0) return null;
  return (
    <Step title={words.wearsFast}>
      <ul>
        {fast.slice(0, NAMED).map(({ person, says }) => (
          <li key={person}>
            <strong>{shownId(person)}</strong> {says.join(" ")}
          </li>
        ))}
      </ul>
      {fast.length > NAMED && <p className="note">{words.wearsFastMore(fast.length - NAMED)}</p>}
    </Step>
  );
}
