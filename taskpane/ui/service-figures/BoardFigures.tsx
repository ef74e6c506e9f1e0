/** The figures of a board, on screen and on paper: the sentence, the counts, four pictures, and how complete they are. */
import { scaleLinear } from "d3-scale";
import type { Board, BoardFigures as Figures, BoardRow } from "../../../src/service/board";
import { breakdowns } from "../../../src/service/figures";
import { serviceFigures as words } from "../../texts/service-figures";
import { Chart, ink, WIDTH } from "../pictures/Chart";
import { Figure } from "../pictures/Figure";
import { Step } from "../parts/Step";
import { boardSentences, periodText, rateText, toldText } from "./said";

interface Props {
  readonly board: Board;
  readonly locale: string;
  /** Counts below it are not shown. */
  readonly least: number;
  readonly uncounted: number;
  readonly isPaper: boolean;
}

export function BoardFigures({ board, locale, least, uncounted, isPaper }: Props) {
  const { now, before, length, quarters } = board;
  const sentences = boardSentences(board, least, locale);
  const complete = words.complete(
    (["where", "position"] as const).flatMap((name) => {
      const tenths = now.written[name];
      return tenths === null ? [] : [words.written[name](tenths)];
    }),
  );
  const shownQuarters = length === "year" || !before ? quarters : [before, ...quarters];
  return (
    <>
      <Step title={words.title(periodText(now, length, locale))}>
        {sentences.map((sentence, i) => (
          <p key={sentence}>{i === 0 ? <strong>{sentence}</strong> : sentence}</p>
        ))}
        <CountsTable {...{ board, locale, least }} />
        {complete !== "" && <p>{complete}</p>}
        {uncounted > 0 && <p>{words.uncounted(uncounted)}</p>}
        {least > 1 && <p className="note">{words.hidden(least)}</p>}
        <p className="note">{words.caution}</p>
      </Step>
      <Figure
        title={words.rateTitle}
        sentences={[]}
        picture={shownQuarters.some(({ rate }) => rate) && <Rates quarters={shownQuarters} locale={locale} />}
        columns={words.rateColumns}
        rows={shownQuarters.map((one) => [
          periodText(one, "quarter", locale),
          toldText(one.unplanned, least),
          rateText(one),
        ])}
        isPaper={isPaper}
      />
      {breakdowns.map((name) => {
        const { rows, hasOthers } = now.tables[name];
        return (
          <Figure
            key={name}
            title={words.tables[name]}
            sentences={rows.length === 0 ? [words.none(least)] : []}
            picture={rows.length > 0 && <Dots rows={rows} label={words.tables[name]} />}
            columns={words.tableColumns}
            rows={
              rows.length === 0
                ? []
                : [
                    ...rows.map(({ word, count }) => [word, words.value(count)]),
                    ...(hasOthers ? [[words.others, words.heldBack]] : []),
                  ]
            }
            isPaper={isPaper}
          />
        );
      })}
    </>
  );
}

type Count = "people" | "planned" | "unplanned" | "visits" | "nights";

function CountsTable({ board: { now, before, length }, locale, least }: Pick<Props, "board" | "locale" | "least">) {
  const columns = words.columns(
    periodText(now, length, locale),
    before ? periodText(before, length, locale) : words.noBefore,
  );
  const told = (name: Count): readonly string[] => [
    words.rows[name],
    toldText(now[name], least),
    before ? toldText(before[name], least) : words.noBefore,
  ];
  const rows = [
    told("people"),
    [words.rows.tubeDays, words.value(now.tubeDays), before ? words.value(before.tubeDays) : words.noBefore],
    told("planned"),
    told("unplanned"),
    [words.rows.rate, rateText(now), before ? rateText(before) : words.noBefore],
    told("visits"),
    told("nights"),
  ];
  return (
    <table className="figures">
      <thead>
        <tr>
          {columns.map((column) => (
            <th scope="col" key={column}>
              {column}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([label, ...cells]) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            {cells.map((cell, i) => (
              <td key={i}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const ROW = 20;
const [LEFT, RIGHT, TOP] = [186, WIDTH - 28, 6];

function Dots({ rows, label }: { readonly rows: readonly BoardRow[]; readonly label: string }) {
  const across = scaleLinear().domain([0, rows[0]!.count]).range([LEFT, RIGHT]);
  return (
    <Chart height={TOP * 2 + ROW * rows.length} label={label}>
      {rows.map(({ word, count }, i) => {
        const y = TOP + (i + 0.5) * ROW;
        return (
          <g key={word}>
            <text x={LEFT - 6} y={y + 4} textAnchor="end">
              {word}
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

/** One line a quarter, from limit to limit, with its rate as a dot; one that is not shown says so. */
function Rates({ quarters, locale }: { readonly quarters: readonly Figures[]; readonly locale: string }) {
  const most = Math.max(...quarters.map(({ rate }) => rate?.high ?? 0));
  const across = scaleLinear().domain([0, most]).range([LEFT, RIGHT]);
  return (
    <Chart height={TOP * 2 + ROW * quarters.length} label={words.rateTitle}>
      {quarters.map((quarter, i) => {
        const y = TOP + (i + 0.5) * ROW;
        const { rate } = quarter;
        return (
          <g key={quarter.from}>
            <text x={LEFT - 6} y={y + 4} textAnchor="end">
              {periodText(quarter, "quarter", locale)}
            </text>
            {rate ? (
              <>
                <line x1={across(rate.low)} x2={across(rate.high)} y1={y} y2={y} stroke={ink.mark} strokeWidth="2" />
                <circle cx={across(rate.value)} cy={y} r="5" fill={ink.mark} />
              </>
            ) : (
              <text x={LEFT} y={y + 4} fill={ink.quiet}>
                {rateText(quarter)}
              </text>
            )}
          </g>
        );
      })}
    </Chart>
  );
}
