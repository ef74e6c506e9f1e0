/** Wear by person, each with limits, beside the clinic's mean; only people with failures enough. */
import { memo } from "react";
import { scaleLog } from "d3-scale";
import { wearPicture, type PersonWear } from "../../../src/pictures/wear";
import { pictures } from "../../texts/pictures";
import { Below, Chart, ink, WIDTH } from "./Chart";
import { Figure } from "./Figure";
import type { PictureProps } from "./picture-props";

const words = pictures.wear;
const ROW = 20;
const [LEFT, RIGHT, TOP] = [70, WIDTH - 14, 8];
const TICKS = [0.25, 0.5, 1, 2, 4, 8];

export const Wear = memo(function Wear({ devices, isPaper }: PictureProps) {
  const { told, failures, devices: all, people } = wearPicture(devices);
  if (!told) {
    return (
      <Figure
        title={words.title}
        sentences={[pictures.tooFew(failures, all)]}
        picture={null}
        columns={[]}
        rows={[]}
        isPaper={isPaper}
      />
    );
  }
  const fast = told.filter(({ wear }) => wear.low > 1);
  const sentences =
    told.length === 0
      ? [words.nobody]
      : [
          words.sentence(fast.length, told.length, people),
          ...fast.map((one) => words.advice(shown(one), one.failures, one.devices, one.day.value)),
          words.all,
        ];
  return (
    <Figure
      title={words.title}
      sentences={sentences}
      picture={told.length > 0 && <People told={told} />}
      columns={words.columns}
      rows={told.map((one) => [
        shown(one),
        words.failed(one.failures, one.devices),
        words.times(one.wear.value, one.wear.low, one.wear.high),
        words.days(one.day.value, one.day.low, one.day.high),
      ])}
      isPaper={isPaper}
    />
  );
});

/** Identifiers are compared without regard to case; people write them in capitals. */
const shown = ({ person }: PersonWear): string => person.toUpperCase();

function People({ told }: { readonly told: readonly PersonWear[] }) {
  const low = Math.min(0.5, ...told.map(({ wear }) => wear.low));
  const high = Math.max(2, ...told.map(({ wear }) => wear.high));
  const across = scaleLog().domain([low, high]).range([LEFT, RIGHT]);
  const ticks = TICKS.filter((tick) => tick >= low && tick <= high);
  const bottom = TOP + ROW * told.length;
  return (
    <Chart height={bottom + 36} label={words.title}>
      {ticks.map((tick) => (
        <line
          key={tick}
          x1={across(tick)}
          x2={across(tick)}
          y1={TOP}
          y2={bottom}
          stroke={tick === 1 ? ink.quiet : ink.line}
        />
      ))}
      {told.map((one, i) => {
        const y = TOP + (i + 0.5) * ROW;
        return (
          <g key={one.person}>
            <text x={LEFT - 6} y={y + 4} textAnchor="end">
              {shown(one)}
            </text>
            <line
              x1={across(one.wear.low)}
              x2={across(one.wear.high)}
              y1={y}
              y2={y}
              stroke={ink.mark}
              strokeWidth="2"
            />
            <circle cx={across(one.wear.value)} cy={y} r="4.5" fill={one.wear.low > 1 ? ink.past : ink.mark} />
          </g>
        );
      })}
      <Below ticks={ticks} at={across} text={String} y={bottom + 14} />
      <text x={(LEFT + RIGHT) / 2} y={bottom + 29} textAnchor="middle" fill={ink.quiet}>
        {words.axis}
      </text>
    </Chart>
  );
}
