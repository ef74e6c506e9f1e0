/** Excel's functions that the reader knows, by their names in capitals. */
import { dates } from "./dates";
import { logic } from "./logic";
import { lookups } from "./lookups";
import { numbers } from "./numbers";
import type { Rule } from "./rule";
import { texts } from "./texts";

export const rules: ReadonlyMap<string, Rule> = new Map(
  Object.entries({ ...logic, ...numbers, ...texts, ...dates, ...lookups }),
);
