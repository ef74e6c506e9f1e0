/** What the page and the thread that holds the packages tell each other. Long lists go in portions: each is read at once. */
import type { CellEdit, NewTableColumn, PackageEdits, Patched, Refusal, TableEdit, ValuesByRow } from "../../package";
import type { StoredFormula, WorkbookData } from "../../package";
import type { Display } from "../open/display";

/** A column with its results as a list. */
export type SentColumn = Omit<NewTableColumn, "valueAt"> & { readonly results?: ValuesByRow };
export type SentTable = Omit<TableEdit, "addColumns"> & { readonly addColumns?: readonly SentColumn[] };
/** The cells come before, in portions; `fills` are the package's own convenience and never sent. */
export type SentEdits = Omit<PackageEdits, "tables"> & { readonly tables?: readonly SentTable[] };

/** `job` tells works apart, `book` the packages that are held. */
export type Asked =
  | { readonly ask: "open"; readonly job: number; readonly bytes: Uint8Array }
  | { readonly ask: "cells"; readonly job: number; readonly sheet: string; readonly cells: readonly SentCell[] }
  | { readonly ask: "patch"; readonly job: number; readonly book: number; readonly edits: SentEdits }
  | { readonly ask: "stop"; readonly job: number }
  | { readonly ask: "release"; readonly book: number };

export type SentCell = readonly [address: string, edit: CellEdit];

/** The lists of the data, by whose they are: "" for the texts of all sheets. */
export type Portion = { readonly sheet: string } & (
  | { readonly list: "strings" | "texts"; readonly items: readonly string[] }
  | { readonly list: "formulas"; readonly items: readonly StoredFormula[] }
);

export type Told =
  | { readonly tell: "ready" }
  | { readonly tell: "share"; readonly job: number; readonly share: number }
  | { readonly tell: "portion"; readonly job: number; readonly portion: Portion }
  | { readonly tell: "opened"; readonly job: number; readonly data: WorkbookData; readonly display: Display }
  | { readonly tell: "patched"; readonly job: number; readonly patched: Patched }
  | { readonly tell: "refused"; readonly job: number; readonly refusal: Refusal }
  | { readonly tell: "stopped"; readonly job: number }
  | { readonly tell: "failed"; readonly job: number; readonly message: string };

export const PORTION = 10_000;

export function* portions<T>(items: readonly T[]): Generator<readonly T[], void, void> {
  for (let from = 0; from < items.length; from += PORTION) yield items.slice(from, from + PORTION);
}
