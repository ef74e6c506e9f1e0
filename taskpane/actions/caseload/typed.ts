/** What people type into a form: texts as they stand in its fields, read into cells, or why they cannot be. */
import { readFrench } from "../../../src/sizes/french";
import { dayOfText } from "../../../src/worksheet/dates";
import { SheetError } from "../../../src/worksheet/error";
import { numberOfText } from "../../../src/worksheet/numbers";
import { lists, type ListName, type WordOf } from "./lists";

/** Something that must be mended before anything is recorded. */
export interface Fault {
  readonly field: string;
  readonly sentence: string;
}

/** Nothing is planned until these are mended. */
export interface Faulty {
  readonly outcome: "faulty";
  readonly faults: readonly Fault[];
}

/** What a form says of its fields. */
export interface FieldsOf<Form> {
  /** The labels that are seen, in the order of the screen. */
  readonly labels: { readonly [F in keyof Form]: string };
  /** What must be filled in, each with what to do where it is blank. */
  readonly required: { readonly [F in keyof Form]?: string };
  /** Whether a field is shown, by what stands in the others; what is not shown counts as blank. Left out: all are. */
  applies?(field: keyof Form, form: Form): boolean;
}

/** Reads fields one by one and collects what is wrong with them, in the labels that are seen. */
export class Reader<Form extends Readonly<Record<string, string>>> {
  private readonly found: Fault[] = [];

  constructor(
    private readonly form: Form,
    private readonly fields: FieldsOf<Form>,
  ) {
    for (const [field, what] of Object.entries(fields.required) as [keyof Form & string, string][])
      if (this.applies(field) && this.text(field) === null) this.fault(field, what);
  }

  /** In the order of the screen. */
  get faults(): readonly Fault[] {
    const order = Object.keys(this.fields.labels);
    return [...this.found].sort((a, b) => order.indexOf(a.field) - order.indexOf(b.field));
  }

  /** @param what a fragment: what is wrong, or what to do */
  fault(field: keyof Form & string, what: string): null {
    this.found.push({ field, sentence: `${this.fields.labels[field]}: ${what}.` });
    return null;
  }

  private applies(field: keyof Form & string): boolean {
    return this.fields.applies?.(field, this.form) ?? true;
  }

  /** Outer spaces aside; a blank is null, and so is what does not apply. */
  text(field: keyof Form & string): string | null {
    const text = this.applies(field) ? this.form[field]!.trim() : "";
    return text === "" ? null : text;
  }

  word<L extends ListName>(field: keyof Form & string, list: L): WordOf<L> | null {
    const text = this.text(field);
    const words = lists[list] as readonly WordOf<L>[];
    return text === null ? null : (words.find((word) => word === text) ?? this.fault(field, "choose one of the list"));
  }

  number(field: keyof Form & string, least: number, most: number, unit: string): number | null {
    const text = this.text(field);
    if (text === null) return null;
    const read = numberOfText(text, [unit]);
    if (read instanceof SheetError || read === null) return this.fault(field, `type one number of ${unit}`);
    if (read < least || read > most) return this.fault(field, `from ${least} to ${most} ${unit}`);
    return read;
  }

  /** By the rules of FRTOMM: two sizes, gauge, millimetres and doubts are refused. */
  french(field: keyof Form & string): number | null {
    const text = this.text(field);
    if (text === null) return null;
    const read = readFrench(text);
    if (read instanceof SheetError) return this.fault(field, read.message);
    return read ?? this.fault(field, "write one size, for example 14");
  }

  /** From a native date field: YYYY-MM-DD. */
  date(field: keyof Form & string, today: number): number | null {
    const text = this.text(field);
    if (text === null) return null;
    const day = dayOfText(text);
    if (day === null) return this.fault(field, "give a whole date");
    return day > today ? this.fault(field, "this day is in the future") : day;
  }
}
