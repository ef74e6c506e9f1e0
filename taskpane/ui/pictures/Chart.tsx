/**
 * The frame of a picture: black on white wherever it is seen, copied or printed, all its looks in attributes, so that a
 * copy needs no style sheet. Its text for readers of the screen is the table beside it.
 */
import type { ReactNode } from "react";

export const WIDTH = 320;
export const ink = {
  text: "#1f2627",
  quiet: "#535f60",
  line: "#d8dedd",
  mark: "#0c5a6b",
  band: "#cfe3e7",
  past: "#8c1c4b",
  unknown: "#cbc4e6",
  unknownLine: "#3a2e66",
} as const;

export const FONT = "Arial,Helvetica,sans-serif";

interface Props {
  readonly height: number;
  /** What the picture is called by those who hear it. */
  readonly label: string;
  readonly children: ReactNode;
}

export function Chart({ height, label, children }: Props) {
  return (
    <svg
      className="picture"
      role="img"
      aria-label={label}
      xmlns="http://www.w3.org/2000/svg"
      viewBox={`0 0 ${WIDTH} ${height}`}
      fontFamily={FONT}
      fontSize={11}
      fill={ink.text}
    >
      <rect width={WIDTH} height={height} fill="#ffffff" />
      {children}
    </svg>
  );
}

interface TickProps {
  readonly ticks: readonly number[];
  readonly at: (value: number) => number;
  readonly text: (value: number) => string;
}

/** Lines across the picture with their figures at the left. */
export const LevelLines = ({
  ticks,
  at,
  text,
  from,
  to,
}: TickProps & { readonly from: number; readonly to: number }) => (
  <>
    {ticks.map((value) => (
      <g key={value}>
        <line x1={from} x2={to} y1={at(value)} y2={at(value)} stroke={ink.line} />
        <text x={from - 4} y={at(value) + 4} textAnchor="end" fill={ink.quiet}>
          {text(value)}
        </text>
      </g>
    ))}
  </>
);

/** Figures under the picture. */
export const Below = ({ ticks, at, text, y }: TickProps & { readonly y: number }) => (
  <>
    {ticks.map((value) => (
      <text key={value} x={at(value)} y={y} textAnchor="middle" fill={ink.quiet}>
        {text(value)}
      </text>
    ))}
  </>
);
