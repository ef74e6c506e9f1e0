/** The planned interval: the share that fails before each length of it, with its band, over how long devices really stayed. */
import { memo, useMemo, useState } from "react";
import { scaleLinear } from "d3-scale";
import { area, line } from "d3-shape";
import { ofKind } from "../../../src/pictures/devices";
import {
  BAR_DAYS,
  barsOf,
  intervalPicture,
  type Estimate,
  type IntervalPicture,
  type IntervalRow,
} from "../../../src/pictures/intervals";
import { lifePicture } from "../../../src/pictures/life";
import { pictures } from "../../texts/pictures";
import { Below, Chart, ink, LevelLines, WIDTH } from "./Chart";
import { Figure } from "./Figure";
import { number } from "./figure-table";
import { OneOf } from "./OneOf";
import type { PictureProps } from "./picture-props";
import { uncounted } from "./uncounted";

const words = pictures.intervals;
type Cost = keyof typeof words.costs;
const costs: readonly Cost[] = ["none", "2", "3", "5", "10"];

const [LEFT, RIGHT] = [38, WIDTH - 10];
/** Two panels over one another on the same days. */
const SHARE = { top: 14, bottom: 110 } as const;
const BARS = { top: 132, bottom: 190 } as const;
const HEIGHT = 244;

export const Intervals = memo(function Intervals({ pictured, devices, kind, isPaper }: PictureProps) {
  const [cost, setCost] = useState<Cost>("none");
  const seen = useMemo(
    () =>
      intervalPicture(
        devices,
        ofKind(pictured.tubes, kind),
        lifePicture(devices).lastDay,
        cost === "none" ? null : Number(cost),
      ),
    [devices, pictured, kind, cost],
  );
  return (
    <Figure
      title={words.title}
      sentences={[...sentencesOf(seen), ...uncounted(pictured)]}
      more={
        seen.rows &&
        seen.agreed !== null && (
          <OneOf
            label={words.cost}
            hint={words.costHint}
            options={costs.map((key) => ({ key, label: words.costs[key] }))}
            chosen={cost}
            onChoose={setCost}
          />
        )
      }
      picture={seen.rows && seen.rows.length > 0 && <Panels seen={seen} rows={seen.rows} />}
      sheetName={pictures.sheets.intervals}
      chart={{ kind: "lines", series: [1] }}
      columns={words.columns}
      rows={(seen.rows ?? []).map((row) => [
        words.months(row.months),
        number(row.failing.value, words.share(row.failing.value)),
        limits(row.failing, words.share),
        number(row.planned.value, words.one(row.planned.value)),
        limits(row.planned, words.one),
        number(row.unplanned.value, words.one(row.unplanned.value)),
        limits(row.unplanned, words.one),
      ])}
      isPaper={isPaper}
    />
  );
});

const limits = ({ low, high }: Estimate, text: (value: number) => string): string =>
  low === undefined || high === undefined ? words.notKnown : words.limits(text(low), text(high));

function sentencesOf(seen: IntervalPicture): readonly string[] {
  const { agreed, stays, best } = seen;
  const limit = (value: number | undefined, text: (value: number) => string) =>
    value === undefined ? words.notKnown : text(value);
  const { length } = stays.planned;
  const middle = stays.planned[Math.floor(length / 2)];
  const day = (n: number) => String(Math.round(n));
  return [
    agreed === null ? words.noneAgreed : words.agreed(agreed, seen.withAgreed),
    ...(seen.rows === undefined ? [pictures.tooFew(seen.failures, seen.devices)] : []),
    ...(seen.atAgreed
      ? [
          words.failing(
            seen.atAgreed.value,
            limit(seen.atAgreed.low, words.share),
            limit(seen.atAgreed.high, words.share),
          ),
        ]
      : []),
    ...(middle === undefined
      ? []
      : [`${words.planned(length, middle)}${agreed === null ? "." : words.late(stays.late)}`]),
    ...(best === null
      ? []
      : best.is === "never"
        ? [words.never]
        : best.is === "not earlier"
          ? [words.notEarlier]
          : [words.earlier(best.day.value, limit(best.day.low, day), limit(best.day.high, day))]),
  ];
}

interface PanelProps {
  readonly seen: IntervalPicture;
  readonly rows: readonly IntervalRow[];
}

function Panels({ seen: { agreed, stays }, rows }: PanelProps) {
  const [planned, failed] = [barsOf(stays.planned), barsOf(stays.failed)];
  const bars = Math.max(planned.length, failed.length);
  const last = Math.max(agreed ?? 0, rows.at(-1)!.days, bars * BAR_DAYS);
  const across = scaleLinear().domain([0, last]).range([LEFT, RIGHT]);
  const highest = Math.max(...rows.map(({ failing }) => failing.high ?? failing.value), 0.1);
  const up = scaleLinear().domain([0, highest]).nice(3).range([SHARE.bottom, SHARE.top]);
  const most = Math.max(1, ...Array.from({ length: bars }, (_, i) => (planned[i] ?? 0) + (failed[i] ?? 0)));
  const tall = scaleLinear().domain([0, most]).nice(2).range([BARS.bottom, BARS.top]);
  type Point = readonly [days: number, failing: Estimate];
  const points: readonly Point[] = [
    [0, { value: 0, low: 0, high: 0 }],
    ...rows.map(({ days, failing }): Point => [days, failing]),
  ];
  const band = area<Point>()
    .x(([days]) => across(days))
    .y0(([, { value, low }]) => up(low ?? value))
    .y1(([, { value, high }]) => up(high ?? value));
  const path = line<Point>()
    .x(([days]) => across(days))
    .y(([, { value }]) => up(value));
  return (
    <Chart height={HEIGHT} label={words.title}>
      <LevelLines ticks={up.ticks(3)} at={up} text={words.share} from={LEFT} to={RIGHT} />
      <path d={band(points) ?? ""} fill={ink.band} />
      <path d={path(points) ?? ""} fill="none" stroke={ink.mark} strokeWidth="2" />
      <LevelLines ticks={tall.ticks(2).filter(Number.isInteger)} at={tall} text={String} from={LEFT} to={RIGHT} />
      {Array.from({ length: bars }, (_, i) => {
        const [low, high] = [planned[i] ?? 0, (planned[i] ?? 0) + (failed[i] ?? 0)];
        const [x, width] = [across(i * BAR_DAYS), Math.max(1, across(BAR_DAYS) - across(0) - 1)];
        return (
          <g key={i}>
            <rect className="planned" x={x} width={width} y={tall(low)} height={tall(0) - tall(low)} fill={ink.mark} />
            <rect
              className="failed"
              x={x}
              width={width}
              y={tall(high)}
              height={tall(low) - tall(high)}
              fill={ink.past}
            />
          </g>
        );
      })}
      {agreed !== null && (
        <>
          <line
            x1={across(agreed)}
            x2={across(agreed)}
            y1={SHARE.top - 4}
            y2={BARS.bottom}
            stroke={ink.text}
            strokeDasharray="4 3"
          />
          <text x={across(agreed) - 4} y={SHARE.top - 4} textAnchor="end">
            {words.agreedMark}
          </text>
        </>
      )}
      <Below ticks={across.ticks(5)} at={across} text={String} y={BARS.bottom + 14} />
      <text x={(LEFT + RIGHT) / 2} y={BARS.bottom + 28} textAnchor="middle" fill={ink.quiet}>
        {words.days}
      </text>
      {(["planned", "failed"] as const).map((key, i) => (
        <g key={key} transform={`translate(${LEFT + i * 130} ${HEIGHT - 14})`}>
          <rect width="10" height="10" fill={key === "planned" ? ink.mark : ink.past} />
          <text x="14" y="9">
            {words.legend[key]}
          </text>
        </g>
      ))}
    </Chart>
  );
}
