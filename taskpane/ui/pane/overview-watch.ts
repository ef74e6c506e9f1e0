/** Keeps the overview of a workbook up to date, and tells when it cannot. */
import type { Overview, Workbook } from "../../workbook/port";

/** Hosts tell of every key pressed in a cell; reading an overview for each would make typing slow. */
const PAUSE_MS = 150;
/** A host in which somebody types in a cell answers nothing until they are done; it is asked again after so long. */
const AGAIN_MS = 2000;
/** So many answers may fail before it is said: the first is mostly somebody who is typing. */
const QUIET_FAILURES = 2;

export interface OverviewWatch {
  /** Asks at once. */
  readNow(): void;
  stop(): void;
}

/** @param onUnread what was read last may be out of date; told again with null once it can be read */
export function watchOverview(
  workbook: Pick<Workbook, "overview" | "onChange">,
  onFresh: (overview: Overview) => void,
  onUnread: (reason: string | null) => void,
): OverviewWatch {
  let isCurrent = true;
  let failures = 0;
  /** Answers can overtake each other; only the newest counts. */
  let asked = 0;
  let pause: ReturnType<typeof setTimeout> | undefined;

  const later = (ms: number) => {
    clearTimeout(pause);
    pause = setTimeout(() => void read(), ms);
  };

  async function read(): Promise<void> {
    clearTimeout(pause);
    const mine = ++asked;
    try {
      const fresh = await workbook.overview();
      if (!isCurrent || mine !== asked) return;
      failures = 0;
      onUnread(null);
      onFresh(fresh);
    } catch (error) {
      if (!isCurrent || mine !== asked) return;
      failures += 1;
      if (failures >= QUIET_FAILURES) onUnread(String(error));
      later(AGAIN_MS);
    }
  }

  const stop = workbook.onChange(() => later(PAUSE_MS));
  void read();
  return {
    readNow: () => void read(),
    stop: () => {
      isCurrent = false;
      clearTimeout(pause);
      stop();
    },
  };
}
