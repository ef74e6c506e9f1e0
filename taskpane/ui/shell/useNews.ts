/** What the page and its grid say: one piece of news at a time. */
import { useCallback, useEffect, useRef, useState } from "react";

const NEWS_MS = 8_000;

export interface Said {
  readonly kind: "plain" | "problem" | "done";
  readonly sentences: readonly string[];
  /** Told apart so that the same sentence is spoken again. */
  readonly at: number;
}

export interface News {
  readonly said: Said | null;
  say(kind: Said["kind"], sentences: readonly string[]): void;
  hush(): void;
  /** The grid turns something down, */
  sayRefusal(sentence: string): void;
  /** and takes that back: only its own last sentence goes. */
  hushRefusal(): void;
}

/** @param isBusy what is said while something is under way stays until it is done */
export function useNews(isBusy: boolean): News {
  const [said, setSaid] = useState<Said | null>(null);
  const count = useRef(0);
  /** Which of the sentences was the grid's own last one. */
  const refusal = useRef(0);
  const say = useCallback((kind: Said["kind"], sentences: readonly string[]) => {
    setSaid({ kind, sentences, at: ++count.current });
  }, []);
  const sayRefusal = useCallback(
    (sentence: string) => {
      say("problem", [sentence]);
      refusal.current = count.current;
    },
    [say],
  );
  const hushRefusal = useCallback(() => setSaid((now) => (now?.at === refusal.current ? null : now)), []);
  const hush = useCallback(() => setSaid(null), []);

  /* News of something that went well need not stay; whatever has to be read does. */
  useEffect(() => {
    if (!said || said.kind === "problem" || said.sentences.length > 1 || isBusy) return;
    const timer = setTimeout(() => setSaid((now) => (now === said ? null : now)), NEWS_MS);
    return () => clearTimeout(timer);
  }, [isBusy, said]);
  return { said, say, hush, sayRefusal, hushRefusal };
}
