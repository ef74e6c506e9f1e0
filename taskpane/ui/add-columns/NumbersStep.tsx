import { useId, useState } from "react";
import type { SettingName } from "../../../src/settings/index";
import { refuseNumber } from "../../../src/settings/setting";
import type { Choices, NumberUsed } from "../../actions/add-columns/interface";
import type { Agreement } from "../../actions/clinic-settings/agreement";
import { addColumns as addColumnsTexts } from "../../texts/add-columns";
import { capital } from "../../texts/pieces";
import { Step } from "../parts/Step";
import { without } from "../parts/without";

const words = addColumnsTexts.numbers;

interface Props {
  readonly number: number;
  readonly numbers: readonly NumberUsed[];
  readonly agreed: Agreement;
  /** One of them cannot be used: its field is in sight. */
  readonly hasFaulty: boolean;
  readonly choices: Choices;
  readonly choose: (change: Partial<Choices>) => void;
  /** A field that holds no usable number now: nothing is added meanwhile. */
  readonly onFaulty: (name: SettingName, isFaulty: boolean) => void;
}

/** The numbers about to be used with their range across sources; source, evidence and another number one press away. */
export function NumbersStep({ number, numbers, agreed, hasFaulty, choices, choose, onFaulty }: Props) {
  const isOnSheet = numbers.some(({ from }) => from === "sheet");
  return (
    <Step number={number} title={words.title}>
      <p className={agreed.agreed ? "note" : "fault"}>{agreed.sentence}</p>
      <p className="note">
        {numbers
          .map(({ setting, value }) =>
            words.inUse(setting.label, `${value} ${setting.unit}`, setting.range ?? { least: null, most: null }),
          )
          .join("; ")}
        .
      </p>
      {numbers.map(({ setting, remark }) => remark !== null && <strong key={setting.name}>{remark}</strong>)}
      <details className="fold" open={hasFaulty || undefined}>
        <summary>{words.look}</summary>
        <p className="note">{isOnSheet ? words.leadSheet : words.lead}</p>
        <ul className="rows">
          {numbers.map((used) => (
            <NumberField
              key={used.setting.name}
              used={used}
              onNumber={(value) => {
                const others = without(choices.numbers, used.setting.name);
                choose({
                  numbers: value === used.setting.default ? others : { ...others, [used.setting.name]: value },
                });
              }}
              onFaulty={onFaulty}
            />
          ))}
        </ul>
      </details>
    </Step>
  );
}

interface NumberFieldProps {
  readonly used: NumberUsed;
  readonly onNumber: (value: number) => void;
  readonly onFaulty: Props["onFaulty"];
}

function NumberField({ used, onNumber, onFaulty }: NumberFieldProps) {
  const id = useId();
  const { setting, from, remark } = used;
  const canChange = from === "here";
  const { unit } = setting;
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
        {remark !== null && <strong>{remark}</strong>}
        <span className="note">
          {words.standard(`${setting.default} ${unit}`)};{" "}
          {setting.range ? words.range(setting.range.words) : words.noRange}.{" "}
          {setting.evidence === "clinic setting" ? capital(setting.source) : words.source(setting.source)}.{" "}
          {from === "function" && `${words.fixed} `}
          {from === "sheet" && `${words.onSheet} `}
          <span className="mark">{setting.evidence}</span>
        </span>
      </div>
    </li>
  );
}
