/**
 * Fonts, fills and lines by what a cell is. Every text has at least 4.5 : 1 on its ground (WCAG 2.2, 1.4.3; a test
 * works it out). Words say what colours say, and bold and italic remain where colours are not printed.
 */
import type { Look, RuleLook } from "../../../src/caseload/book";
import { ACCENT_INK, HEADER_GROUND, HEADER_INK } from "../../styles/added-sheets";
import { states } from "../../styles/states";

export interface Paint {
  /** RRGGBB. */
  readonly ink: string;
  readonly ground?: string;
  readonly line?: string;
  readonly size?: number;
  readonly isBold?: boolean;
  readonly isItalic?: boolean;
  /** RRGGBB of a dashed frame. */
  readonly dashes?: string;
}

const INK = "242424";
const ACCENT = ACCENT_INK;
const ACCENT_SOFT = "E4F1F4";
const CAUTION = "6D4300";
const CAUTION_SOFT = "FFF5E0";
const CAUTION_LINE = "C98A1B";
const WARNING = "7A1842";
const WARNING_SOFT = "FBEAF0";
const QUIET = "575553";
const RAISED = "F1F0EE";
export const LINE = "DCDAD7";

export const NORMAL_SIZE = 11;
export const FONT = "Calibri";

export const looks: Readonly<Record<Look, Paint>> = {
  title: { ink: ACCENT, size: 16, isBold: true },
  lead: { ink: INK, size: 12 },
  invented: { ink: CAUTION, ground: CAUTION_SOFT, line: CAUTION_LINE, isBold: true },
  heading: { ink: ACCENT, size: 12, isBold: true },
  typedHeader: { ink: HEADER_INK, ground: HEADER_GROUND, line: "FFFFFF", isBold: true },
  computedHeader: { ink: ACCENT, ground: ACCENT_SOFT, line: "FFFFFF", isBold: true, isItalic: true },
  typed: { ink: INK },
  computed: { ink: INK, ground: "F6F7F8" },
  text: { ink: INK },
  caution: { ink: WARNING, ground: WARNING_SOFT },
  setting: { ink: INK, ground: "FFFBEB", line: CAUTION_LINE },
};

/** The name of a group of columns, above their headers. */
export const groupPaint: Paint = { ink: ACCENT, ground: RAISED, isBold: true };

export const ruleLooks: Readonly<Record<RuleLook, Paint>> = {
  ...states,
  quiet: { ink: INK },
  grey: { ink: QUIET, ground: "E3E1DE" },
};
