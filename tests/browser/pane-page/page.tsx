/** The pane alone on an invented workbook in memory: ?scenario=table&slow=1. For tests; not part of what is shipped. */
import "../../../taskpane/style.css";
import { createRoot } from "react-dom/client";
import { Pane } from "../../../taskpane/ui/pane/Pane";
import { fakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { scenarios, TODAY } from "./scenarios";

const asked = new URLSearchParams(location.search);
const description = scenarios[asked.get("scenario") ?? "table"]!;
const workbook = fakeWorkbook(description, {
  rowsPerBlock: 2,
  ...(asked.has("slow") && { between: () => new Promise<void>((go) => setTimeout(go, 60)) }),
});
document.documentElement.dir = asked.get("dir") ?? "ltr";
Object.assign(window, { workbook });

createRoot(document.getElementById("root")!).render(
  <Pane
    workbook={workbook}
    today={TODAY}
    locale="en-GB"
    version="0.0.0"
    openNew={async () => ({ outcome: "opened" })}
  />,
);
