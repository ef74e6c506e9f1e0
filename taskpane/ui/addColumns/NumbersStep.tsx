import { useId, useState } from "react";
import type { SettingName } from "../../../src/settings/index";
import { NO_SOURCE, refuseNumber } from "../../../src/settings/setting";
import type { Choices, NumberUsed } from "../../actions/add-columns/interface";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import { pane as paneTexts } from "../../texts/pane";
import { Notice } from "../parts/Notice";
import { Step } from "../parts/Step";
import { without } from "../without";

const words = addColumnsTexts.numbers;

interface Props {
  readonly number: number;
  readonly numbers: readonly NumberUsed[];
  readonly choices: Choices;
  readonly choose: (change: Partial<Choices>) => void;
  /** Names of fields that hold no usable number now: nothing is added meanwhile. */
  readonly faulty: ReadonlySet<SettingName>;
  readonly onFaulty: (name: SettingName, isFaulty: boolean) => void;
}

/** The numbers about to be used: default, range across sources, source, evidence; to be changed within limits. */
export function NumbersStep({ number, numbers, choices, choose, onFaulty }: Props) {
  return (
    <Step number={number} title={words.title}>
      <Notice kind="caution">
        <p>{paneTexts.notAgreed}</p>
      </Notice>
      <p className="note">{words.lead}</p>
      <ul className="rows">
        {numbers.map((used) => (
          <NumberField
            key={used.setting.name}
            used={used}
            onNumber={(value) => {
              const others = without(choices.numbers, used.setting.name);
              choose({ numbers: value === used.setting.default ? others : { ...others, [used.setting.name]: value } });
            }}
            onFaulty={onFaulty}
          />
        ))}
      </ul>
    </Step>
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

interface NumberFieldProps {
  readonly used: NumberUsed;
  readonly onNumber: (value: number) => void;
  readonly onFaulty: Props["onFaulty"];
}

function NumberField({ used, onNumber, onFaulty }: NumberFieldProps) {
  const id = useId();
  const { setting, canChange } = used;
  const unit = addColumnsTexts.units[setting.unit];
  const [typed, setTyped] = useState(String(used.value));
  const [fault, setFault] = useState<string | null>(null);

  function onType(text: string) {
    const plain = text.trim().replace(",", ".");
    const value = Number(plain);
    const refusal = plain === "" || !Number.isFinite(value) ? words.notNumber : refuseNumber(setting, value);
    setTyped(text);
    setFault(refusal);
    onFaulty(setting.name, refusal !== null);
    if (refusal === null) onNumber(value);
  }

  const isChanged = typed !== String(setting.default);
  return (
    <li className="field">
      {canChange ? <label htmlFor={id}>{setting.label}</label> : <span className="label">{setting.label}</span>}
      <div className="with-unit">
        {canChange ? (
          <input
            id={id}
            inputMode="decimal"
            autoComplete="off"
            value={typed}
            aria-invalid={fault !== null || undefined}
            aria-describedby={`${id}unit ${id}about`}
            onChange={(event) => onType(event.target.value)}
          />
        ) : (
          <strong>{used.value}</strong>
        )}
        <span id={`${id}unit`}>{unit}</span>
        {canChange && isChanged && (
          <button type="button" className="press" onClick={() => onType(String(setting.default))}>
            {words.reset(`${setting.default} ${unit}`)}
          </button>
        )}
      </div>
      <div id={`${id}about`} className="close-stack">
        {fault !== null && <span className="fault">{fault}</span>}
        <span className="note">
          {words.standard(`${setting.default} ${unit}`)};{" "}
          {setting.range ? words.range(setting.range.words) : words.noRange}.{" "}
          {setting.source.startsWith(NO_SOURCE) ? capital(setting.source) : words.source(setting.source)}.{" "}
          {!canChange && `${words.fixed} `}
          <span className="mark">{setting.evidence}</span>
        </span>
      </div>
    </li>
  );
}
