/** Facts worked out from dates and sizes: age, size in mm, how old the opening is, whether this is the first tube. */
import { CHECK_DATE, NO_DATE } from "../../columns/state-words";
import { CHECK_SETTINGS } from "../ready";
import { PLAIN, TENTHS } from "../column";
import { ifLive, isBlank, wordOf } from "../phrases";
import { computed } from "../shown";

/** Below two years in months, because there every month counts. */
export const age = computed(
  "Age",
  `IF([@[Months old]]="","",IF(NOT(Ready_Entries),"check settings",IF([@[Months old]]<12+12,[@[Months old]]&IF([@[Months old]]=1," month"," months"),IFERROR(INT([@[Months old]]/12),[@[Months old]]))))`,
  { format: PLAIN, width: 9, rules: [{ look: "missing", words: [CHECK_DATE, CHECK_SETTINGS] }] },
);

const NOT_READ = "not read";

/**
 * A third of a millimetre for each French. A size that is typed as a text is read by a function of ours; without the
 * add-in that function is not known, and the cell says what is true either way. No state stands on it.
 */
export const sizeMm = computed(
  "Size mm",
  `IF(IFERROR(AND([@[Size Fr]]>0,[@[Size Fr]]<=Size_Most),FALSE),[@[Size Fr]]/3,IF(${isBlank("[@[Size Fr]]")},"",IFERROR(TUBE.FRTOMM([@[Size Fr]]),"${NOT_READ}")))`,
  { format: TENTHS, width: 8, rules: [{ look: "missing", words: [NOT_READ] }] },
);

/**
 * As TRACTSTATE; where nothing is recorded about slow healing it is not known, and then never better than uncertain. Of
 * a stoma that is younger than its device one day is wrong: it never counts as mature.
 */
export const tract = computed(
  "Tract",
  ifLive(
    `IF(NOT(Ready_Opening),"check settings",IF(NOT(ISNUMBER([@[Stoma day]])),[@[Stoma day]],IF([@[Stoma before birth]]="yes","check date",IF(As_of-[@[Stoma day]]<7*Tract_Low,"immature",IF(As_of-[@[Stoma day]]<7*Tract_High,"uncertain",IF([@[Stoma after device]]="yes","check date",IF(${wordOf("[@[Slow healing]]")}="no","mature by weeks","uncertain")))))))`,
  ),
  {
    format: PLAIN,
    width: 17,
    rules: [
      { look: "act", words: ["immature"] },
      { look: "soon", words: ["uncertain"] },
      { look: "missing", words: [CHECK_DATE, NO_DATE, CHECK_SETTINGS] },
      { look: "quiet", words: ["mature by weeks"] },
    ],
  },
);

export const firstTube = computed(
  "First tube",
  `IF([@Person]="","",IF(AND(Ready_Opening,ISNUMBER([@[Stoma day]]),ISNUMBER([@[Device day]])),IF([@[Device day]]<[@[Stoma day]],"not known",IF([@[Device day]]-[@[Stoma day]]<=First_Days,"yes","no")),"not known"))`,
  {
    format: PLAIN,
    width: 10,
    rules: [
      { look: "soon", words: ["yes"] },
      { look: "missing", words: ["not known"] },
    ],
  },
);
