/**
 * What the booked day and the dates say together. `missed`: past, and no device came in since. `booked late`: after the
 * latest day; past it already, a day that is not soon leaves it there.
 */
import { type CaseloadColumn } from "../column";
import { isAhead, isBlank } from "../phrases";
import { hidden } from "../shown";

/** "12 May", with the year where it is another one. CHOOSE, because TEXT's codes depend on the computer's language. */
export const bookingColumns: readonly CaseloadColumn[] = [
  hidden(
    "Booked late",
    `IF(AND(ISNUMBER([@[Due first]]),ISNUMBER([@[Booked for]])),IF([@[Booked for]]>=1+IF([@Change]="past limit",As_of+Soon_Days,IF(ISNUMBER([@[At the latest]]),[@[At the latest]],[@[Change due]])),"yes","no"),"no")`,
  ),
  hidden(
    "Booking",
    `IF(${isAhead("[@[Booked for]]")},IF([@[Booked for]]>=As_of,IF([@[Booked late]]="yes","booked late","booked"),IF(N([@[Device day]])<INT([@[Booked for]]),"missed","not booked")),IF(${isBlank("[@[Booked for]]")},"not booked","wrong"))`,
  ),
  hidden(
    "Booked",
    `IF(LEFT([@Booking],LEN("booked"))="booked",DAY([@[Booked for]])&" "&CHOOSE(MONTH([@[Booked for]]),"Jan","Feb","Mar","Apr","May","Jun","Jul","Aug","Sep","Oct","Nov","Dec")&IF(YEAR([@[Booked for]])=YEAR(As_of),""," "&YEAR([@[Booked for]])),"")`,
  ),
];
