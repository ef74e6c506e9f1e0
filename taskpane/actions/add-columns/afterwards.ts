/** What to say once it has been tried. Nothing missing is passed over in silence here either. */
import type { Done, Receipt } from "../../workbook/port";
import type { Afterwards } from "../action";
import type { AddColumnsPlan } from "./interface";
import { count, rowList, together } from "../../texts/pieces";

export function afterColumns(plan: AddColumnsPlan, receipt: Receipt): Afterwards {
  const { outcome } = receipt;
  const standing = receipt.done.filter(({ changed }) => changed);
  const canTakeBack = standing.length > 0;
  const columns =
    standing.find(({ step }) => step.kind === "addColumns") ??
    standing.find(({ step }) => step.kind === "refreshColumn");
  if (outcome === "done")
    return { outcome, sentences: doneSentences(plan), where: columns?.place ?? plan.place, canTakeBack };
  const still = canTakeBack
    ? `Still there: ${together(standing.map((done) => named(plan, done)))}.`
    : "Nothing was changed.";
  return { outcome, sentences: [receipt.sentence, still], where: columns?.place ?? null, canTakeBack };
}

function named({ columns }: AddColumnsPlan, { step }: Done): string {
  switch (step.kind) {
    case "addColumns":
      return `the new columns ${together(step.columns.map(({ header }) => header))}`;
    case "refreshColumn":
      return `the columns written anew (${together(columns.flatMap(({ refresh }) => refresh?.header ?? []))})`;
    case "defineName":
      return `the name ${step.name}`;
    default:
      return "a formula";
  }
}

function doneSentences({ columns, list }: AddColumnsPlan): readonly string[] {
  const rows = columns[0]?.of ?? 0;
  const added = columns.filter(({ refresh }) => refresh === null).map(({ header }) => header);
  const refreshed = columns.flatMap(({ refresh }) => refresh?.header ?? []);
  return [
    ...columns.flatMap(({ header, of, groups }) =>
      [false, true].flatMap((isDoubt) => {
        const found = groups.flatMap(({ severity, rows }) => ((severity === "doubt") === isDoubt ? rows : []));
        if (found.length === 0) return [];
        const what = isDoubt
          ? `${count(found.length, "answer")} to look at`
          : `${count(found.length, "row")} of ${of} without a usable answer`;
        return [`${header}: ${what} (${rowList(found.sort((a, b) => a - b))}).`];
      }),
    ),
    ...(added.length === 0 ? [] : [`Added ${together(added)} to the ${list.label}: ${count(rows, "row")}.`]),
    ...(refreshed.length === 0
      ? []
      : [`Wrote ${together(refreshed)} anew in the ${list.label}: ${count(rows, "row")}.`]),
  ];
}
