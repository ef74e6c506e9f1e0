import type { Role } from "../role";

/** Without accents, punctuation and letter case, as `plainHeader` makes them; of two, the better one first. */
export type HeaderWords = { readonly [R in Role]?: readonly string[] };
