/** Changes due by month: bars, past ones dark, unplanned ones above as a frame, those without a day hatched. */
import { memo } from "react";
import { scaleLinear } from "d3-scale";
import { ofKind } from "../../../src/pictures/devices";
import { duePicture, MONTHS_AHEAD, type DuePicture } from "../../../src/pictures/due";
import { pictures } from "../../texts/pictures";
import { monthText, shortMonth } from "../parts/dates";
import { Chart, ink, LevelLines, WIDTH } from "./Chart";
import { Figure } from "./Figure";
import { maybe, number, type FigureRow } from "./figure-table";
import type { PictureProps } from "./picture-props";

const words = pictures.due;
const HEIGHT = 190;
const [LEFT, TOP, BOTTOM] = [28, 12, 158];

export const DueByMonth = memo(function DueByMonth({ pictured, devices, kind, locale, isPaper }: PictureProps) {
  const due = duePicture(ofKind(pictured.tubes, kind), devices, pictured.asOf);
  const [first] = due.months;
  const month = monthText(first!.from, locale);
  const next = due.months[1]!;
  const forecast =
    next.unplanned === undefined
      ? words.noForecast(devices.filter(({ failed }) => failed).length, devices.length)
      : words.forecast(next.unplanned, monthText(next.from, locale));
  const rows: readonly FigureRow[] = [
    [words.past, number(due.past), ""],
    ...due.months.map((one) => [monthText(one.from, locale), number(one.due), maybe(one.unplanned, String)]),
    [words.later, number(due.later), ""],
    [words.without, number(due.without), ""],
  ];
  return (
    <Figure
      title={words.title}
      sentences={[
        ...(pictured.own?.missing.includes("due") ? [] : [words.sentence(due.past, first!.due, month, due.without)]),
        forecast,
      ]}
      picture={<Bars due={due} locale={locale} />}
      sheetName={pictures.sheets.due}
      chart={{ kind: "columns", series: [1, 2] }}
      columns={words.columns}
      rows={rows}
      isPaper={isPaper}
    />
  );
});

function Bars({ due, locale }: { readonly due: DuePicture; readonly locale: string }) {
  const most = Math.max(
    1,
    due.past,
    due.later,
    due.without,
    ...due.months.map((one) => one.due + (one.unplanned ?? 0)),
  );
  const up = scaleLinear().domain([0, most]).nice(4).range([BOTTOM, TOP]);
  const ticks = up.ticks(4).filter(Number.isInteger);
  const places = MONTHS_AHEAD + 3;
  const step = (WIDTH - LEFT) / places;
  const bar = (place: number, from: number, to: number, looks: object) => (
    <rect x={LEFT + place * step + 3} width={step - 6} y={up(to)} height={Math.max(0, up(from) - up(to))} {...looks} />
  );
  const figure = (place: number, value: number | string, above: number) => (
    <text x={LEFT + (place + 0.5) * step} y={up(above) - 3} textAnchor="middle">
      {value}
    </text>
  );
  const label = (place: number, text: string) => (
    <text x={LEFT + (place + 0.5) * step} y={BOTTOM + 14} textAnchor="middle" fill={ink.quiet}>
      {text}
    </text>
  );
  return (
    <Chart height={HEIGHT} label={words.title}>
      <defs>
        <pattern id="no-day" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="6" height="6" fill={ink.unknown} />
          <line x1="0" y1="0" x2="0" y2="6" stroke={ink.unknownLine} strokeWidth="2" />
        </pattern>
      </defs>
      <LevelLines ticks={ticks} at={up} text={String} from={LEFT} to={WIDTH} />
      {bar(0, 0, due.past, { fill: ink.past })}
      {figure(0, due.past, due.past)}
      {label(0, words.past)}
      {due.months.map((one, i) => (
        <g key={one.from}>
          {bar(i + 1, 0, one.due, { fill: ink.mark })}
          {one.unplanned !== undefined &&
            bar(i + 1, one.due, one.due + one.unplanned, { fill: ink.band, stroke: ink.mark, strokeDasharray: "3 2" })}
          {figure(i + 1, one.unplanned ? `${one.due} + ${one.unplanned}` : one.due, one.due + (one.unplanned ?? 0))}
          {label(i + 1, shortMonth(one.from, locale))}
        </g>
      ))}
      {bar(MONTHS_AHEAD + 1, 0, due.later, { fill: ink.mark, fillOpacity: 0.5 })}
      {figure(MONTHS_AHEAD + 1, due.later, due.later)}
      {label(MONTHS_AHEAD + 1, words.later)}
      {bar(MONTHS_AHEAD + 2, 0, due.without, { fill: "url(#no-day)", stroke: ink.unknownLine })}
      {figure(MONTHS_AHEAD + 2, due.without, due.without)}
      {label(MONTHS_AHEAD + 2, words.without)}
      <Legend />
    </Chart>
  );
}

function Legend() {
  const entries = [
    [words.legend.due, { fill: ink.mark }],
    [words.legend.unplanned, { fill: ink.band, stroke: ink.mark, strokeDasharray: "3 2" }],
  ] as const;
  return (
    <>
      {entries.map(([text, looks], i) => (
        <g key={text} transform={`translate(${LEFT + i * 110} ${HEIGHT - 12})`}>
          <rect width="10" height="10" {...looks} />
          <text x="14" y="9">
            {text}
          </text>
        </g>
      ))}
    </>
  );
}
