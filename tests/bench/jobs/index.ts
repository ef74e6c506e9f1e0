/** Every job of the benchmarks, in the order of docs/benchmarks.md. */
import type { Job } from "../report/row";
import { add } from "./add";
import { build, tests } from "./build";
import { caseload } from "./caseload";
import { dates } from "./dates";
import { edit } from "./edit";
import { files } from "./files";
import { functions } from "./functions";
import { lives } from "./lives";
import { page } from "./page";
import { pane } from "./pane";
import { rates } from "./rates";
import { runtime } from "./runtime";
import { service } from "./service";

export const jobs: readonly Job[] = [
  page,
  add,
  edit,
  caseload,
  files,
  pane,
  runtime,
  functions,
  dates,
  rates,
  lives,
  service,
  build,
  tests,
];
