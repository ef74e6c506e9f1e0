/** Lots watched: those to look at first; how many were looked at, and at what level, beside them. */
import { useEffect, useState } from "react";
import { watchCaseload, type Watched } from "../../actions/find-lot/watch";
import { lotsWatched as words } from "../../texts/lots-watched";
import type { JobProps } from "../pane/define-job";
import { Step } from "../parts/Step";

type Props = Pick<JobProps, "today" | "isShown"> & {
  readonly workbook: NonNullable<JobProps["workbook"]>;
  readonly overview: NonNullable<JobProps["overview"]>;
  readonly find: (lot: string) => void;
};

/** So many lots stand there at once. */
const FIRST = 5;

export function LotsWatched({ workbook, overview, today, isShown, find }: Props) {
  const [watched, setWatched] = useState<Watched | null>(null);
  useEffect(() => {
    if (!isShown) return;
    let isCurrent = true;
    watchCaseload(workbook, overview, today).then(
      (read) => isCurrent && setWatched(read),
      /* A host that is busy tells again when it is done; until then nothing is better than an old word. */
      () => isCurrent && setWatched(null),
    );
    return () => void (isCurrent = false);
  }, [isShown, overview, today, workbook]);
  if (!watched) return null;
  const { lots, small, notToTell, withoutLot, leftOut, levelEach } = watched;
  const signals = lots.filter((one) => one.signals);
  return (
    <Step title={words.title}>
      <p>
        <strong>{signals.length === 0 ? words.none(lots.length) : words.signals(signals.map(({ lot }) => lot))}</strong>
      </p>
      {lots.length > 0 && (
        <table className="figures">
          <thead>
            <tr>
              {words.columns.map((column) => (
                <th scope="col" key={column}>
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {lots.slice(0, Math.max(FIRST, signals.length)).map((one) => (
              <tr key={`${one.kind} ${one.lot}`}>
                <th scope="row">
                  <button type="button" className="press" onClick={() => find(one.lot)}>
                    {one.lot}
                  </button>
                </th>
                <td>{words.seen(one.seen, one.devices)}</td>
                <td>{words.expected(one.expected)}</td>
                <td>{words.ratio(one.ratio, one.low, one.high)}</td>
                <td>{one.signals ? words.look : words.noSignal}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p className="note">{words.how(lots.length, levelEach)}</p>
      <p className="note">{words.left(small, notToTell, withoutLot, leftOut)}</p>
      <p className="note">{words.caution}</p>
    </Step>
  );
}
