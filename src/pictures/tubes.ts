/** A tube in use, as far as its change is concerned. */
import type { Due } from "./due";

export interface Tube extends Due {
  readonly person: string;
  readonly kind: string;
  /** Days from putting in to the day that is agreed for its change; null where there is none. */
  readonly agreed: number | null;
}
