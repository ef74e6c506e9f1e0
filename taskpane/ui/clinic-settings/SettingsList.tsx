import { Fragment } from "react";
import type { ClinicSetting } from "../../../src/settings/setting";
import { doubtful, settingText, type SettingLine, type SettingsView } from "../../actions/clinic-settings";
import { clinicSettings as words } from "../../texts/clinic-settings";
import { capital } from "../../texts/pieces";
import type { Place } from "../../workbook/port";
import { Step } from "../parts/Step";

type Reveal = (place: Place) => void;

/** What is not usual comes first; what nobody has entered and has no default is folded away below it. */
export function ToLookAt({ view, reveal }: { readonly view: SettingsView; readonly reveal: Reveal }) {
  const lines = doubtful(view);
  const odd = lines.filter(({ doubt }) => doubt?.mark !== "not entered");
  const open = lines.filter(({ doubt }) => doubt?.mark === "not entered");
  return (
    <Step title={words.lookAt.title}>
      {odd.length === 0 ? <p>{words.lookAt.none}</p> : <Doubts lines={odd} reveal={reveal} />}
      {open.length > 0 && (
        <details className="fold">
          <summary>{words.lookAt.notEntered(open.length)}</summary>
          <Doubts lines={open} reveal={reveal} />
        </details>
      )}
    </Step>
  );
}

function Doubts({ lines, reveal }: { readonly lines: readonly SettingLine[]; readonly reveal: Reveal }) {
  return (
    <ul className="rows">
      {lines.map((line) => (
        <li key={line.setting.name} className="close-stack">
          <strong>{line.setting.label}</strong>
          <Doubtful line={line} />
          <ShowCell line={line} reveal={reveal} />
        </li>
      ))}
    </ul>
  );
}

/** Every setting in its group: what stands there now, and what is known about it. */
export function AllSettings({ view, reveal }: { readonly view: SettingsView; readonly reveal: Reveal }) {
  return (
    <Step title={view.isThere ? words.all.title : words.all.defaults}>
      {view.isThere && <p className="note">{words.all.lead}</p>}
      <ul className="entries">
        {view.groups.map(({ heading, lines }) => {
          const asks = lines.filter(({ doubt }) => doubt !== null).length;
          return (
            <li key={heading}>
              <details className="entry">
                <summary>
                  <span className="entry-name">{words.all.group(heading, lines.length)}</span>
                  {asks > 0 && (
                    <span className="entry-summary">
                      <span className="mark asks">{words.all.asks(asks)}</span>
                    </span>
                  )}
                </summary>
                <ul className="entry-body plain-list">
                  {lines.map((line) => (
                    <OneSetting key={line.setting.name} line={line} isThere={view.isThere} reveal={reveal} />
                  ))}
                </ul>
              </details>
            </li>
          );
        })}
      </ul>
    </Step>
  );
}

interface LineProps {
  readonly line: SettingLine;
  readonly isThere: boolean;
  readonly reveal: Reveal;
}

function OneSetting({ line, isThere, reveal }: LineProps) {
  const { setting, now } = line;
  const facts = [
    ...(isThere ? [[words.line.now, now ?? words.line.nothing]] : []),
    [words.line.standard, defaultText(setting)],
    [words.line.range, setting.range ? `${setting.range.words} ${unitOf(setting)}`.trim() : words.line.noRange],
    ...(setting.kind === "number" ? [[words.line.allowed, words.line.between(...setting.allowed, setting.unit)]] : []),
    ...(setting.kind === "text" && setting.words ? [[words.line.allowed, setting.words.join(", ")]] : []),
    [words.line.source, capital(setting.source)],
  ];
  return (
    <li className="close-stack">
      <strong>{setting.label}</strong>
      <Doubtful line={line} />
      <dl className="pairs">
        {facts.map(([term, fact]) => (
          <Fragment key={term}>
            <dt>{term}</dt>
            <dd>{fact}</dd>
          </Fragment>
        ))}
      </dl>
      <div className="presses">
        {/* Of settings without a source the line above says the same already. */}
        {setting.evidence !== "clinic setting" && <span className="mark">{setting.evidence}</span>}
        <ShowCell line={line} reveal={reveal} />
      </div>
    </li>
  );
}

/** A text's unit is no unit ("text", "word"). */
const unitOf = (setting: ClinicSetting): string =>
  setting.kind === "number" || setting.unit === "cm" ? setting.unit : "";

const defaultText = (setting: ClinicSetting): string =>
  settingText(setting, setting.default) ?? (setting.kind === "number" ? words.line.noDefault : words.line.clinicOnly);

function Doubtful({ line: { doubt } }: { readonly line: SettingLine }) {
  return (
    doubt && (
      <span>
        <span className="mark asks">{doubt.mark}</span> {doubt.sentence}
      </span>
    )
  );
}

function ShowCell({ line: { setting, where }, reveal }: { readonly line: SettingLine; readonly reveal: Reveal }) {
  return (
    where && (
      <button
        type="button"
        className="press"
        aria-label={words.line.showOf(setting.label)}
        onClick={() => reveal(where)}
      >
        {words.line.show}
      </button>
    )
  );
}
