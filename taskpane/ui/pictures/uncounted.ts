import type { Pictured } from "../../actions/pictures";
import { pictures } from "../../texts/pictures";

/** Past devices that no count of changes can hold: said beside it, or it would read too well. */
export function uncounted({ leftOut }: Pictured): readonly string[] {
  const n = leftOut.filter(({ table }) => table === "changes").length;
  return n > 0 ? [pictures.uncounted(n)] : [];
}
