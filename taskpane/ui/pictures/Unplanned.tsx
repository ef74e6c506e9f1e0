/** Unplanned changes by period: points with their limits, what chance alone would make behind them, a signal as a diamond. */
import { memo, useState } from "react";
import { scaleLinear } from "d3-scale";
import {
  FEW_DAYS,
  unplannedPicture,
  type UnplannedPeriod,
  type UnplannedPicture,
} from "../../../src/pictures/unplanned";
import type { PeriodLength } from "../../../src/pictures/months";
import { pictures } from "../../texts/pictures";
import { Choice } from "../parts/Choice";
import { longMonth, monthText, shortMonth } from "../parts/dates";
import { Chart, ink, LevelLines, WIDTH } from "./Chart";
import { Figure } from "./Figure";
import { number } from "./figure-table";
import { uncounted } from "./uncounted";
import type { PictureProps } from "./picture-props";

const words = pictures.unplanned;
const HEIGHT = 190;
const [LEFT, RIGHT, TOP, BOTTOM] = [34, WIDTH - 8, 12, 150];

/** "October 2026", or "October to December 2026". */
function nameOf({ from, end }: UnplannedPeriod, length: PeriodLength, locale: string): string {
  return length === "month" ? monthText(from, locale) : `${longMonth(from, locale)} to ${monthText(end - 1, locale)}`;
}

export const Unplanned = memo(function Unplanned({ pictured, devices, since, locale, isPaper }: PictureProps) {
  const [length, setLength] = useState<PeriodLength>("quarter");
  const seen = unplannedPicture(devices, since, pictured.asOf, length);
  const name = (period: UnplannedPeriod) => nameOf(period, length, locale);
  const signals = (["above", "below"] as const).flatMap((side) => {
    const found = seen.periods.filter(({ signal }) => signal === side).map(name);
    return found.length > 0 ? [words.signal(found, side === "above")] : [];
  });
  const few = seen.periods.filter(({ tubeDays }) => tubeDays < FEW_DAYS).length;
  const { rate } = seen;
  const sentences = rate
    ? [
        words.sentence(seen.events, seen.tubeDays, rate.value, rate.low, rate.high),
        ...(signals.length > 0 ? signals : [words.noSignal]),
        ...(few > 0 ? [words.fewDays(few)] : []),
        ...uncounted(pictured),
      ]
    : [words.nothing];
  const rateOf = (value: number) => number(value, words.rate(value));
  const rows = seen.periods.map((period) => [
    name(period),
    number(period.events),
    number(period.tubeDays),
    ...[period.rate, period.low, period.high, period.chanceLow, period.chanceHigh].map(rateOf),
  ]);
  return (
    <Figure
      title={words.title}
      choice={
        <Choice
          legend={pictures.by}
          options={(["month", "quarter"] as const).map((key) => ({ key, label: pictures.lengths[key] }))}
          chosen={length}
          onChoose={setLength}
        />
      }
      sentences={sentences}
      picture={rate && <Points seen={seen} locale={locale} />}
      sheetName={pictures.sheets.unplanned}
      chart={{ kind: "lines", series: [3, 4, 5, 6, 7] }}
      columns={words.columns}
      rows={rows}
      isPaper={isPaper}
    />
  );
});

function Points({ seen, locale }: { readonly seen: UnplannedPicture; readonly locale: string }) {
  const most = Math.max(...seen.periods.map(({ high, chanceHigh }) => Math.max(high, chanceHigh)));
  const up = scaleLinear().domain([0, most]).nice(4).range([BOTTOM, TOP]);
  const step = (RIGHT - LEFT) / seen.periods.length;
  const middle = (i: number) => LEFT + (i + 0.5) * step;
  /* Names stand so far apart that they do not touch. */
  const every = Math.ceil(36 / step);
  return (
    <Chart height={HEIGHT} label={words.title}>
      {seen.periods.map((period, i) => (
        <rect
          key={period.from}
          x={LEFT + i * step}
          width={step}
          y={up(period.chanceHigh)}
          height={up(period.chanceLow) - up(period.chanceHigh)}
          fill={ink.band}
        />
      ))}
      <LevelLines ticks={up.ticks(4)} at={up} text={String} from={LEFT} to={RIGHT} />
      <line
        x1={LEFT}
        x2={RIGHT}
        y1={up(seen.rate!.value)}
        y2={up(seen.rate!.value)}
        stroke={ink.mark}
        strokeDasharray="4 3"
      />
      {seen.periods.map((period, i) => (
        <g key={period.from}>
          <line x1={middle(i)} x2={middle(i)} y1={up(period.low)} y2={up(period.high)} stroke={ink.quiet} />
          {period.signal === null ? (
            <circle cx={middle(i)} cy={up(period.rate)} r="4" fill={ink.mark} />
          ) : (
            <rect
              x={-5}
              y={-5}
              width="10"
              height="10"
              fill={ink.past}
              transform={`translate(${middle(i)} ${up(period.rate)}) rotate(45)`}
            />
          )}
          {i % every === 0 && (
            <text x={middle(i)} y={BOTTOM + 14} textAnchor="middle" fill={ink.quiet}>
              {shortMonth(period.from, locale)}
            </text>
          )}
        </g>
      ))}
    </Chart>
  );
}
