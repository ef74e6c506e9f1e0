/** Why devices came out unplanned: dots on lines, the commonest first. */
import { memo } from "react";
import { scaleLinear } from "d3-scale";
import { reasonsPicture, type ReasonsPicture } from "../../../src/pictures/reasons";
import { pictures } from "../../texts/pictures";
import { Chart, ink, WIDTH } from "./Chart";
import { Figure } from "./Figure";
import { number } from "./figure-table";
import { uncounted } from "./uncounted";
import type { PictureProps } from "./picture-props";

const words = pictures.reasons;
const ROW = 20;
const [LEFT, RIGHT, TOP] = [186, WIDTH - 28, 6];

export const Reasons = memo(function Reasons({ pictured, devices, since, isPaper }: PictureProps) {
  const seen = reasonsPicture(devices, since);
  const [first] = seen.reasons;
  return (
    <Figure
      title={words.title}
      sentences={
        first
          ? [
              words.sentence(seen.unplanned, seen.planned),
              words.first(first.reason, first.count),
              ...uncounted(pictured),
            ]
          : [words.none, ...uncounted(pictured)]
      }
      picture={first && <Dots seen={seen} />}
      sheetName={pictures.sheets.reasons}
      chart={{ kind: "bars", series: [1] }}
      columns={words.columns}
      rows={seen.reasons.map(({ reason, count }) => [reason, number(count)])}
      isPaper={isPaper}
    />
  );
});

function Dots({ seen: { reasons } }: { readonly seen: ReasonsPicture }) {
  const across = scaleLinear().domain([0, reasons[0]!.count]).range([LEFT, RIGHT]);
  return (
    <Chart height={TOP * 2 + ROW * reasons.length} label={words.title}>
      {reasons.map(({ reason, count }, i) => {
        const y = TOP + (i + 0.5) * ROW;
        return (
          <g key={reason}>
            <text x={LEFT - 6} y={y + 4} textAnchor="end">
              {reason}
            </text>
            <line x1={LEFT} x2={across(count)} y1={y} y2={y} stroke={ink.line} strokeWidth="2" />
            <circle cx={across(count)} cy={y} r="5" fill={ink.mark} />
            <text x={across(count) + 10} y={y + 4}>
              {count}
            </text>
          </g>
        );
      })}
    </Chart>
  );
}
