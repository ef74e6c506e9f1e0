import { useState } from "react";
import { NAMESPACE, usage } from "../../../functions/formula-text";
import type { SheetFunction } from "../../../src/worksheet/define";
import { texts } from "../../texts";
import type { Overview, Workbook } from "../../workbook/port";
import { Examples } from "./Examples";
import { PutInCellForm } from "./PutInCellForm";

interface Props {
  readonly fn: SheetFunction;
  readonly workbook: Workbook | null;
  readonly overview: Overview | null;
  readonly locale: string;
}

/** One function of the guide. Its inside is drawn once it is opened. */
export function FunctionEntry(props: Props) {
  const { fn } = props;
  const [isOpen, setOpen] = useState(false);
  return (
    <li>
      <details className="entry" onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>
          <span className="entry-name">
            {NAMESPACE}.{fn.name}
          </span>
          <span className="entry-summary">{fn.summary}</span>
        </summary>
        {isOpen && <Inside {...props} />}
      </details>
    </li>
  );
}

function Inside({ fn, workbook, overview, locale }: Props) {
  const { documentation } = fn;
  const canPut = workbook?.can("writeFormula");
  return (
    <div className="entry-body">
      <code className="formula">={usage(fn)}</code>
      {documentation && <p>{documentation.details}</p>}
      {canPut === true && workbook && overview && (
        <details className="fold put">
          <summary>{texts.guide.put}</summary>
          <PutInCellForm fn={fn} workbook={workbook} overview={overview} />
        </details>
      )}
      {typeof canPut === "string" && <p className="note">{canPut}</p>}
      <div className="close-stack">
        <h4>{texts.guide.arguments}</h4>
        <ul className="rows">
          {fn.order.map(({ name, param }) => (
            <li key={name} className="close-stack">
              <span>
                <span className="argument-name">{name}</span>{" "}
                {param.optional && <span className="mark">{texts.guide.optional}</span>}
              </span>
              <span>{param.help}</span>
              <span className="note">
                {[
                  param.mode === "range" ? texts.guide.aRange : "",
                  param.unit ? texts.guide.unit(param.unit) : "",
                  param.limits ?? "",
                  param.words ? texts.guide.oneOf(param.words) : "",
                  param.optional
                    ? texts.guide.leftOut(
                        param.fallbackHelp ?? (param.fallback === undefined ? "" : String(param.fallback)),
                      )
                    : "",
                ]
                  .filter((part) => part !== "" && part !== texts.guide.leftOut(""))
                  .join("; ")}
              </span>
            </li>
          ))}
        </ul>
      </div>
      <div className="close-stack">
        <h4>{texts.guide.gives}</h4>
        <p>
          {fn.result.help}
          {fn.result.unit ? `, ${fn.result.unit}` : ""}.{" "}
          <span className="note">{texts.guide.ifBlank(fn.result.blank)}</span>
        </p>
      </div>
      {documentation && documentation.cautions.length > 0 && (
        <div className="close-stack">
          <h4>{texts.guide.cautions}</h4>
          <ul className="bullets">
            {documentation.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </div>
      )}
      <Examples fn={fn} locale={locale} />
      {documentation && (
        <div className="close-stack">
          <h4>{texts.guide.evidence}</h4>
          <p>{texts.evidence[documentation.evidence]}.</p>
          <ul className="bullets note">
            {documentation.sources.length === 0 ? (
              <li>{texts.guide.noSource}</li>
            ) : (
              documentation.sources.map((source) => <li key={source}>{source}</li>)
            )}
          </ul>
        </div>
      )}
    </div>
  );
}
