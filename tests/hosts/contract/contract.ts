/**
 * What every host must do behind the port, whatever it is: the fake, Excel, the grid. A host that lacks a
 * thing altogether (a grid has no chart sheets) says so, and those checks are shown as skipped.
 */
import { afterEach } from "vitest";
import type { WorkbookDescription } from "../../../taskpane/workbook/fake/description";
import { checkAdding } from "./adding";
import { checkChanging } from "./changing";
import { checkFiltering } from "./filtering";
import type { Contract, ContractHost, Lack } from "./kit";
import { checkNamedCells } from "./named-cells";
import { checkNewSheets } from "./new-sheets";
import { checkReading } from "./reading";
import { checkRefreshing } from "./refreshing";
import { checkRefusals } from "./refusals";
import { checkRemoving } from "./removing";
import { checkRows } from "./rows";
import { checkSingleSteps } from "./single-steps";
import { checkSorting } from "./sorting";
import { checkUndoing } from "./undoing";

export type { ContractHost, Lack } from "./kit";

export function describeContract(
  name: string,
  makeHost: (description: WorkbookDescription) => Promise<ContractHost>,
  lacks: readonly Lack[] = [],
): void {
  const opened: ContractHost[] = [];
  const open = async (description: WorkbookDescription): Promise<ContractHost> => {
    const host = await makeHost(description);
    opened.push(host);
    return host;
  };
  afterEach(async () => {
    for (const host of opened.splice(0)) await host.close?.();
  });
  const contract: Contract = { name, lacks, open };
  checkReading(contract);
  checkAdding(contract);
  checkRefreshing(contract);
  checkChanging(contract);
  checkRefusals(contract);
  checkSingleSteps(contract);
  checkUndoing(contract);
  checkRows(contract);
  checkRemoving(contract);
  checkNamedCells(contract);
  checkNewSheets(contract);
  checkFiltering(contract);
  checkSorting(contract);
}
