/** How long devices have lasted: steps with their band, a tick for each that had not failed, numbers watched underneath. */
import { memo } from "react";
import { scaleLinear } from "d3-scale";
import { area, curveStepAfter, line } from "d3-shape";
import { LEAST_WATCHED, lifePicture, workingAt, type LifePicture } from "../../../src/pictures/life";
import { pictures } from "../../texts/pictures";
import { Below, Chart, ink, LevelLines, WIDTH } from "./Chart";
import { Figure } from "./Figure";
import type { PictureProps } from "./picture-props";

const words = pictures.life;
const HEIGHT = 210;
const [LEFT, RIGHT, TOP, BOTTOM] = [38, WIDTH - 10, 10, 150];

export const Lives = memo(function Lives({ devices, isPaper }: PictureProps) {
  const life = lifePicture(devices);
  const { curve, half, quarter } = life;
  const counts = words.counts(life.failures, life.devices, life.stillIn);
  const limit = (day: number | undefined) => (day === undefined ? words.open : words.day(day));
  const said =
    half.day !== undefined
      ? words.half(half.day, limit(half.low), limit(half.high))
      : quarter.day !== undefined
        ? words.quarter(quarter.day, limit(quarter.low), limit(quarter.high))
        : words.neither;
  const sentences = curve
    ? [`${said}; ${counts}`, words.cut(life.lastDay, LEAST_WATCHED)]
    : [pictures.tooFew(life.failures, life.devices)];
  const rows = curve
    ? Array.from(curve.day, (day, i) => [
        words.day(day),
        String(curve.atRisk[i]),
        words.share(curve.working[i]!),
        Number.isNaN(curve.low[i]) ? "" : `${words.share(curve.low[i]!)} to ${words.share(curve.high[i]!)}`,
      ])
    : [];
  return (
    <Figure
      title={words.title}
      sentences={sentences}
      picture={curve && <Steps life={life} />}
      columns={words.columns}
      rows={rows}
      isPaper={isPaper}
    />
  );
});

function Steps({ life }: { readonly life: LifePicture }) {
  const curve = life.curve!;
  const across = scaleLinear().domain([0, life.lastDay]).range([LEFT, RIGHT]);
  const up = scaleLinear().domain([0, 1]).range([BOTTOM, TOP]);
  const days = across.ticks(5);
  const shown = Array.from(curve.day.keys()).filter((i) => curve.day[i]! <= life.lastDay);
  type Step = readonly [day: number, working: number, low: number, high: number];
  const steps: Step[] = [
    [0, 1, 1, 1],
    ...shown.map((i): Step => {
      const working = curve.working[i]!;
      // Where all have failed there are no limits.
      return [
        curve.day[i]!,
        working,
        Number.isNaN(curve.low[i]) ? working : curve.low[i]!,
        Number.isNaN(curve.high[i]) ? working : curve.high[i]!,
      ];
    }),
  ];
  const last = steps.at(-1)!;
  const all: Step[] = [...steps, [life.lastDay, last[1], last[2], last[3]]];
  const band = area<Step>()
    .x(([day]) => across(day))
    .y0(([, , low]) => up(low))
    .y1(([, , , high]) => up(high))
    .curve(curveStepAfter);
  const path = line<Step>()
    .x(([day]) => across(day))
    .y(([, working]) => up(working))
    .curve(curveStepAfter);
  return (
    <Chart height={HEIGHT} label={words.title}>
      <LevelLines ticks={[0, 0.25, 0.5, 0.75, 1]} at={up} text={words.share} from={LEFT} to={RIGHT} />
      <path d={band(all) ?? ""} fill={ink.band} />
      <path d={path(all) ?? ""} fill="none" stroke={ink.mark} strokeWidth="2" />
      {life.ticks
        .filter((day) => day <= life.lastDay)
        .map((day, i) => {
          const y = up(workingAt(curve, day));
          return <line key={i} x1={across(day)} x2={across(day)} y1={y - 4} y2={y + 1} stroke={ink.mark} />;
        })}
      <Below ticks={days} at={across} text={words.day} y={BOTTOM + 14} />
      <text x={(LEFT + RIGHT) / 2} y={BOTTOM + 28} textAnchor="middle" fill={ink.quiet}>
        {words.days}
      </text>
      <Below ticks={days} at={across} text={(day) => String(life.watchedAt(day))} y={BOTTOM + 44} />
      <text x={(LEFT + RIGHT) / 2} y={BOTTOM + 57} textAnchor="middle" fill={ink.quiet}>
        {words.watched}
      </text>
    </Chart>
  );
}
