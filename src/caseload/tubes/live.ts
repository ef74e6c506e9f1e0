/**
 * Whether a row's states count today: `live`, `hospital`, `hold`, or "" for a blank row and for somebody who is gone. A
 * status that is missing or no word of the list counts as active, so that nothing is kept back.
 */
import { type CaseloadColumn } from "../column";
import { wordOf } from "../phrases";
import { hidden } from "../shown";

export const liveColumns: readonly CaseloadColumn[] = [
  hidden("Status word", wordOf("[@Status]")),
  hidden(
    "Live",
    `IF(OR([@[Status word]]="left",COUNTA([@ID],[@Status],[@Born],[@Access],[@[Stoma made]],[@[Held by]],[@[Size Fr]],[@[Device in]],[@[Fill mL]])=0),"",IF([@[Status word]]="on hold","hold",IF([@[Status word]]="in hospital","hospital","live")))`,
  ),
];
