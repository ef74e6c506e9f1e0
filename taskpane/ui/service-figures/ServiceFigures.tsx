/** Service figures: a period that is over, beside the one before it; the board page says the same. */
import { useEffect, useId, useMemo, useState } from "react";
import { namesOf } from "../../actions/caseload/read";
import { recogniseCaseload } from "../../actions/caseload/recognise";
import { textSettingIn } from "../../actions/caseload/settings";
import { agreement } from "../../actions/clinic-settings/agreement";
import { boardOf, readService, type Service } from "../../actions/service-figures";
import { pane as paneTexts } from "../../texts/pane";
import { serviceFigures as words } from "../../texts/service-figures";
import type { JobProps } from "../pane/define-job";
import { Notice } from "../parts/Notice";
import { PaperFoot, PrintPress } from "../print/Paper";
import { BoardFigures } from "./BoardFigures";
import { periodText } from "./said";

export function ServiceFigures({ workbook, overview, today, locale, version, isShown }: JobProps) {
  const id = useId();
  const [service, setService] = useState<Service | null>(null);
  const [chosen, setChosen] = useState(0);
  const isCaseload = overview !== null && recogniseCaseload(overview).is === "caseload";
  useEffect(() => {
    if (!isShown || !workbook || !isCaseload) return;
    let isCurrent = true;
    readService(workbook, today).then(
      (read) => isCurrent && setService(read.is === "service" ? read : null),
      /* A host that is busy tells again when it is done; until then no figure is better than an old one. */
      () => isCurrent && setService(null),
    );
    return () => void (isCurrent = false);
  }, [isShown, isCaseload, overview, today, workbook]);
  const of = service?.periods[chosen] ?? service?.periods[0];
  const board = useMemo(() => (service && of ? boardOf(service, of) : null), [service, of]);
  if (!workbook || !overview) return <p>{paneTexts.waiting}</p>;
  if (!isCaseload)
    return (
      <Notice kind="plain">
        <p>{words.noCaseload}</p>
      </Notice>
    );
  if (!service) return <p>{paneTexts.loading}</p>;
  if (!board) return <p>{words.noPeriod}</p>;
  const paper = { overview, today, locale, version, agreed: agreement(overview, today).sentence };
  const figures = { board, locale, least: service.least, uncounted: service.uncounted };
  return (
    <>
      <div className="field">
        <label htmlFor={id}>{words.period}</label>
        <select id={id} value={chosen} onChange={({ target }) => setChosen(Number(target.value))}>
          {service.periods.map(({ length, period }, i) => (
            <option key={`${length} ${period.from}`} value={i}>
              {periodText(period, length, locale)}
            </option>
          ))}
        </select>
      </div>
      <BoardFigures {...figures} isPaper={false} />
      <div className="presses">
        <PrintPress
          press={words.print}
          page={
            <>
              <h1>{words.board(textSettingIn(namesOf(overview), "Clinic_Name"))}</h1>
              <BoardFigures {...figures} isPaper />
              <PaperFoot {...paper} />
            </>
          }
        />
      </div>
    </>
  );
}
