import { useId, useRef, useState } from "react";
import type { SheetFunction } from "../../../src/worksheet/define";
import { givesDate } from "../../../src/worksheet/result-kind";
import { putInCell, targetOf, type Put } from "../../actions/put-in-cell";
import { guide as guideTexts } from "../../texts/guide";
import { pane as paneTexts } from "../../texts/pane";
import type { Overview, Workbook } from "../../workbook/port";
import { useAnnounce } from "../parts/announce";
import { Notice } from "../parts/Notice";
import { TakeBack } from "../parts/TakeBack";
import { callText, fieldText, readTyped, type Expression } from "./expression";

/** Dates that the add-in writes show like this (design: "Dates we write"). */
const DATE_FORMAT = "d mmm yyyy";

interface Props {
  readonly fn: SheetFunction;
  readonly workbook: Workbook;
  readonly overview: Overview;
}

export function PutInCellForm({ fn, workbook, overview }: Props) {
  const id = useId();
  const announce = useAnnounce();
  const first = fn.documentation?.examples[0]?.args ?? {};
  const [typed, setTyped] = useState(() => fn.order.map(({ name }) => fieldText(first[name])));
  const [isBusy, setBusy] = useState(false);
  const [put, setPut] = useState<Put | null>(null);
  const [asked, setAsked] = useState(false);
  const fields = useRef<(HTMLInputElement | HTMLSelectElement | null)[]>([]);

  const names = overview.names.map(({ name }) => name);
  const read = fn.order.map(({ param }, i): Expression => {
    const text = typed[i] ?? "";
    return param.mode === "choice" && text !== "" && readTyped(text).as !== "cell"
      ? { as: "text", text: readTyped(`"${text}"`).text }
      : readTyped(text, names);
  });
  const formula = callText(
    fn.name,
    read.map(({ text }) => text),
  );
  const isMissing = (i: number): boolean => fn.order[i]?.param.optional === false && read[i]?.as === "nothing";
  const target = targetOf(overview);
  const choices = Object.fromEntries(fn.order.map(({ name }, i) => [name, typed[i]]));

  async function onPut() {
    const missing = fn.order.findIndex((_, i) => isMissing(i));
    setAsked(true);
    if (missing >= 0) return fields.current[missing]?.focus();
    setBusy(true);
    const outcome = await putInCell(
      workbook,
      formula,
      givesDate(fn, 0, choices) ? DATE_FORMAT : undefined,
      new AbortController().signal,
    ).catch((error: unknown): Put => ({ sentence: paneTexts.unexpected(String(error)), receipt: null }));
    setBusy(false);
    setPut(outcome);
    announce(outcome.sentence);
  }

  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void onPut();
      }}
    >
      <p className="note">{guideTexts.putLead}</p>
      {fn.order.map(({ name, param }, i) => {
        const fault = asked && isMissing(i);
        const change = (text: string) => setTyped((before) => before.map((old, at) => (at === i ? text : old)));
        const taken = read[i]?.as ?? "nothing";
        return (
          <div className="field" key={name}>
            <label htmlFor={`${id}${name}`}>
              {name}
              {param.unit ? `, ${param.unit}` : ""}
            </label>
            {param.mode === "choice" ? (
              <select
                id={`${id}${name}`}
                value={typed[i]}
                ref={(element) => void (fields.current[i] = element)}
                onChange={(event) => change(event.target.value)}
              >
                {param.optional && <option value="">{guideTexts.leftOut(param.words?.[0] ?? "")}</option>}
                {param.words?.map((word) => (
                  <option key={word} value={word}>
                    {word}
                  </option>
                ))}
              </select>
            ) : (
              <input
                id={`${id}${name}`}
                value={typed[i]}
                autoComplete="off"
                spellCheck={false}
                aria-describedby={`${id}${name}taken`}
                aria-invalid={fault || undefined}
                ref={(element) => void (fields.current[i] = element)}
                onChange={(event) => change(event.target.value)}
              />
            )}
            <span id={`${id}${name}taken`} className={fault ? "fault" : "note"}>
              {fault
                ? guideTexts.missing(name)
                : taken === "nothing"
                  ? param.optional
                    ? guideTexts.optional
                    : param.help
                  : param.mode === "choice"
                    ? param.help
                    : guideTexts.readAs[taken]}
            </span>
          </div>
        );
      })}
      <div className="field">
        <span className="label">{guideTexts.formula}</span>
        <output className="formula">{formula}</output>
      </div>
      <p className="note">
        {typeof target === "string" ? target : guideTexts.selected(target.address, target.sheetName)}
      </p>
      <div className="presses">
        <button type="submit" className="button primary" disabled={isBusy}>
          {isBusy ? guideTexts.putting : guideTexts.put}
        </button>
      </div>
      {put && (
        <Notice kind={put.receipt ? "done" : "problem"}>
          <p>{put.sentence}</p>
          {put.receipt && (
            <div className="presses">
              <TakeBack key={put.sentence} workbook={workbook} receipt={put.receipt} onDone={() => setPut(null)} />
            </div>
          )}
        </Notice>
      )}
    </form>
  );
}
