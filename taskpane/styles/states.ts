/**
 * The colours of the states, the same in the pane, in new files and in lists. Words always stand beside them. No green
 * and no red beside it: who does not tell the two apart would read the opposite. tests/laws/state-colours.test.ts works
 * out contrast, how far the grounds stand apart for colour-blind eyes, and what a grey printer leaves of them.
 *
 * The pane's style sheet says them again (styles/look.css); the same test holds it to these.
 */
export interface StateLook {
  /** RRGGBB. */
  readonly ink: string;
  readonly ground: string;
  readonly isBold?: boolean;
  readonly isItalic?: boolean;
  /** A dashed frame: something is not there. */
  readonly dashes?: string;
}

/** What a word asks for; what is quiet has the look of any other cell. */
export const states = {
  /** Call today. Its white is one of its own, so that the dark grid tells it from paper. */
  act: { ink: "FFFDFE", ground: "8C1C4B", isBold: true },
  /** Within days. */
  soon: { ink: "4A3000", ground: "FFD98A", isBold: true },
  /** Missing or contradictory. */
  missing: { ink: "3A2E66", ground: "CBC4E6", isItalic: true, dashes: "3A2E66" },
  /** Booked, in hospital: somebody has seen to it. */
  arranged: { ink: "0B4A4F", ground: "DDF0EE" },
} as const satisfies Readonly<Record<string, StateLook>>;
