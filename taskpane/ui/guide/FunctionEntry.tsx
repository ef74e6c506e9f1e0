import { useState } from "react";
import { NAMESPACE } from "../../../src/formula/ours";
import { usage } from "../../../functions/formula-text";
import type { SheetFunction } from "../../../src/worksheet/define";
import { evidence as evidenceTexts, guide as guideTexts } from "../../texts/guide";
import type { Overview, Workbook } from "../../workbook/port";
import { Sentences } from "../parts/Sentences";
import { Examples } from "./Examples";
import { PutInCellForm, type KeptArguments } from "../put-in-cell/PutInCellForm";

interface Props {
  readonly fn: SheetFunction;
  readonly workbook: Workbook | null;
  readonly overview: Overview | null;
  readonly locale: string;
  readonly kept: KeptArguments;
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

function Inside({ fn, workbook, overview, locale, kept }: Props) {
  const { documentation } = fn;
  const canPut = workbook?.can("writeFormula");
  return (
    <div className="entry-body">
      <code className="formula">={usage(fn)}</code>
      {documentation && <p>{documentation.details}</p>}
      {canPut === true && workbook && overview && (
        <details className="fold put">
          <summary>{guideTexts.put}</summary>
          <PutInCellForm fn={fn} workbook={workbook} overview={overview} kept={kept} />
        </details>
      )}
      {typeof canPut === "string" && <p className="note">{canPut}</p>}
      <div className="close-stack">
        <h4>{guideTexts.arguments}</h4>
        <ul className="rows">
          {fn.order.map(({ name, param }) => (
            <li key={name} className="close-stack">
              <span>
                <span className="argument-name">{name}</span>{" "}
                {param.optional && <span className="mark">{guideTexts.optional}</span>}
              </span>
              <span>{param.help}</span>
              <span className="note">
                {[
                  param.mode === "range" ? guideTexts.aRange : "",
                  param.unit ? guideTexts.unit(param.unit) : "",
                  param.limits ?? "",
                  param.words ? guideTexts.oneOf(param.words) : "",
                  param.optional
                    ? guideTexts.leftOut(
                        param.fallbackHelp ?? (param.fallback === undefined ? "" : String(param.fallback)),
                      )
                    : "",
                ]
                  .filter((part) => part !== "" && part !== guideTexts.leftOut(""))
                  .join("; ")}
              </span>
            </li>
          ))}
        </ul>
      </div>
      <div className="close-stack">
        <h4>{guideTexts.gives}</h4>
        <p>
          {fn.result.help}
          {fn.result.unit ? `, ${fn.result.unit}` : ""}.{" "}
          <span className="note">{guideTexts.ifBlank(fn.result.blank)}</span>
        </p>
      </div>
      {documentation && documentation.cautions.length > 0 && (
        <div className="close-stack">
          <h4>{guideTexts.cautions}</h4>
          <Sentences of={documentation.cautions} />
        </div>
      )}
      <Examples fn={fn} locale={locale} />
      {documentation && (
        <div className="close-stack">
          <h4>{guideTexts.evidence}</h4>
          <p>{evidenceTexts[documentation.evidence]}.</p>
          <ul className="bullets note">
            {documentation.sources.length === 0 ? (
              <li>{guideTexts.noSource}</li>
            ) : (
              documentation.sources.map((source) => <li key={source}>{source}</li>)
            )}
          </ul>
        </div>
      )}
    </div>
  );
}
