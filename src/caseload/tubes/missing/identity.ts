/** Whose row it is: identifier, status, and where the tube ends. */
import { formula } from "../../../columns/formula";
import { is, isOneOf } from "../../reading";
import { accesses } from "../../words";
import { both, known, not, type Gap } from "./gap";

const ends = known(accesses);

export const identityGaps: readonly Gap[] = [
  { says: "no ID", when: formula`person=""` },
  {
    says: "same ID and access twice",
    when: both(formula`LEN(key)>0`, formula`COUNTIFS(Tube_Key,key)>1`),
  },
  { says: "no status", when: not(is("status", "active")) },
  {
    says: "not known where it ends (access)",
    when: not(isOneOf("access", ends)),
  },
];
