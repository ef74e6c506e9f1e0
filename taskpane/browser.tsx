/** The browser workbook's entry: bar and pane at once, the grid as soon as its script is here. */
import "./style.css";
import "./styles/shell.css";
import { createRoot } from "react-dom/client";
import product from "../package.json";
import type { BookDescription } from "../src/caseload/book";
import { Shell } from "./ui/shell/Shell";

const loadGrid = () =>
  import(/* webpackChunkName: "grid" */ "./workbook/embedded").then(({ createGrid }) => createGrid);

const loadExample = (today: number) =>
  import(/* webpackChunkName: "example" */ "./ui/shell/example-workbook").then(({ exampleWorkbook }) =>
    exampleWorkbook(today),
  );

const writeBook = (book: BookDescription) =>
  import(/* webpackChunkName: "caseload" */ "./workbook/file").then((file) => file.writeBook(book));

createRoot(document.getElementById("root")!).render(
  <Shell
    loadGrid={loadGrid}
    loadExample={loadExample}
    writeBook={writeBook}
    locale={navigator.language}
    version={product.version}
  />,
);
