/** What takes its time: one thing at once; whatever goes wrong becomes a sentence. */
import { useState } from "react";
import { pane as paneTexts } from "../../texts/pane";
import type { Watching } from "../../workbook/embedded/interface";
import type { News } from "./useNews";

export interface AtWork {
  readonly title: string;
  /** From 0 to 1. */
  readonly share: number;
  readonly isStopping: boolean;
  stop(): void;
}

export interface Work {
  /** A file is being opened or saved, and takes its time. */
  readonly atWork: AtWork | null;
  busily<T>(work: () => Promise<T>, otherwise: T): Promise<T>;
  /** Tells how far it is, and can be stopped. */
  watched<T>(title: string, work: (watching: Watching) => Promise<T>): Promise<T>;
}

export function useWork(setBusy: (isBusy: boolean) => void, say: News["say"]): Work {
  const [atWork, setAtWork] = useState<AtWork | null>(null);

  async function busily<T>(work: () => Promise<T>, otherwise: T): Promise<T> {
    setBusy(true);
    try {
      return await work();
    } catch (error) {
      say("problem", [paneTexts.unexpected(error instanceof Error ? error.message : String(error))]);
      return otherwise;
    } finally {
      setBusy(false);
    }
  }

  async function watched<T>(title: string, work: (watching: Watching) => Promise<T>): Promise<T> {
    const stopping = new AbortController();
    const stop = () => {
      stopping.abort();
      setAtWork((now) => now && { ...now, isStopping: true });
    };
    try {
      return await work({
        signal: stopping.signal,
        tell: (share) => setAtWork({ title, share, isStopping: stopping.signal.aborted, stop }),
      });
    } finally {
      setAtWork(null);
    }
  }

  return { atWork, busily, watched };
}
