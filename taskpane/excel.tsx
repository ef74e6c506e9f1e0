/** The entry of Excel's side pane. */
import "./style.css";
import { createRoot } from "react-dom/client";
import { version } from "../package.json";
import { functions } from "../src/index";
import { texts } from "./texts";
import { Pane } from "./ui/Pane";
import { dayNumberOf } from "./ui/dates";
import { Notice } from "./ui/parts/Notice";
import { createExcelWorkbook } from "./workbook/excel";

/** Outside Excel office.js may never answer (measured); a person should not wait for ever. */
const PATIENCE_MS = 8_000;

const root = createRoot(document.getElementById("root")!);

const say = (sentence: string) =>
  root.render(
    <div className="pane-body">
      <Notice kind="problem">
        <p>{sentence}</p>
      </Notice>
    </div>,
  );

async function isExcel(): Promise<boolean> {
  if (typeof Office === "undefined") return false;
  const patience = new Promise<null>((resolve) => setTimeout(() => resolve(null), PATIENCE_MS));
  const info = await Promise.race([Office.onReady(), patience]);
  return info?.host === Office.HostType.Excel;
}

async function start() {
  if (!(await isExcel())) return say(texts.excel.notExcel);
  root.render(
    <Pane
      workbook={createExcelWorkbook()}
      functions={functions}
      today={dayNumberOf(new Date())}
      locale={Office.context.displayLanguage || navigator.language}
      version={version}
    />,
  );
}

root.render(<p className="pane-body">{texts.excel.starting}</p>);
start().catch((error: unknown) => say(texts.excel.failed(String(error))));
