/** Wear by person, each with limits, beside the clinic's mean; only people with failures enough. */
import { memo, useMemo } from "react";
import { scaleLog } from "d3-scale";
import { wearPicture, type PersonWear } from "../../../src/pictures/wear";
import { adviceFor } from "../../../src/pictures/advice";
import { adviceSentences } from "../../actions/pictures/advice";
import { pictures } from "../../texts/pictures";
import { Below, Chart, ink, WIDTH } from "./Chart";
import { Figure } from "./Figure";
import { number } from "./figure-table";
import type { PictureProps } from "./picture-props";
import { shownId } from "./shown-id";
import { useWearModel } from "./wear-model";

const words = pictures.wear;
const ROW = 20;
const [LEFT, RIGHT, TOP] = [70, WIDTH - 14, 8];
const TICKS = [0.25, 0.5, 1, 2, 4, 8];
/** Of so many fast wearers the interval is spoken of one by one; the figures have all. */
const NAMED = 5;

export const Wear = memo(function Wear({ pictured, devices, kind, isPaper }: PictureProps) {
  const model = useWearModel(devices);
  const seen = useMemo(() => wearPicture(model), [model]);
  const agreedOf = useMemo(
    () => new Map(pictured.tubes.map(({ person, agreed }) => [person, agreed] as const)),
    [pictured],
  );
  const { told, failures, devices: all, people } = seen;
  const isNobodyNamed = pictured.own?.missing.includes("person") ?? false;
  if (!told || isNobodyNamed) {
    const sentences = [isNobodyNamed ? words.noPerson : pictures.tooFew(failures, all)];
    return (
      <Figure
        title={words.title}
        {...{ sentences, isPaper }}
        picture={null}
        columns={[]}
        rows={[]}
        sheetName={pictures.sheets.wear}
      />
    );
  }
  const agreed = ({ person }: PersonWear): number | null => agreedOf.get(person) ?? null;
  const advice = (one: PersonWear): string =>
    adviceSentences(adviceFor(model, one.person, agreed(one)), agreed(one), kind ?? "").join(" ");
  const sentences =
    told.length === 0
      ? [words.nobody]
      : [
          words.sentence(seen.fast, seen.withOwn, people),
          ...told
            .filter(({ isFast }) => isFast)
            .slice(0, NAMED)
            .map((one) => words.of(shownId(one.person), advice(one))),
          ...(told.length < seen.withOwn ? [words.drawn(told.length, seen.withOwn)] : []),
          words.all,
        ];
  return (
    <Figure
      title={words.title}
      sentences={sentences}
      picture={told.length > 0 && <People told={told} />}
      sheetName={pictures.sheets.wear}
      chart={{ kind: "bars", series: [2] }}
      columns={words.columns}
      rows={told.map((one) => [
        shownId(one.person),
        words.failed(one.failures, one.devices),
        number(one.wear.value, words.times(one.wear.value)),
        words.limits(one.wear.low, one.wear.high),
        agreed(one) === null ? words.noAgreed : number(agreed(one)!),
        agreed(one) === null || one.day.value < agreed(one)!
          ? words.days(one.day.value, one.day.low, one.day.high)
          : words.notEarlier,
      ])}
      isPaper={isPaper}
    />
  );
});

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
              {shownId(one.person)}
            </text>
            <line
              x1={across(one.wear.low)}
              x2={across(one.wear.high)}
              y1={y}
              y2={y}
              stroke={ink.mark}
              strokeWidth="2"
            />
            <circle cx={across(one.wear.value)} cy={y} r="4.5" fill={one.isFast ? ink.past : ink.mark} />
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
