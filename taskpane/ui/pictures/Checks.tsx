/** Balloon checks: a small picture for each person, all on the same scales, with the clinic's limit and the latest figure. */
import { memo, useMemo } from "react";
import { scaleLinear } from "d3-scale";
import { checksPicture, MOST_MULTIPLES, type PersonChecks } from "../../../src/pictures/checks";
import { pictures } from "../../texts/pictures";
import { dateText } from "../parts/dates";
import { Chart, ink, WIDTH } from "./Chart";
import { Figure } from "./Figure";
import { maybe, number } from "./figure-table";
import type { PictureProps } from "./picture-props";
import { shownId } from "./shown-id";

const words = pictures.checks;
const PER_ROW = 3;
const [BOX, GAP, TALL] = [(WIDTH - 16) / PER_ROW, 8, 84];
const [TOP, BOTTOM] = [28, TALL - 12];

export const Checks = memo(function Checks({ pictured, since, locale, isPaper }: PictureProps) {
  const { checks, lossLimits, asOf } = pictured;
  const seen = useMemo(() => (checks ? checksPicture(checks, lossLimits, since) : null), [checks, lossLimits, since]);
  if (!seen || seen.people.length === 0) {
    const sentences = [seen ? words.none : pictures.own.noChecks];
    return (
      <Figure
        title={words.title}
        {...{ sentences, isPaper }}
        picture={null}
        columns={[]}
        rows={[]}
        sheetName={pictures.sheets.checks}
      />
    );
  }
  const { people } = seen;
  const drawn = people.slice(0, MOST_MULTIPLES);
  return (
    <Figure
      title={words.title}
      sentences={[
        words.sentence(seen.low, people.length),
        ...(seen.notTold > 0 ? [words.notTold(seen.notTold)] : []),
        ...(drawn.length < people.length ? [words.drawn(drawn.length, people.length)] : []),
        words.line,
        pictures.wear.all,
      ]}
      picture={<Multiples people={drawn} since={since} asOf={asOf} />}
      sheetName={pictures.sheets.checks}
      chart={{ kind: "bars", series: [3] }}
      columns={words.columns}
      rows={people.map(({ person, checks: own, latest, limit }) => [
        shownId(person),
        number(own.length),
        dateText(latest.day, locale),
        latest.loss === null ? words.notMeasured : number(latest.loss, latest.loss.toFixed(1)),
        limit === null ? words.noLimit : maybe(limit, (one) => one.toFixed(1)),
        latest.says,
      ])}
      isPaper={isPaper}
    />
  );
});

interface MultiplesProps {
  readonly people: readonly PersonChecks[];
  readonly since: number;
  readonly asOf: number;
}

function Multiples({ people, since, asOf }: MultiplesProps) {
  const losses = people.flatMap(({ checks }) => checks.flatMap(({ loss }) => (loss === null ? [] : [loss])));
  const limits = people.flatMap(({ limit }) => (limit === null ? [] : [limit]));
  /* One empty balloon would press all others flat: what lies above three times the limits is drawn at the top. */
  const most = Math.max(1, 3 * Math.max(0, ...limits));
  const up = scaleLinear()
    .domain([Math.max(-most, Math.min(0, ...losses)), most])
    .range([BOTTOM, TOP])
    .clamp(true);
  const first = Math.min(asOf, Math.max(since, Math.min(...people.map(({ checks }) => checks[0]!.day))));
  const across = scaleLinear()
    .domain([first, Math.max(asOf, first + 1)])
    .range([3, BOX - 7]);
  const rows = Math.ceil(people.length / PER_ROW);
  return (
    <Chart height={rows * (TALL + GAP)} label={words.title}>
      {people.map((one, i) => (
        <g
          key={one.person}
          transform={`translate(${(i % PER_ROW) * (BOX + GAP)} ${Math.floor(i / PER_ROW) * (TALL + GAP)})`}
        >
          <Small one={one} across={across} up={up} />
        </g>
      ))}
    </Chart>
  );
}

interface SmallProps {
  readonly one: PersonChecks;
  readonly across: (day: number) => number;
  readonly up: (loss: number) => number;
}

function Small({ one: { person, checks, latest, limit, isLow }, across, up }: SmallProps) {
  const path = checks
    .filter(({ loss }) => loss !== null)
    .map(({ day, loss }, i) => `${i === 0 ? "M" : "L"}${across(day)},${up(loss!)}`)
    .join("");
  return (
    <>
      <text x="0" y="11" fontWeight="bold">
        {shownId(person)}
      </text>
      <text
        x={BOX - 2}
        y="11"
        textAnchor="end"
        fontSize={latest.loss === null ? 9 : 11}
        fill={isLow ? ink.past : ink.text}
      >
        {latest.loss === null ? words.notMeasured : words.ml(latest.loss)}
      </text>
      <line x1="0" x2={BOX - 2} y1={up(0)} y2={up(0)} stroke={ink.line} />
      {limit !== null && (
        <line x1="0" x2={BOX - 2} y1={up(limit)} y2={up(limit)} stroke={ink.past} strokeDasharray="3 2" />
      )}
      <path d={path} fill="none" stroke={ink.mark} />
      {checks.map(({ day, loss }, i) => (
        <circle
          key={i}
          cx={across(day)}
          cy={loss === null ? BOTTOM + 6 : up(loss)}
          r="2"
          fill={loss === null ? "#ffffff" : ink.mark}
          stroke={loss === null ? ink.unknownLine : "none"}
        />
      ))}
    </>
  );
}
