/** What the person's own past devices say of the interval, beside the new one: never a permission. */
import { AS_OF } from "../../../src/columns/as-of";
import { wordKey } from "../../../src/columns/spelling";
import { adviceFor, wearModel } from "../../../src/pictures/advice";
import { devicesOf, ofKind } from "../../../src/pictures/devices";
import type { Device } from "../caseload/identity";
import { named, textIn, valueIn, type Caseload } from "../caseload/read";
import { adviceSentences } from "../pictures/advice";

const dayIn = (value: unknown): number | null => (typeof value === "number" && value > 0 ? Math.floor(value) : null);

/** Empty where the workbook does not say which day is today. */
export function intervalSentences({ tubes, changes, names }: Caseload, { row, id }: Device): readonly string[] {
  const asOf = dayIn(named(names, AS_OF));
  if (asOf === null) return [];
  const { devices } = devicesOf(
    {
      changes: changes.rows.map((one) => (header) => valueIn(one, header)),
      tubes: tubes.rows.map((one) => (header) => valueIn(one, header)),
    },
    asOf,
    dayIn(named(names, "Day_Oldest")) ?? 1,
  );
  const kind = wordKey(textIn(row, "Held by"));
  const [from, due] = [dayIn(valueIn(row, "Device in")), dayIn(valueIn(row, "Change due"))];
  const agreed = from !== null && due !== null && due > from ? due - from : null;
  return adviceSentences(adviceFor(wearModel(ofKind(devices, kind)), wordKey(id), agreed), agreed, kind);
}
