/** Tube out: the phone call. Who it is, then what to do; nothing is written. */
import { useEffect, useRef, useState } from "react";
import { TUBE_OUT } from "../../../src/caseload/cautions";
import { opening } from "../../../src/words/cameout-texts";
import { stillStands } from "../../actions/caseload/fresh";
import { recogniseCaseload } from "../../actions/caseload/recognise";
import { agreement } from "../../actions/clinic-settings/agreement";
import { tubeOut, type TubeOut as Said } from "../../actions/tube-out";
import { forms } from "../../texts/forms";
import { tubeOut as words } from "../../texts/tube-out";
import { pane as paneTexts } from "../../texts/pane";
import { print as printTexts } from "../../texts/print";
import type { Overview, Workbook } from "../../workbook/port";
import { useAnnounce } from "../parts/announce";
import { Notice } from "../parts/Notice";
import { clinicSettings } from "../clinic-settings/job";
import type { JobProps } from "../pane/define-job";
import { PaperFoot, PrintPress, type PaperFacts } from "../print/Paper";
import { FindPerson, whoIs, type Confirmed } from "../forms/FindPerson";
import { Orders, TubeOutAnswer } from "./TubeOutAnswer";

/** What holds for every tube, whoever it is: said while the identifier is still being looked for. No alarm yet. */
export function DoFirst() {
  return (
    <Notice kind="plain">
      <Orders of={opening} />
      <p>{TUBE_OUT}</p>
    </Notice>
  );
}

type CallProps = Pick<JobProps, "today" | "locale" | "version" | "go"> & {
  readonly workbook: Workbook;
  readonly overview: Overview;
};

export function TubeOut({ workbook, overview, ...props }: JobProps) {
  if (!workbook || !overview)
    return (
      <>
        <DoFirst />
        <p>{paneTexts.waiting}</p>
      </>
    );
  const found = recogniseCaseload(overview);
  if (found.is === "caseload") return <Call workbook={workbook} overview={overview} {...props} />;
  return (
    <>
      <DoFirst />
      <Notice kind="caution">
        <p>{found.sentence}</p>
        {found.is === "none" && <p>{forms.noCaseload}</p>}
      </Notice>
    </>
  );
}

function Call({ workbook, overview, today, locale, version, go }: CallProps) {
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
  const agreed = agreement(overview, today).sentence;
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
        <Answer
          key={confirmed.device?.row.index}
          confirmed={confirmed}
          paper={{ overview, today, locale, version, agreed }}
          enter={() => go(clinicSettings)}
          {...(!isNobody && { onAnother: () => setConfirmed(null) })}
        />
      )}
    </div>
  );
}

interface AnswerProps {
  readonly confirmed: Confirmed;
  readonly paper: PaperFacts;
  readonly enter: () => void;
  /** A new look-up begins at the top, with nothing of the last person left. */
  readonly onAnother?: () => void;
}

function Answer({ confirmed, paper, enter, onAnother }: AnswerProps) {
  const { caseload, meant, device } = confirmed;
  const announce = useAnnounce();
  const top = useRef<HTMLDivElement>(null);
  const said = tubeOut(caseload, meant, device, paper.today);
  const aloud = said.first.join(" ");
  useEffect(() => {
    top.current?.focus();
    announce(aloud);
  }, [announce, aloud]);
  const who = whoIs(confirmed, paper.locale);
  return (
    <>
      {onAnother && (
        <div className="presses">
          <button type="button" className="button" onClick={onAnother}>
            {words.another}
          </button>
        </div>
      )}
      <div ref={top} tabIndex={-1} className="stack">
        {who !== null && (
          <>
            <h3>{forms.person.confirmed(who.id)}</h3>
            <p className="note">{who.told}</p>
          </>
        )}
        <TubeOutAnswer said={said} agreed={paper.agreed} enter={enter} />
      </div>
      <div className="presses">
        <PrintPress press={printTexts.page} page={<TubeOutPage said={said} who={who} paper={paper} />} />
      </div>
    </>
  );
}

interface PageProps {
  readonly said: Said;
  readonly who: ReturnType<typeof whoIs>;
  readonly paper: PaperFacts;
}

/** One sheet of paper that says what the screen says. */
export function TubeOutPage({ said, who, paper }: PageProps) {
  return (
    <>
      <h1>{words.pageTitle(who?.id)}</h1>
      {who !== null && <p>{who.told}</p>}
      <TubeOutAnswer said={said} agreed={paper.agreed} />
      <PaperFoot {...paper} />
    </>
  );
}
