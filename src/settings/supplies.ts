/** Spares, extension sets and orders. */
import { NO_SOURCE, openSetting, setting } from "./setting";

export const supplies = [
  setting({
    name: "Spare_Days",
    label: "Spare must last until the change, and at least for",
    default: 90,
    unit: "days",
    range: null,
    allowed: [30, 365],
    source: NO_SOURCE,
    evidence: "clinic setting",
  }),
  setting({
    name: "Ext_Days",
    label: "Extension set lasts",
    default: 30,
    unit: "days",
    range: { words: "10-30 (Augsburg 10-14)", least: 10, most: 30 },
    allowed: [7, 60],
    source: "SickKids",
    evidence: "hospital",
  }),
  openSetting({
    name: "Lead_Days",
    label: "Lead time of the supplier",
    unit: "days",
    range: null,
    allowed: [0, 365],
    source: `${NO_SOURCE}: the clinic's supplier, so no default`,
    evidence: "clinic setting",
  }),
  openSetting({
    name: "Review_Days",
    label: "Order every",
    unit: "days",
    range: null,
    allowed: [0, 365],
    source: `${NO_SOURCE}: the clinic's own, so no default`,
    evidence: "clinic setting",
  }),
  setting({
    name: "Stock_Service",
    label: "Stock must do in",
    default: 0.95,
    unit: "share of order cycles",
    range: null,
    allowed: [0.8, 0.99],
    source: NO_SOURCE,
    evidence: "clinic setting",
  }),
] as const;
