/**
 * Who is meant: an identifier is typed, born and access are read back, and somebody says yes. Nothing else of the
 * person is shown before that.
 */
import { useEffect, useRef, useState } from "react";
import { dateOf, known, textOf } from "../../actions/caseload/cells";
import { whoIsMeant, type Device, type Meant } from "../../actions/caseload/identity";
import { placeOf, readCaseload, valueIn, type Caseload } from "../../actions/caseload/read";
import { forms } from "../../texts/forms";
import type { Workbook } from "../../workbook/port";
import { useAnnounce } from "../parts/announce";
import { dateText } from "../parts/dates";
import { TextField } from "./Field";
import { Notice } from "../parts/Notice";
import { Step } from "../parts/Step";
import { useReveal } from "../parts/useReveal";

const words = forms.person;

export interface Confirmed {
  readonly caseload: Caseload;
  readonly meant: Meant;
  /** Null where it is not known which row is meant; only where `canDoubt`. */
  readonly device: Device | null;
}

interface Props {
  readonly workbook: Workbook;
  readonly locale: string;
  /** An answer is wanted even where the rows are in doubt: the telephone call. */
  readonly canDoubt: boolean;
  /** A look-up begins: what was shown of the last one is out of date. */
  readonly onLook?: () => void;
  readonly onConfirmed: (confirmed: Confirmed) => void;
}

interface Found {
  readonly caseload: Caseload;
  readonly meant: Meant;
  readonly typed: string;
}

export function FindPerson({ workbook, locale, canDoubt, onLook, onConfirmed }: Props) {
  const announce = useAnnounce();
  const [id, setId] = useState("");
  const [fault, setFault] = useState<string | undefined>(undefined);
  const [isLooking, setLooking] = useState(false);
  const [found, setFound] = useState<Found | null>(null);

  async function look() {
    const typed = id.trim();
    if (typed === "") return setFault(words.give);
    onLook?.();
    setLooking(true);
    setFault(undefined);
    const caseload = await readCaseload(workbook).catch((error: unknown) => ({
      is: "failed" as const,
      sentence: forms.form.lookFailed(String(error)),
    }));
    setLooking(false);
    if (caseload.is !== "caseload") {
      announce(caseload.sentence);
      return setFault(caseload.sentence);
    }
    const meant = whoIsMeant(caseload.tubes, typed);
    if (meant.devices.length > 0) return setFound({ caseload, meant, typed });
    announce(words.nobody(typed));
    setFault(words.nobody(typed));
    if (canDoubt) onConfirmed({ caseload, meant, device: null });
  }

  if (found) {
    return (
      <ReadBack
        found={found}
        workbook={workbook}
        locale={locale}
        canDoubt={canDoubt}
        onDevice={(device) => onConfirmed({ ...found, device })}
        onNo={() => setFound(null)}
      />
    );
  }
  return (
    <Step title={words.title}>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          void look();
        }}
      >
        <TextField name="id" isRequired label={words.id} hint={words.hint} fault={fault} value={id} onChange={setId} />
        <div className="presses">
          <button type="submit" className="button primary" disabled={isLooking}>
            {isLooking ? words.looking : words.find}
          </button>
        </div>
      </form>
    </Step>
  );
}

interface ReadBackProps extends Omit<Props, "onLook" | "onConfirmed"> {
  readonly found: Found;
  readonly onDevice: (device: Device | null) => void;
  readonly onNo: () => void;
}

function ReadBack({ found: { caseload, meant }, workbook, locale, canDoubt, onDevice, onNo }: ReadBackProps) {
  const heading = useRef<HTMLDivElement>(null);
  const reveal = useReveal(workbook);
  useEffect(() => heading.current?.focus(), []);
  const { devices, doubt } = meant;
  const isOne = devices.length === 1;
  return (
    <Step title={words.readBack}>
      {/* The keyboard is moved here: the field that it stood on is gone. */}
      <div className="stack" ref={heading} tabIndex={-1}>
        {doubt !== null && (
          <Notice kind="problem">
            <p>{doubt}</p>
            {!canDoubt && <p>{words.mend}</p>}
          </Notice>
        )}
        {devices.map((device) => (
          <dl className="pairs" key={device.row.index}>
            <dt>{words.id}</dt>
            <dd>
              <strong>{device.id}</strong>
              {!isOne && ` (${words.row(device.row.sheetRow)})`}
            </dd>
            <dt>{words.born}</dt>
            <dd>
              <strong>{bornText(device, locale)}</strong>
            </dd>
            <dt>{words.access}</dt>
            <dd>
              <strong>{forms.ends[device.access]}</strong>
            </dd>
          </dl>
        ))}
      </div>
      <div className="presses">
        {doubt === null &&
          devices.map((device) => (
            <button key={device.row.index} type="button" className="button primary" onClick={() => onDevice(device)}>
              {isOne ? words.yes : words.yesDevice(forms.ends[device.access])}
            </button>
          ))}
        {canDoubt && !isOne && (
          <button type="button" className="button" onClick={() => onDevice(null)}>
            {doubt === null ? words.unsure : words.yes}
          </button>
        )}
        {doubt !== null &&
          devices.map(({ row }) => (
            <button
              key={row.index}
              type="button"
              className="button"
              onClick={() => reveal(placeOf(caseload.tubes, row))}
            >
              {words.showRow(row.sheetRow)}
            </button>
          ))}
        <button type="button" className="button" onClick={onNo}>
          {words.no}
        </button>
      </div>
    </Step>
  );
}

/** The identifier, and what was read back; null where nobody of that name is in the list. */
export function whoIs(
  { meant, device }: Confirmed,
  locale: string,
): { readonly id: string; readonly told: string } | null {
  const one = device ?? meant.devices[0];
  if (!one) return null;
  const told = device ? words.told(bornText(device, locale), forms.ends[device.access]) : words.toldUnsure;
  return { id: one.id, told };
}

function bornText({ row }: Device, locale: string): string {
  const value = valueIn(row, "Born");
  const day = known(dateOf(value));
  if (day !== null) return dateText(day, locale);
  return textOf(value) === "" ? words.noBirth : textOf(value);
}
