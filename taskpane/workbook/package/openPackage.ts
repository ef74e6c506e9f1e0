import type { Limits } from "./limits";
import type { OpenedPackage } from "./opened";
import type { Refusal } from "./refusal";

/** Opens an .xlsx or .xlsm package, or says in a sentence why not. Limits left out are those of `LIMITS`. */
export function openPackage(_bytes: Uint8Array, _limits: Partial<Limits> = {}): OpenedPackage | Refusal {
  throw new Error("in work");
}
