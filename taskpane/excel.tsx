/** The entry of Excel's side pane. */
import "./style.css";
import { createRoot } from "react-dom/client";
import product from "../package.json";
import { excel as excelTexts } from "./texts/pane";
import type { OpenNew } from "./ui/pane/open-new";
import { Pane } from "./ui/pane/Pane";
import { dayNumberOf } from "./ui/parts/dates";
import { Notice } from "./ui/parts/Notice";
import { createExcelWorkbook, detectHost } from "./workbook/excel";
import { openNew } from "./workbook/excel/open-new";

const root = createRoot(document.getElementById("root")!);

const say = (sentence: string) =>
  root.render(
    <div className="pane-body">
      <Notice kind="problem">
        <p>{sentence}</p>
      </Notice>
    </div>,
  );

const makeAndOpen: OpenNew = async (book, name) => {
  const { writeBook } = await import(/* webpackChunkName: "caseload" */ "./workbook/file");
  return openNew(await writeBook(book), name);
};

async function start() {
  if ((await detectHost()) !== "excel") return say(excelTexts.notExcel);
  root.render(
    <Pane
      workbook={createExcelWorkbook()}
      today={dayNumberOf(new Date())}
      locale={Office.context.displayLanguage || navigator.language}
      version={product.version}
      openNew={makeAndOpen}
    />,
  );
}

root.render(<p className="pane-body">{excelTexts.starting}</p>);
start().catch((error: unknown) => say(excelTexts.failed(String(error))));
