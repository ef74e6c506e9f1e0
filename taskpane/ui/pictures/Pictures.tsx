/**
 * Pictures: what a caseload's or a list's own past can tell, each with its sentence first. A press asks one question;
 * period and kind are chosen once for all of them.
 */
import { useEffect, useMemo, useState, type ComponentType } from "react";
import { addMonths } from "../../../src/maths/calendar";
import { guessKind } from "../../../src/columns/kind-guess";
import { kindsIn, ofKind, reasonsLeftOut } from "../../../src/pictures/devices";
import { meanings, type Meaning } from "../../../src/pictures/own-devices";
import { kinds as tubeKinds } from "../../../src/settings/kinds";
import { readPictured, type NoPictures, type OwnSource, type Pictured } from "../../actions/pictures";
import { agreement } from "../../actions/clinic-settings/agreement";
import { pane as paneTexts } from "../../texts/pane";
import { pictures as words } from "../../texts/pictures";
import type { Overview, Workbook } from "../../workbook/port";
import { Notice } from "../parts/Notice";
import type { JobProps } from "../pane/define-job";
import { PaperFoot, PrintPress } from "../print/Paper";
import { Checks } from "./Checks";
import { DueByMonth } from "./DueByMonth";
import { Intervals } from "./Intervals";
import { Lives } from "./Lives";
import { OneOf } from "./OneOf";
import { OnePerson } from "./OnePerson";
import { PutInto } from "./PutInSheet";
import type { PictureProps } from "./picture-props";
import { Reasons } from "./Reasons";
import { Unplanned } from "./Unplanned";
import { Wear } from "./Wear";

type Key = keyof typeof words.names;
const pictures: Readonly<Record<Key, ComponentType<PictureProps>>> = {
  due: DueByMonth,
  life: Lives,
  unplanned: Unplanned,
  reasons: Reasons,
  intervals: Intervals,
  wear: Wear,
  checks: Checks,
  person: OnePerson,
};
const keys = Object.keys(pictures) as readonly Key[];
/** They show identifiers: no part of the page that is handed round. */
const aboutPeople: readonly Key[] = ["wear", "checks", "person"];

type Period = keyof typeof words.periods;
const ALL_KINDS = "";
const periods: readonly Period[] = ["12", "24", "all"];

export function Pictures(props: JobProps) {
  const { workbook, overview } = props;
  if (!workbook || !overview) return <p>{paneTexts.waiting}</p>;
  /* What was read of one workbook is never shown while another one stands there. */
  return <OfThisBook key={overview.book} {...props} workbook={workbook} overview={overview} />;
}

interface Props extends JobProps {
  readonly workbook: Workbook;
  readonly overview: Overview;
}

type Said = Readonly<Record<string, Meaning>>;

function usePictured({ workbook, overview, today, isShown }: Props, said: Said): Pictured | NoPictures | null {
  const [read, setRead] = useState<Pictured | NoPictures | null>(null);
  useEffect(() => {
    if (!isShown) return;
    let isCurrent = true;
    readPictured(workbook, overview, today, new Map(Object.entries(said))).then(
      (found) => isCurrent && setRead(found),
      /* A host that is busy tells again when it is done; until then no picture is better than an old one. */
      () => isCurrent && setRead(null),
    );
    return () => void (isCurrent = false);
  }, [isShown, overview, today, workbook, said]);
  return read;
}

function OfThisBook(props: Props) {
  const { overview, today, locale, version } = props;
  const [said, setSaid] = useState<Said>({});
  const [shown, setShown] = useState<Key>("due");
  const [period, setPeriod] = useState<Period>("12");
  const [chosen, setChosen] = useState<string | null>(null);
  const pictured = usePictured(props, said);
  const all = pictured?.is === "pictured" ? pictured.devices : null;
  const kinds = useMemo(() => kindsIn(all ?? []), [all]);
  const kind = chosen !== null && (chosen === ALL_KINDS || kinds.includes(chosen)) ? chosen : firstKind(kinds);
  const one = kind === ALL_KINDS ? null : kind;
  const devices = useMemo(() => ofKind(all ?? [], one), [all, one]);
  if (!pictured) return <p>{paneTexts.loading}</p>;
  if (pictured.is === "none") {
    return (
      <Notice kind="plain">
        <p>{pictured.sentence}</p>
      </Notice>
    );
  }
  if (pictured.devices.length === 0) {
    return (
      <>
        {pictured.own && <OwnList own={pictured.own} said={said} onSaid={setSaid} />}
        <p>{words.noDevices}</p>
        <LeftOut pictured={pictured} />
      </>
    );
  }
  const first = pictured.devices.reduce((least, { from }) => Math.min(least, from), Infinity);
  const since = period === "all" ? first : Math.max(first, addMonths(pictured.asOf, -Number(period)));
  const given = { pictured, devices, kind: one, since, locale };
  const paper = { overview, today, locale, version, agreed: agreement(overview, today).sentence };
  const Shown = pictures[shown];
  const printed = aboutPeople.includes(shown) ? [shown] : keys.filter((key) => !aboutPeople.includes(key));
  return (
    <>
      <div className="parts" role="group" aria-label={words.questions}>
        {keys.map((key) => (
          <button key={key} type="button" aria-pressed={shown === key} onClick={() => setShown(key)}>
            {words.names[key]}
          </button>
        ))}
      </div>
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
      <PutInto.Provider value={props.workbook}>
        <Shown {...given} isPaper={false} />
      </PutInto.Provider>
      {pictured.own && <OwnList own={pictured.own} said={said} onSaid={setSaid} />}
      <LeftOut pictured={pictured} />
      <p className="note">{words.caution}</p>
      <PrintPress
        press={aboutPeople.includes(shown) ? words.printOne : words.print}
        page={
          <>
            <h1>{words.printTitle}</h1>
            {printed.map((key) => {
              const Printed = pictures[key];
              return <Printed key={key} {...given} isPaper />;
            })}
            <p>{words.caution}</p>
            <PaperFoot {...paper} />
          </>
        }
      />
    </>
  );
}

/** Balloons wear out: they are what most is asked about. */
const firstKind = (kinds: readonly string[]): string =>
  kinds.find((kind) => kind === "balloon" || tubeKinds.some((one) => one.key === guessKind(kind) && one.hasBalloon)) ??
  ALL_KINDS;

interface OwnListProps {
  readonly own: OwnSource;
  readonly said: Said;
  readonly onSaid: (said: Said) => void;
}

/** What was read of somebody's own list, what is missing in it, and the words that only a person can explain. */
function OwnList({ own, said, onSaid }: OwnListProps) {
  const asked = [...Object.keys(said).filter((key) => !own.openReasons.some((open) => open.key === key))];
  const options = [
    { key: "", label: words.own.open },
    ...meanings.map((key) => ({ key, label: words.own.meanings[key] })),
  ];
  const say = (key: string, meaning: string) => {
    const others = Object.entries(said).filter(([word]) => word !== key);
    onSaid(Object.fromEntries(meaning === "" ? others : [...others, [key, meaning as Meaning]]));
  };
  const lines = (["person", "cameOut", "reason", "due"] as const)
    .filter((part) => own.missing.includes(part))
    .filter((part) => part !== "reason" || !own.missing.includes("cameOut"))
    .map((part) => words.own.without[part]);
  return (
    <>
      {(own.openReasons.length > 0 || asked.length > 0) && (
        <fieldset>
          <legend>{words.own.reasons}</legend>
          <p className="note">{words.own.reasonsLead}</p>
          {own.openReasons.map(({ key, word, rows }) => (
            <OneOf
              key={key}
              label={words.own.rowsOf(word, rows.length)}
              options={options}
              chosen=""
              onChoose={(meaning) => say(key, meaning)}
            />
          ))}
          {asked.map((key) => (
            <OneOf
              key={key}
              label={key}
              options={options}
              chosen={said[key]!}
              onChoose={(meaning) => say(key, meaning)}
            />
          ))}
        </fieldset>
      )}
      <p className="note">
        {words.own.read(
          own.label,
          own.found.map(({ part, header }) => words.own.pair(words.own.part[part], header)),
        )}
      </p>
      {lines.length > 0 && (
        <Notice kind="caution">
          {lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </Notice>
      )}
    </>
  );
}

/** What could not be counted, with its reason: never in silence. */
function LeftOut({ pictured: { leftOut, sheetRows, own } }: { readonly pictured: Pictured }) {
  if (leftOut.length === 0) return null;
  const tables = own ? words.leftOutOfOwn : words.leftOutOf;
  const lines = (["changes", "tubes"] as const).flatMap((table) =>
    reasonsLeftOut.flatMap((why) => {
      const rows = leftOut.filter((one) => one.table === table && one.why === why);
      if (rows.length === 0) return [];
      const places = rows.map(({ row }) => sheetRows[table][row]!);
      return [words.leftOutLine(tables[table], words.whyLeftOut[why], places)];
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
