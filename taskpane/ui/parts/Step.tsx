import { useId, type ReactNode } from "react";

interface Props {
  /** Left out for what is not a step of a row of steps (a result). */
  readonly number?: number;
  readonly title: string;
  /** A small press beside the heading. */
  readonly press?: ReactNode;
  readonly children: ReactNode;
}

/** One step of a job, with its heading. */
export function Step({ number, title, press, children }: Props) {
  const id = useId();
  return (
    <section className="step" aria-labelledby={id}>
      <header>
        {number !== undefined && (
          <span className="step-number" aria-hidden="true">
            {number}
          </span>
        )}
        <h3 id={id}>{title}</h3>
        {press}
      </header>
      {children}
    </section>
  );
}
