/** The grid gives its tools pictures and no names (0.25.1): a screen reader says "button" of each. */
const byCommand: Readonly<Record<string, string>> = {
  "univer.command.undo": "Undo",
  "univer.command.redo": "Redo",
  "sheet.command.set-once-format-painter": "Copy a look",
  "sheet.command.clear-selection-all": "Clear",
  "sheet.command.set-range-bold": "Bold",
  "sheet.command.set-range-italic": "Italic",
  "sheet.command.numfmt.set.percent": "Per cent",
  "sheet.command.numfmt.add.decimal.command": "More decimals",
  "sheet.command.numfmt.subtract.decimal.command": "Fewer decimals",
  "sheet.command.smart-toggle-filter": "Filter arrows on or off",
  "base-ui.operation.toggle-shortcut-panel": "Keys of the sheet",
  "sheet.command.toggle-gridlines": "Lines of the grid",
  "ui.operation.open-find-dialog": "Find",
};

/** What has no command: where it stands, and its names in the order in which they stand there. */
const byPlace: readonly (readonly [selector: string, ...names: string[]])[] = [
  ["[data-u-comp='defined-name'] input, [data-u-comp='formula-bar'] input", "Cell"],
  ["[data-u-comp='formula-bar'] a, [data-u-comp='defined-name'] a", "Names in this workbook"],
  ["[data-u-comp='formula-bar'] button", "A taller line for formulas"],
  ["[data-u-comp='sheet-bar-append-button']", "Add a sheet", "All sheets"],
  ["[data-u-comp='ribbon-toolbar-more'] button, [data-u-comp='ribbon-toolbar-more'] a", "More tools"],
  ["[role='track'] [role='handle'], [role='track'] a", "Zoom"],
  ["div:has(> button):has([role='track']) > button", "Smaller", "Larger"],
  ["[data-u-comp='button']", "Sheets to the left", "Sheets to the right"],
];

const isNamed = (element: Element): boolean =>
  element.hasAttribute("aria-label") || (element.textContent ?? "").trim() !== "";

function name(container: HTMLElement): void {
  for (const [command, label] of Object.entries(byCommand)) {
    for (const tool of container.querySelectorAll(`[data-u-command="${command}"]`))
      if (!isNamed(tool)) give(tool, label);
  }
  for (const [selector, ...labels] of byPlace) {
    const nameless = [...container.querySelectorAll(selector)].filter((tool) => !isNamed(tool));
    nameless.forEach((tool, i) => give(tool, labels[i] ?? labels.at(-1)!));
  }
}

function give(tool: Element, label: string): void {
  tool.setAttribute("aria-label", label);
  if (!tool.hasAttribute("title")) tool.setAttribute("title", label);
}

/** Also what comes later: tools that fold away in a narrow window, menus. */
export function nameTools(container: HTMLElement): void {
  name(container);
  let isWaiting = false;
  new MutationObserver(() => {
    if (isWaiting) return;
    isWaiting = true;
    requestAnimationFrame(() => {
      isWaiting = false;
      name(container);
    });
  }).observe(container, { childList: true, subtree: true });
}
