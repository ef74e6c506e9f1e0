import { columnGroups, type SetUpChoices } from "./interface";
import type { Maker } from "./make";
import { previewOf } from "./preview";

export { isMarkedInvented, removeInvented } from "./remove-invented";

/** A new workbook from a description: the one that is open is not touched, so there is no change and nothing to take back. */
export const setUp = {
  /** Where to start: people to try it out with, all columns. */
  proposal: { people: "invented", groups: columnGroups } as SetUpChoices,
  load: (): Promise<Maker> => import(/* webpackChunkName: "caseload" */ "./make").then(({ maker }) => maker),
  preview: previewOf,
  fileName: ({ people }: SetUpChoices): string => (people === "invented" ? "Invented caseload.xlsx" : "Caseload.xlsx"),
};
