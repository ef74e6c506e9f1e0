/**
 * One live region for the whole pane: progress and results are spoken once, and nothing else is. A sentence said twice
 * must differ for a screen reader to speak it again, so a no-break space comes and goes at its end.
 */
import { createContext, useCallback, useContext, useMemo, useState, type ReactNode } from "react";

type Announce = (sentence: string) => void;

const Announcing = createContext<Announce>(() => undefined);

export const useAnnounce = (): Announce => useContext(Announcing);

export function Announcer({ children }: { readonly children: ReactNode }) {
  const [said, setSaid] = useState({ sentence: "", times: 0 });
  const announce = useCallback<Announce>((sentence) => setSaid(({ times }) => ({ sentence, times: times + 1 })), []);
  const region = useMemo(
    () => (
      <div className="for-ears" role="status" aria-live="polite">
        {said.sentence === "" ? "" : said.sentence + (said.times % 2 === 0 ? " " : "")}
      </div>
    ),
    [said],
  );
  return (
    <Announcing.Provider value={announce}>
      {children}
      {region}
    </Announcing.Provider>
  );
}
