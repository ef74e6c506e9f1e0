/** Tube out: the phone call. The sentences first, the details under them; nothing is written. */
import { Fragment, useEffect, useRef, useState } from "react";
import { TUBE_OUT } from "../../../src/caseload/cautions";
import { opening } from "../../../src/words/cameout-texts";
import { together } from "../../texts/pieces";
import { stillStands } from "../../actions/caseload/fresh";
import { tubeOut } from "../../actions/tube-out";
import { now } from "../../texts/now";
import { useAnnounce } from "../announce";
import { Notice } from "../parts/Notice";
import { Step } from "../parts/Step";
import { CallList } from "./CallList";
import { FindPerson, type Confirmed } from "./FindPerson";
import type { JobProps } from "./Now";

const words = now.out;

/** What holds for every tube, whoever it is: said while the identifier is still being looked for. */
export function DoFirst() {
  return (
    <Notice kind="problem">
      <p className="large">{opening}</p>
      <p>{TUBE_OUT}</p>
    </Notice>
  );
}

export function TubeOut({ workbook, overview, today, locale, agreed }: JobProps) {
  const announce = useAnnounce();
  const [confirmed, setConfirmed] = useState<Confirmed | null>(null);
  const [isStale, setStale] = useState(false);
  /* An answer that the list has outrun is taken away: it might speak of a tube that is no longer in. */
  useEffect(() => {
    const device = confirmed?.device;
    if (!device) return;
    let isCurrent = true;
    const outrun = () => {
      if (!isCurrent) return;
      setConfirmed(null);
      setStale(true);
      announce(words.outrun);
    };
    stillStands(confirmed.caseload, device.row, overview, workbook).then((stands) => stands || outrun(), outrun);
    return () => void (isCurrent = false);
  }, [announce, confirmed, overview, workbook]);
  const isNobody = confirmed?.meant.devices.length === 0;
  return (
    <div className="stack">
      {(!confirmed || isNobody) && (
        <>
          {!confirmed && <DoFirst />}
          {isStale && (
            <Notice kind="caution">
              <p>{words.outrun}</p>
            </Notice>
          )}
          <FindPerson
            workbook={workbook}
            locale={locale}
            canDoubt
            onLook={() => {
              setConfirmed(null);
              setStale(false);
            }}
            onConfirmed={setConfirmed}
          />
        </>
      )}
      {confirmed && (
        <>
          {/* A new look-up begins at the top, with nothing of the last person left. */}
          {!isNobody && (
            <div className="presses">
              <button type="button" className="button" onClick={() => setConfirmed(null)}>
                {words.another}
              </button>
            </div>
          )}
          <Answer key={confirmed.device?.row.index} confirmed={confirmed} today={today} agreed={agreed} />
        </>
      )}
    </div>
  );
}

function Answer({
  confirmed: { caseload, meant, device },
  today,
  agreed,
}: {
  readonly confirmed: Confirmed;
  readonly today: number;
  readonly agreed: string;
}) {
  const announce = useAnnounce();
  const top = useRef<HTMLDivElement>(null);
  const said = tubeOut(caseload, meant, device, today);
  const aloud = said.first.join(" ");
  useEffect(() => {
    top.current?.focus();
    announce(aloud);
  }, [announce, aloud]);
  const id = device?.id ?? meant.devices[0]?.id;
  return (
    <>
      <div ref={top} tabIndex={-1} className="stack">
        {id !== undefined && <h3>{now.person.confirmed(id)}</h3>}
        <Notice kind="problem">
          {said.first.map((sentence) => (
            <p className="large" key={sentence}>
              {sentence}
            </p>
          ))}
          {said.more.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </Notice>
      </div>
      <CallList calls={said.calls} />
      {said.facts.map(({ sheetRow, facts }) => (
        <Step key={sheetRow} title={device ? words.known : words.rowKnown(sheetRow)}>
          <dl className="pairs">
            {facts.map(({ label, text, isDoubt }) => (
              <Fragment key={label}>
                <dt>{label}</dt>
                <dd>{isDoubt ? <strong>{text}</strong> : text}</dd>
              </Fragment>
            ))}
          </dl>
        </Step>
      ))}
      {said.notWritten.length > 0 && (
        <Notice kind="caution">
          <p>{words.notWritten(together(said.notWritten))}</p>
        </Notice>
      )}
      {said.doubts.map((doubt) => (
        <Notice kind="caution" key={doubt}>
          <p>{doubt}</p>
        </Notice>
      ))}
      <p className="note">{TUBE_OUT}</p>
      <p className="note">{agreed}</p>
    </>
  );
}
