/**
 * Hidden columns that say whose row it is. Lookups go by text in front of which "k:" stands, so that "1E5", "03-04" and
 * "007" are never read as numbers or dates, and an identifier "*" matches nobody else.
 */
import { formula } from "../columns/formula";
import { PLAIN, type CaseloadColumn } from "./column";
import { identityIn, isBlankIn } from "./reading";

const hidden = { kind: "computed", format: PLAIN, width: 4, isHidden: true } as const;

export const person: CaseloadColumn = {
  ...hidden,
  header: "Person",
  formula: (cell) => formula`IF(${isBlankIn(cell("ID"))},"","k:"&${identityIn(cell("ID"))})`,
};

/** Person and device: one person can have a G and a J. */
export const key: CaseloadColumn = {
  ...hidden,
  header: "Key",
  formula: (cell) => formula`IF(LEN(${cell("Person")})=0,"",${cell("Person")}&"|"&${identityIn(cell("Access"))})`,
};
