/** Whose row it is: identifier, status, and where the tube ends. */
import { formula } from "../../../columns/formula";
import { is, isOneOf } from "../../reading";
import { accesses } from "../../words";
import { both, known, not, type Gap } from "./gap";

const ends = known(accesses);

export const identityGaps: readonly Gap[] = [
  { says: "no ID", when: formula`person=""`, applies: ({ row }) => row["Person"] === "" },
  {
    says: "same ID and access twice",
    when: both(formula`LEN(key)>0`, formula`COUNTIFS(Tube_Key,key)>1`),
    applies: ({ row, sight }) => row["Key"] !== "" && sight.rowsWith("tubes", "Key", row["Key"]!).length > 1,
  },
  { says: "no status", when: not(is("status", "active")), applies: (cells) => cells.word("Status") !== "active" },
  {
    says: "not known where it ends (access)",
    when: not(isOneOf("access", ends)),
    applies: (cells) => !ends.includes(cells.word("Access")),
  },
];
