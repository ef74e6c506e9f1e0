import { useState } from "react";
import type { SheetFunction } from "../../../src/worksheet/define";
import { givesDate } from "../../../src/worksheet/result-kind";
import { putInCell, targetOf, type Put } from "../../actions/put-in-cell";
import { guide as guideTexts } from "../../texts/guide";
import { pane as paneTexts } from "../../texts/pane";
import type { Overview, Workbook } from "../../workbook/port";
import { useAnnounce } from "../parts/announce";
import { EntryForm } from "../forms/EntryForm";
import { TextField, WordField } from "../forms/Field";
import { Notice } from "../parts/Notice";
import { TakeBack } from "../parts/TakeBack";
import { callText, fieldText, readTyped, type Expression } from "./expression";

/** Dates that the add-in writes show like this (design: "Dates we write"). */
const DATE_FORMAT = "d mmm yyyy";

/** What was typed for each function, by its name: it outlives another search and a closed entry. */
export type KeptArguments = Map<string, readonly string[]>;

interface Props {
  readonly fn: SheetFunction;
  readonly workbook: Workbook;
  readonly overview: Overview;
  readonly kept: KeptArguments;
}

export function PutInCellForm({ fn, workbook, overview, kept }: Props) {
  const announce = useAnnounce();
  const first = fn.documentation?.examples[0]?.args ?? {};
  const [typed, setTyped] = useState(() => kept.get(fn.name) ?? fn.order.map(({ name }) => fieldText(first[name])));
  const [isBusy, setBusy] = useState(false);
  const [put, setPut] = useState<Put | null>(null);

  function change(at: number, text: string) {
    const after = typed.map((old, i) => (i === at ? text : old));
    kept.set(fn.name, after);
    setTyped(after);
  }

  const names = overview.names.map(({ name }) => name);
  const read = fn.order.map(({ param }, i) => readArgument(param, typed[i] ?? "", names));
  const formula = callText(
    fn.name,
    read.map(({ text }) => text),
  );
  const faults = fn.order.flatMap(({ name, param }, i) =>
    !param.optional && read[i]?.as === "nothing" ? [{ field: name, sentence: guideTexts.missing(name) }] : [],
  );
  const target = targetOf(overview);
  const choices = Object.fromEntries(fn.order.map(({ name }, i) => [name, typed[i]]));

  async function onPut() {
    if (isBusy) return;
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
    <EntryForm faults={faults} onSubmit={() => void onPut()}>
      <p className="note">{guideTexts.putLead}</p>
      {fn.order.map(({ name, param }, i) => (
        <ArgumentField
          key={name}
          name={name}
          param={param}
          value={typed[i] ?? ""}
          taken={read[i]?.as ?? "nothing"}
          onChange={(text) => change(i, text)}
        />
      ))}
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
    </EntryForm>
  );
}

type Argument = SheetFunction["order"][number]["param"];

/** A word that is chosen is a text, however it looks. */
const readArgument = (param: Argument, typed: string, names: readonly string[]): Expression =>
  param.mode === "choice" && typed !== "" && readTyped(typed).as !== "cell"
    ? { as: "text", text: readTyped(`"${typed}"`).text }
    : readTyped(typed, names);

interface ArgumentProps {
  readonly name: string;
  readonly param: Argument;
  readonly value: string;
  /** What was typed is read as this. */
  readonly taken: Expression["as"];
  readonly onChange: (text: string) => void;
}

function ArgumentField({ name, param, value, taken, onChange }: ArgumentProps) {
  const label = param.unit ? `${name}, ${param.unit}` : name;
  const about = { name, label, value, isRequired: !param.optional, onChange };
  if (param.mode === "choice")
    return (
      <WordField
        {...about}
        of={param.words ?? []}
        {...(param.optional && { blank: guideTexts.leftOut(param.words?.[0] ?? "") })}
        hint={param.help}
      />
    );
  const nothing = param.optional ? guideTexts.optional : param.help;
  return <TextField {...about} hint={taken === "nothing" ? nothing : guideTexts.readAs[taken]} />;
}
