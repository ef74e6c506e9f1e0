/** Pictures: what the caseload's own past can tell, each with its sentence first. Period and kind are chosen once. */
import { useEffect, useId, useMemo, useState } from "react";
import { addMonths } from "../../../src/maths/calendar";
import { kindsIn, ofKind, reasonsLeftOut } from "../../../src/pictures/devices";
import { readPictured, type Pictured } from "../../actions/pictures";
import { recogniseCaseload } from "../../actions/caseload/recognise";
import { agreement } from "../../actions/clinic-settings/agreement";
import { pane as paneTexts } from "../../texts/pane";
import { pictures as words } from "../../texts/pictures";
import { Notice } from "../parts/Notice";
import type { JobProps } from "../pane/define-job";
import { PaperFoot, PrintPress } from "../print/Paper";
import { DueByMonth } from "./DueByMonth";
import { Lives } from "./Lives";
import type { PictureProps } from "./picture-props";
import { Reasons } from "./Reasons";
import { Unplanned } from "./Unplanned";
import { Wear } from "./Wear";

type Period = keyof typeof words.periods;
const ALL_KINDS = "";
const periods: readonly Period[] = ["12", "24", "all"];

export function Pictures({ workbook, overview, today, locale, version, isShown }: JobProps) {
  const [pictured, setPictured] = useState<Pictured | null>(null);
  const [period, setPeriod] = useState<Period>("12");
  const [chosen, setChosen] = useState<string | null>(null);
  const isCaseload = overview !== null && recogniseCaseload(overview).is === "caseload";
  useEffect(() => {
    if (!isShown || !workbook || !isCaseload) return;
    let isCurrent = true;
    readPictured(workbook, today).then(
      (read) => isCurrent && setPictured(read.is === "pictured" ? read : null),
      /* A host that is busy tells again when it is done; until then no picture is better than an old one. */
      () => isCurrent && setPictured(null),
    );
    return () => void (isCurrent = false);
  }, [isShown, isCaseload, overview, today, workbook]);
  const kinds = useMemo(() => kindsIn(pictured?.devices ?? []), [pictured]);
  const kind = chosen ?? (kinds.includes("balloon") ? "balloon" : ALL_KINDS);
  const one = kind === ALL_KINDS ? null : kind;
  const devices = useMemo(() => ofKind(pictured?.devices ?? [], one), [pictured, one]);
  if (!workbook || !overview) return <p>{paneTexts.waiting}</p>;
  if (!isCaseload) {
    return (
      <Notice kind="plain">
        <p>{words.noCaseload}</p>
      </Notice>
    );
  }
  if (!pictured) return <p>{paneTexts.loading}</p>;
  if (pictured.devices.length === 0) return <p>{words.noDevices}</p>;

  const first = pictured.devices.reduce((least, { from }) => Math.min(least, from), Infinity);
  const since = period === "all" ? first : Math.max(first, addMonths(pictured.asOf, -Number(period)));
  const props = { pictured, devices, kind: one, since, locale };
  const paper = { overview, today, locale, version, agreed: agreement(overview, today).sentence };
  return (
    <>
      <div className="choices-in-a-row">
        <OneOf
          label={words.kind}
          options={[...kinds.map((key) => ({ key, label: key })), { key: ALL_KINDS, label: words.allKinds }]}
          chosen={kind}
          onChoose={setChosen}
        />
        <OneOf
          label={words.period}
          options={periods.map((key) => ({ key, label: words.periods[key] }))}
          chosen={period}
          onChoose={setPeriod}
        />
      </div>
      <All {...props} isPaper={false} />
      <LeftOut pictured={pictured} />
      <p className="note">{words.caution}</p>
      <PrintPress
        press={words.print}
        page={
          <>
            <h1>{words.printTitle}</h1>
            <All {...props} isPaper />
            <p>{words.caution}</p>
            <PaperFoot {...paper} />
          </>
        }
      />
    </>
  );
}

interface OneOfProps<K extends string> {
  readonly label: string;
  readonly options: readonly { readonly key: K; readonly label: string }[];
  readonly chosen: K;
  readonly onChoose: (key: K) => void;
}

function OneOf<K extends string>({ label, options, chosen, onChoose }: OneOfProps<K>) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={chosen} onChange={({ target }) => onChoose(target.value as K)}>
        {options.map((one) => (
          <option key={one.key} value={one.key}>
            {one.label}
          </option>
        ))}
      </select>
    </div>
  );
}

/** The page to hand round names nobody: wear by person stays on screen. */
function All(props: PictureProps) {
  return (
    <>
      <DueByMonth {...props} />
      <Lives {...props} />
      <Unplanned {...props} />
      <Reasons {...props} />
      {!props.isPaper && <Wear {...props} />}
    </>
  );
}

/** What could not be counted, with its reason: never in silence. */
function LeftOut({ pictured: { leftOut, sheetRows } }: { readonly pictured: Pictured }) {
  if (leftOut.length === 0) return null;
  const lines = (["changes", "tubes"] as const).flatMap((table) =>
    reasonsLeftOut.flatMap((why) => {
      const rows = leftOut.filter((one) => one.table === table && one.why === why);
      if (rows.length === 0) return [];
      const places = rows.map(({ row }) => sheetRows[table][row]!);
      return [words.leftOutLine(words.leftOutOf[table], words.whyLeftOut[why], places)];
    }),
  );
  return (
    <Notice kind="caution">
      <p>
        <strong>{words.leftOut(leftOut.length)}</strong>
      </p>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Notice>
  );
}
