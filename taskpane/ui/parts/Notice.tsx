import type { ReactNode } from "react";

/** A sentence that should not be missed: the word and the line at its side tell its kind, never colour alone. */
export function Notice({
  kind,
  children,
}: {
  readonly kind: "plain" | "caution" | "problem" | "done";
  readonly children: ReactNode;
}) {
  return <div className={`notice ${kind}`}>{children}</div>;
}
