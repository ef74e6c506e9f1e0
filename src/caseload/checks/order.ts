/**
 * Hidden columns that lay each check to a device and put the checks of one device in order, in whatever order the sheet
 * stands. A tag is one whole number: whose checks (where the key first stands), day, row. Ranks among the tags find the
 * check before; comparing every check with every other one took the grid's engine 18 seconds for 2,000 checks, ranks 0.4.
 */
import type { Header } from "../headers";
import { formula, type FormulaTemplate } from "../../columns/formula";
import { letting, PLAIN, type CaseloadColumn } from "../column";
import { identityIn, isBlankIn, dayState, isOneOf, numbered } from "../reading";
import { measuredWords } from "./words";

const hidden = { kind: "computed", format: PLAIN, width: 4, isHidden: true } as const;

/**
 * The day the device came in that came out since and was in on a day of LET's name; 0 without one. A change may end
 * elsewhere than the device before: then the list's row has another key, and the log alone knows the old one. N, because
 * in the grid's engine MAXIFS gives no number where nothing matches.
 */
export const pastIn = (whose: "Key" | "Person", key: FormulaTemplate | string, day: string) =>
  formula`N(MAXIFS(Change_In,Change_${whose},${key},Change_In,"<="&${day},Change_Out,">="&${day}))`;

/**
 * With no access given: the person's only device. A key that several rows of the list have is none; one that no row has
 * is a device's that came out since, where the log says that it was in on that day.
 */
export const checkKey: CaseloadColumn = {
  ...hidden,
  header: "Key",
  formula: (cell) => {
    const only = formula`IF(COUNTIFS(Tube_Person,person)=1,INDEX(Tube_Key,MATCH(person,Tube_Person,0)),"")`;
    const given = formula`person&"|"&${identityIn(cell("Access"))}`;
    const past = formula`IF(ISNUMBER(on),IF(${pastIn("Key", "key", "INT(on)")}>0,key,""),"")`;
    const found = letting(
      { key: formula`IF(${isBlankIn(cell("Access"))},${only},${given})`, ...numbered("on", cell("Checked on")) },
      formula`IF(LEN(key)=0,"",IF(COUNTIFS(Tube_Key,key)=1,key,IF(COUNTIFS(Tube_Key,key)=0,${past},"")))`,
    );
    return letting({ person: cell("Person") }, formula`IF(LEN(person)=0,"",${found})`);
  },
};

/** Its row in Tubes in use; none for a device that came out since and has no row there any more. */
export const tube: CaseloadColumn = {
  ...hidden,
  header: "Tube",
  formula: (cell) => formula`IF(LEN(${cell("Key")})=0,"",IFERROR(MATCH(${cell("Key")},Tube_Key,0),""))`,
};

export const tag: CaseloadColumn = {
  ...hidden,
  header: "Tag",
  formula: (cell) => {
    const number = formula`MATCH(${cell("Key")},Check_Key,0)*10^10+INT(on)*10^5+ROW()`;
    const dated = letting(numbered("on", cell("Checked on")), formula`IF(${dayState("on")}=1,${number},"")`);
    return formula`IF(LEN(${cell("Key")})=0,"",IFERROR(${dated},""))`;
  },
};

/** The largest volume on the label of the device that this check was made on; only the device now in has one. */
export const labelMl: CaseloadColumn = {
  ...hidden,
  header: "Label mL",
  formula: (cell) =>
    formula`IF(${currentIn(cell("Tube"), cell("Device in"))},IF(ISNUMBER(INDEX(Tube_Most,${cell("Tube")})),INDEX(Tube_Most,${cell("Tube")}),""),"")`,
};

type Slot = ReturnType<CaseloadColumn["formula"] & object>;

/** Made on the device now in, as far as is known. */
export const currentIn = (tube: Slot, device: Slot) =>
  formula`IF(ISNUMBER(${tube}),IF(ISNUMBER(${device}),IF(ISNUMBER(INDEX(Tube_In,${tube})),INT(INDEX(Tube_In,${tube}))=N(${device}),FALSE),TRUE),FALSE)`;

/** The check before, on the same device; `among` is a column of tags. */
function before(header: Header, own: Header, among: string): CaseloadColumn {
  return {
    ...hidden,
    header,
    formula: (cell) => {
      const next = `IFERROR(MATCH(LARGE(${among},RANK.EQ(tag,${among})+1),${among},0),0)`;
      const isSame = formula`AND(EXACT(INDEX(Check_Key,place),${cell("Key")}),N(INDEX(Check_Device,place))=N(${cell("Device in")}))`;
      const found = letting({ place: next }, formula`IF(place>0,IF(${isSame},place,""),"")`);
      return letting(numbered("tag", cell(own)), formula`IF(ISNUMBER(tag),${found},"")`);
    },
  };
}

export const checkBefore = before("Before", "Tag", "Check_Tag");

/** The tag again where the check has figures. */
export const measured: CaseloadColumn = {
  ...hidden,
  header: "Measured",
  formula: (cell) =>
    formula`IF(AND(ISNUMBER(${cell("Tag")}),ISNUMBER(${cell("Out mL")})),${letting({ state: cell("State") }, formula`IF(${isOneOf("state", measuredWords)},${cell("Tag")},"")`)},"")`,
};

export const measuredBefore = before("Measured before", "Measured", "Check_Measured");
