/** One person's devices as a strip of bars on one line of time, with what their own past says of the agreed interval. */
import { memo, useId, useMemo, useState } from "react";
import { scaleLinear } from "d3-scale";
import { adviceFor } from "../../../src/pictures/advice";
import { wordKey } from "../../../src/columns/spelling";
import { ofKind } from "../../../src/pictures/devices";
import { stripPicture, type StripDevice, type StripPicture } from "../../../src/pictures/strip";
import { pictures } from "../../texts/pictures";
import { adviceSentences } from "../../actions/pictures/advice";
import { dateText } from "../parts/dates";
import { TextField } from "../forms/Field";
import { Chart, ink, WIDTH } from "./Chart";
import { Figure } from "./Figure";
import { number } from "./figure-table";
import type { PictureProps } from "./picture-props";
import { shownId } from "./shown-id";
import { useWearModel } from "./wear-model";

const words = pictures.person;
const [LEFT, RIGHT, TOP, ROW, BAR] = [8, WIDTH - 8, 8, 30, 14];

export const OnePerson = memo(function OnePerson({ pictured, kind, locale, isPaper }: PictureProps) {
  const [typed, setTyped] = useState("");
  const [asked, setAsked] = useState("");
  const key = wordKey(asked);
  const strip = useMemo(() => stripPicture(pictured.devices, key), [pictured, key]);
  const present = pictured.tubes.find(({ person }) => person === key);
  const about = present?.kind ?? strip.devices.at(-1)?.kind ?? kind;
  const model = useWearModel(useMemo(() => ofKind(pictured.devices, about), [pictured, about]));
  const isKnown = strip.devices.length > 0;
  const count = (ended: StripDevice["ended"]) => strip.devices.filter((one) => one.ended === ended).length;
  const sentences = isKnown
    ? [
        words.sentence(strip.devices.length, count("failed"), count("unplanned")),
        ...(strip.gaps.length > 0 ? [words.gaps(strip.gaps.length)] : []),
        ...adviceSentences(adviceFor(model, key, present?.agreed ?? null), present?.agreed ?? null, about ?? ""),
      ]
    : [asked === "" ? words.ask : words.unknown(shownId(key))];
  return (
    <Figure
      title={isKnown ? words.named(shownId(key)) : words.title}
      choice={
        <form
          className="stack"
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            setAsked(typed);
          }}
        >
          <TextField name="person" label={words.id} hint={words.idHint} value={typed} onChange={setTyped} />
          <div className="presses">
            <button type="submit" className="button">
              {words.show}
            </button>
          </div>
        </form>
      }
      sentences={sentences}
      picture={isKnown && <Strip strip={strip} asOf={pictured.asOf} locale={locale} />}
      sheetName={pictures.sheets.person}
      chart={{ kind: "bars", series: [2] }}
      columns={words.columns}
      rows={strip.devices.map((one) => [
        dateText(one.from, locale),
        one.ended === "in" ? "" : dateText(one.to, locale),
        number(Math.floor(one.days)),
        one.kind,
        words.because(words.ended[one.ended], one.reason),
      ])}
      isPaper={isPaper}
    />
  );
});

const looks: { readonly [E in StripDevice["ended"]]: object } = {
  failed: { fill: ink.past },
  unplanned: { fill: ink.unknown, stroke: ink.unknownLine },
  planned: { fill: ink.mark },
  in: { fill: ink.band, stroke: ink.mark },
  away: { fill: "#ffffff", stroke: ink.quiet, strokeDasharray: "3 2" },
};

interface StripProps {
  readonly strip: StripPicture;
  readonly asOf: number;
  readonly locale: string;
}

function Strip({ strip: { devices, gaps }, asOf, locale }: StripProps) {
  const id = useId();
  const first = devices[0]!.from;
  const across = scaleLinear()
    .domain([first, Math.max(asOf, first + 1)])
    .range([LEFT, RIGHT]);
  /* Rows so that words fit: a bar's word stands under it. */
  const bottom = TOP + ROW * devices.length;
  const place = (i: number) => TOP + i * ROW;
  return (
    <Chart height={bottom + 22} label={words.title}>
      <defs>
        <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="6" height="6" fill={ink.unknown} />
          <line x1="0" y1="0" x2="0" y2="6" stroke={ink.unknownLine} strokeWidth="2" />
        </pattern>
      </defs>
      {gaps.map(({ from, to }) => (
        <rect
          key={from}
          className="gap"
          x={across(from)}
          width={across(to) - across(from)}
          y={TOP}
          height={bottom - TOP}
          fill={`url(#${id})`}
          fillOpacity="0.5"
        />
      ))}
      {devices.map((one, i) => {
        const isLeft = across(one.from) < WIDTH / 2;
        return (
          <g key={i}>
            <rect
              className="device"
              x={across(one.from)}
              width={Math.max(1.5, across(one.to) - across(one.from))}
              y={place(i)}
              height={BAR}
              {...looks[one.ended]}
            />
            <text
              x={isLeft ? across(one.from) : Math.max(across(one.to), across(one.from))}
              y={place(i) + BAR + 11}
              fontSize={10}
              textAnchor={isLeft ? "start" : "end"}
              fill={ink.quiet}
            >
              {words.bar(Math.floor(one.days), words.ended[one.ended])}
            </text>
          </g>
        );
      })}
      <text x={LEFT} y={bottom + 16} fill={ink.quiet}>
        {dateText(first, locale)}
      </text>
      <text x={RIGHT} y={bottom + 16} textAnchor="end" fill={ink.quiet}>
        {dateText(asOf, locale)}
      </text>
    </Chart>
  );
}
