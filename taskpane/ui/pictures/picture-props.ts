import type { Device } from "../../../src/pictures/devices";
import type { Pictured } from "../../actions/pictures";

export interface PictureProps {
  readonly pictured: Pictured;
  /** Of the chosen kind. */
  readonly devices: readonly Device[];
  /** Null: all kinds. */
  readonly kind: string | null;
  /** First day of the chosen period. */
  readonly since: number;
  readonly locale: string;
  readonly isPaper: boolean;
}
