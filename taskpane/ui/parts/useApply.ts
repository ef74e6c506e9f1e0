/** Carrying out a planned change from any screen: working, stopped, done, and the way back. */
import { useRef, useState } from "react";
import type { Afterwards } from "../../actions/action";
import { carryOut, type CarriedOut } from "../../actions/carry-out";
import type { Change, Receipt, Workbook } from "../../workbook/port";
import { useAnnounce } from "./announce";

export type ApplyPhase =
  | { readonly is: "choosing" }
  | { readonly is: "working"; readonly done: number; readonly of: number; readonly isStopping: boolean }
  | { readonly is: "finished"; readonly receipt: Receipt; readonly words: Afterwards };

export interface Applying {
  readonly phase: ApplyPhase;
  /** @param afterwards what to say of the receipt */
  apply(change: Change, afterwards: (receipt: Receipt) => Afterwards): Promise<CarriedOut | null>;
  stop(): void;
  backToChoices(): void;
}

export function useApply(workbook: Workbook | null): Applying {
  const announce = useAnnounce();
  const [phase, setPhase] = useState<ApplyPhase>({ is: "choosing" });
  const stopper = useRef<AbortController | null>(null);

  async function apply(change: Change, afterwards: (receipt: Receipt) => Afterwards): Promise<CarriedOut | null> {
    if (!workbook || stopper.current) return null;
    const controller = new AbortController();
    stopper.current = controller;
    setPhase({ is: "working", done: 0, of: 1, isStopping: false });
    const report = (done: number, of: number) =>
      setPhase((before) => ({ is: "working", done, of, isStopping: before.is === "working" && before.isStopping }));
    const { receipt, words } = await carryOut(workbook, change, { report, signal: controller.signal }, afterwards);
    stopper.current = null;
    setPhase({ is: "finished", receipt, words });
    announce(words.sentences.join(" "));
    return { receipt, words };
  }

  return {
    phase,
    apply,
    stop: () => {
      stopper.current?.abort();
      setPhase((before) => (before.is === "working" ? { ...before, isStopping: true } : before));
    },
    backToChoices: () => setPhase({ is: "choosing" }),
  };
}
