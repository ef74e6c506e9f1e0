/**
 * How long devices have lasted: steps with their band, a tick for each that had not failed, numbers watched underneath;
 * all together, or one under the other by kind or shape, with the log-rank test in words.
 */
import { memo, useMemo, useState } from "react";
import { scaleLinear } from "d3-scale";
import { area, curveStepAfter, line } from "d3-shape";
import { comparison, type Comparison, type GroupBy } from "../../../src/pictures/compare";
import { LEAST_WATCHED, lifePicture, workingAt, type LifePicture } from "../../../src/pictures/life";
import { pictures } from "../../texts/pictures";
import { Below, Chart, ink, LevelLines, WIDTH } from "./Chart";
import { Figure } from "./Figure";
import { number, type FigureRow } from "./figure-table";
import { OneOf } from "./OneOf";
import type { PictureProps } from "./picture-props";

const words = pictures.life;
const [LEFT, RIGHT, TOP, BOTTOM] = [38, WIDTH - 10, 10, 150];
/** Of one curve with its figures underneath. */
const HEIGHT = 210;
/** A group's name above its curve. */
const NAME = 16;

type Way = keyof typeof words.ways;

export const Lives = memo(function Lives({ pictured, devices, isPaper }: PictureProps) {
  const [way, setWay] = useState<Way>("none");
  /* Kinds are compared whichever of them is chosen at the top. */
  const compared = useMemo(
    () => (way === "none" ? null : comparison(way === "kind" ? pictured.devices : devices, way)),
    [way, pictured, devices],
  );
  const together = useMemo(() => lifePicture(devices), [devices]);
  const lives = compared ? compared.groups : together.curve ? [{ name: "", life: together }] : [];
  const last = Math.max(0, ...lives.map(({ life }) => life.lastDay));
  const sentences = compared
    ? comparedSentences(compared, way as GroupBy)
    : together.curve
      ? [saidOf(together), words.cut(together.lastDay, LEAST_WATCHED)]
      : [pictures.tooFew(together.failures, together.devices)];
  return (
    <Figure
      title={words.title}
      choice={
        <OneOf
          label={words.compare}
          options={(["none", "kind", "shape"] as const).map((key) => ({ key, label: words.ways[key] }))}
          chosen={way}
          onChoose={setWay}
        />
      }
      sentences={sentences}
      picture={
        lives.length > 0 && (
          <Chart height={lives.length * (HEIGHT + (compared ? NAME : 0))} label={words.title}>
            {lives.map(({ name, life }, i) => (
              <g key={name} transform={`translate(0 ${i * (HEIGHT + NAME)})`}>
                {compared && (
                  <text x={LEFT} y={14} fontWeight="bold">
                    {name}
                  </text>
                )}
                <g transform={`translate(0 ${compared ? NAME : 0})`}>
                  <Steps life={life} last={last} />
                </g>
              </g>
            ))}
          </Chart>
        )
      }
      sheetName={pictures.sheets.life}
      chart={compared ? null : { kind: "scatter", series: [2] }}
      columns={compared ? [words.groupColumn, ...words.columns] : words.columns}
      rows={lives.flatMap(({ name, life }) => rowsOf(life).map((row) => (compared ? [name, ...row] : row)))}
      isPaper={isPaper}
    />
  );
});

function saidOf(life: LifePicture): string {
  const { half, quarter } = life;
  const limit = (day: number | undefined) => (day === undefined ? words.open : words.day(day));
  const said =
    half.day !== undefined
      ? words.half(half.day, limit(half.low), limit(half.high))
      : quarter.day !== undefined
        ? words.quarter(quarter.day, limit(quarter.low), limit(quarter.high))
        : words.neither;
  return `${said}; ${words.counts(life.failures, life.devices, life.stillIn)}`;
}

function comparedSentences({ groups, small, test }: Comparison, by: GroupBy): readonly string[] {
  const counted = small.map(({ name, life }) => words.counted(name, life.failures, life.devices));
  const tooSmall = counted.length > 0 ? [words.small(counted)] : [];
  if (groups.length < 2) return [words.none(by), ...tooSmall];
  const tested = test ? (test.p < 0.05 ? words.differ(test.p) : words.alike(test.p)) : words.noTest;
  return [...groups.map(({ name, life }) => words.group(name, saidOf(life))), tested, ...tooSmall];
}

const rowsOf = ({ curve }: LifePicture): readonly FigureRow[] =>
  curve
    ? Array.from(curve.day, (day, i) => [
        number(day, words.day(day)),
        number(curve.atRisk[i]!),
        number(curve.working[i]!, words.share(curve.working[i]!)),
        Number.isNaN(curve.low[i]) ? "" : `${words.share(curve.low[i]!)} to ${words.share(curve.high[i]!)}`,
      ])
    : [];

interface StepsProps {
  readonly life: LifePicture;
  /** The day at the right edge. */
  readonly last: number;
}

function Steps({ life, last }: StepsProps) {
  const curve = life.curve!;
  const across = scaleLinear().domain([0, last]).range([LEFT, RIGHT]);
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
  const end = steps.at(-1)!;
  const all: Step[] = [...steps, [life.lastDay, end[1], end[2], end[3]]];
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
    <>
      <LevelLines ticks={[0, 0.25, 0.5, 0.75, 1]} at={up} text={words.share} from={LEFT} to={RIGHT} />
      <path d={band(all) ?? ""} fill={ink.band} />
      <path d={path(all) ?? ""} fill="none" stroke={ink.mark} strokeWidth="2" />
      <path d={ticksOf(life, across, up)} fill="none" stroke={ink.mark} />
      <Below ticks={days} at={across} text={words.day} y={BOTTOM + 14} />
      <text x={(LEFT + RIGHT) / 2} y={BOTTOM + 28} textAnchor="middle" fill={ink.quiet}>
        {words.days}
      </text>
      <Below ticks={days} at={across} text={(day) => String(life.watchedAt(day))} y={BOTTOM + 44} />
      <text x={(LEFT + RIGHT) / 2} y={BOTTOM + 57} textAnchor="middle" fill={ink.quiet}>
        {words.watched}
      </text>
    </>
  );
}

/** One tick for each day: of thousands of devices many end on one. */
function ticksOf(life: LifePicture, across: (day: number) => number, up: (share: number) => number): string {
  const days = [...new Set(life.ticks)].filter((day) => day <= life.lastDay);
  return days
    .map((day) => {
      const y = up(workingAt(life.curve!, day));
      return `M${across(day)},${y - 4}V${y + 1}`;
    })
    .join("");
}
