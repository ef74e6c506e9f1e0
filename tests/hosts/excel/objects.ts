/**
 * Excel's object model as far as the add-in uses it, over a workbook in memory. It stands below Microsoft's own
 * library, so it speaks the names of the wire: properties in camel case, methods with a capital.
 *
 * Where Excel is known to be treacherous, so is this: writing over filtered rows, headers that are taken, columns
 * formatted as text. What it does not know it refuses, as Excel refuses a member it does not have.
 */

export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

export class ApiError extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}

export interface Property {
  readonly get: () => Json;
  readonly set?: (value: Json) => void;
}

export type Argument = Json | ExcelObject;

/** One object of the model. Everything it can do is written down here, nothing is answered by default. */
export interface ExcelObject {
  readonly type: string;
  /** Tells an item of a collection from its fellows. */
  readonly id?: string;
  readonly properties?: Readonly<Record<string, Property>>;
  /** Objects reached by a property. */
  readonly parts?: Readonly<Record<string, () => ExcelObject>>;
  /** Plain results, other objects, or null for "OrNullObject". */
  readonly methods?: Readonly<Record<string, (args: readonly Argument[]) => Json | ExcelObject | null | void>>;
  readonly items?: () => readonly ExcelObject[];
  /** Lookup by name or id. */
  readonly item?: (key: string) => ExcelObject | undefined;
}

export const isObject = (value: unknown): value is ExcelObject =>
  typeof value === "object" && value !== null && "type" in value && typeof value.type === "string";

export const read = (get: () => Json): Property => ({ get });

const missing = (object: ExcelObject, member: string) =>
  new ApiError("ApiNotFound", `The API you are trying to use could not be found: ${object.type}.${member}`);

export function property(object: ExcelObject, name: string): Property {
  const found = object.properties?.[name];
  if (!found) throw missing(object, name);
  return found;
}

export function part(object: ExcelObject, name: string): ExcelObject {
  const found = object.parts?.[name];
  if (!found) throw missing(object, name);
  return found();
}

export function call(object: ExcelObject, name: string, args: readonly Argument[]) {
  if (name === "GetItemAt" && object.items) {
    const item = object.items()[args[0] as number];
    if (!item) throw new ApiError("InvalidArgument", `${object.type} has no item ${String(args[0])}`);
    return item;
  }
  const found = object.methods?.[name];
  if (!found) throw missing(object, name);
  return found(args);
}

export function item(object: ExcelObject, key: string): ExcelObject {
  if (!object.item) throw missing(object, "getItem");
  const found = object.item(key);
  if (!found) throw new ApiError("ItemNotFound", `The requested resource doesn't exist: ${object.type} "${key}"`);
  return found;
}
