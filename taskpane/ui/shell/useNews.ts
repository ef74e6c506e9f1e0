/** What the page and its grid say: one piece of news at a time. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { Asks } from "../../workbook/embedded/interface";

const NEWS_MS = 8_000;

export interface Said {
  /** What is only "heard" is seen already: the name of the file that is open. */
  readonly kind: "plain" | "problem" | "done" | "heard";
  readonly sentences: readonly string[];
  /** What the person is asked with it. */
  readonly asks?: Asks;
  /** Told apart so that the same sentence is spoken again. */
  readonly at: number;
}

export interface News {
  readonly said: Said | null;
  /** A date was typed that can be read two ways. */
  readonly hasAsked: boolean;
  say(kind: Said["kind"], sentences: readonly string[]): void;
  hush(): void;
  /** The grid turns something down, and may ask for what it needs to know, */
  sayRefusal(sentence: string, asks?: Asks): void;
  /** and takes that back: only its own last sentence goes. */
  hushRefusal(): void;
}

/** @param isBusy what is said while something is under way stays until it is done */
export function useNews(isBusy: boolean): News {
  const [said, setSaid] = useState<Said | null>(null);
  const [hasAsked, setAsked] = useState(false);
  const count = useRef(0);
  /** Which of the sentences was the grid's own last one. */
  const refusal = useRef(0);
  const say = useCallback((kind: Said["kind"], sentences: readonly string[], asks?: Asks) => {
    setSaid({ kind, sentences, at: ++count.current, ...(asks && { asks }) });
  }, []);
  const sayRefusal = useCallback(
    (sentence: string, asks?: Asks) => {
      say("problem", [sentence], asks);
      if (asks) setAsked(true);
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
  return { said, hasAsked, say, hush, sayRefusal, hushRefusal };
}
