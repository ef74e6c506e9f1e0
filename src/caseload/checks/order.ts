/**
 * Checks of one device in order, in whatever order the sheet stands: their tags from the least up. Looked up by halving, in
 * Excel and LibreOffice alike, where a search for the largest goes through all rows for each row. A check that cannot be
 * laid to a day stands behind the days of its device; one that cannot be laid to a device, behind those of its person's
 * first row.
 */
import { type CaseloadColumn } from "../column";
import { hidden } from "../shown";

export const orderColumns: readonly CaseloadColumn[] = [
  hidden(
    "Sorted by",
    `IF(ISNUMBER([@Tag]),[@Tag],IF([@Key]<>"",IF(ISNUMBER([@Tube]),([@Tube]*10^5+10^5-1-1)*10^5,""),IF(ISNUMBER([@[First row]]),([@[First row]]*10^5+10^5-1)*10^5,"")))`,
  ),
  hidden("In order", `IFERROR(SMALL(Check_SortedBy,ROW()-ROW(Check_Top)),9*10^15)`),
  hidden("Tag before", `IF(ISNUMBER([@Tag]),IFERROR(LOOKUP([@Tag]-1,Check_InOrder),0),0)`),
  hidden(
    "Before",
    `IF(INT([@[Tag before]]/10^10)=INT(N([@Tag])/10^10),IF(ISNUMBER([@Tag]),IF(INDEX(Check_Device,MOD([@[Tag before]],10^5))=[@[Device in]],MOD([@[Tag before]],10^5),""),""),"")`,
  ),
];
