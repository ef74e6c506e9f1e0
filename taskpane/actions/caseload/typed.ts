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

/** Reads fields one by one and collects what is wrong with them. */
export class Reader<Form extends Readonly<Record<string, string>>> {
  readonly faults: Fault[] = [];

  constructor(private readonly form: Form) {}

  fault(field: keyof Form & string, sentence: string): null {
    this.faults.push({ field, sentence });
    return null;
  }

  /** Outer spaces aside; a blank is null. */
  text(field: keyof Form & string): string | null {
    const text = this.form[field]!.trim();
    return text === "" ? null : text;
  }

  word<L extends ListName>(field: keyof Form & string, list: L): WordOf<L> | null {
    const text = this.text(field);
    const words = lists[list] as readonly WordOf<L>[];
    return text === null
      ? null
      : (words.find((word) => word === text) ?? this.fault(field, `${list}: choose one of the list.`));
  }

  number(field: keyof Form & string, label: string, least: number, most: number, unit: string): number | null {
    const text = this.text(field);
    if (text === null) return null;
    const read = numberOfText(text, [unit]);
    if (read instanceof SheetError || read === null) return this.fault(field, `${label}: type one number of ${unit}.`);
    if (read < least || read > most) return this.fault(field, `${label}: from ${least} to ${most} ${unit}.`);
    return read;
  }

  /** By the rules of FRTOMM: two sizes, gauge, millimetres and doubts are refused. */
  french(field: keyof Form & string): number | null {
    const text = this.text(field);
    if (text === null) return null;
    const read = readFrench(text);
    if (read instanceof SheetError) return this.fault(field, `Size Fr: ${read.message}.`);
    return read ?? this.fault(field, "Size Fr: write one size, for example 14.");
  }

  /** From a native date field: YYYY-MM-DD. */
  date(field: keyof Form & string, label: string, today: number): number | null {
    const text = this.text(field);
    if (text === null) return null;
    const day = dayOfText(text);
    if (day === null) return this.fault(field, `${label}: give a whole date.`);
    return day > today ? this.fault(field, `${label} is in the future.`) : day;
  }
}
