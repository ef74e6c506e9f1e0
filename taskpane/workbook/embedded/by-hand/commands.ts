/**
 * What the grid can do, command by command: the one place that says what each of them does to a file. A command that is
 * not named here is refused. tests/browser/grid-commands.test.ts compares this with what the running grid has registered,
 * so that a new version cannot bring one in unseen.
 */

const IN_EXCEL = "Do that in Excel, then open the file here again.";

/** A file keeps its rows, columns and sheets in place; a new workbook is written as it stands. */
type Where = "in a file" | "anywhere";

interface Refused {
  readonly where: Where;
  readonly sentence: string;
}

/** Why a command is not carried out. */
const ROWS: Refused = {
  where: "in a file",
  sentence: `Rows are not inserted, removed or moved in a file. ${IN_EXCEL} New rows can be typed below the last one; copy the formulas down to them.`,
};

const REFUSALS = {
  // inside a list of our own these three are done in our own way (rows.ts)
  rowsAbove: ROWS,
  rowsBelow: ROWS,
  rowsOut: ROWS,
  rows: ROWS,
  columns: {
    where: "in a file",
    sentence: `Columns are not inserted, removed or moved in a file. ${IN_EXCEL} New columns can be typed at the right.`,
  },
  pushing: { where: "in a file", sentence: `Cells are not pushed aside in a file. ${IN_EXCEL}` },
  moving: {
    where: "in a file",
    sentence:
      "Cells are not moved in a file, because formulas and charts elsewhere would lose them. Copy them, or use Excel.",
  },
  sheets: { where: "in a file", sentence: `Sheets are not added, removed, renamed or moved in a file. ${IN_EXCEL}` },
  merges: { where: "in a file", sentence: `Cells are not merged or unmerged in a file. ${IN_EXCEL}` },
  tables: { where: "anywhere", sentence: `Tables are not made or changed here. ${IN_EXCEL}` },
  protection: { where: "anywhere", sentence: `Protection is not changed here. ${IN_EXCEL}` },
  formats: { where: "anywhere", sentence: `Conditional formats are not changed here. ${IN_EXCEL}` },
  validation: { where: "anywhere", sentence: `Validation rules are not changed here. ${IN_EXCEL}` },
  notes: { where: "anywhere", sentence: `Notes are not changed here. ${IN_EXCEL}` },
  names: { where: "anywhere", sentence: `Names are not changed here. ${IN_EXCEL}` },
  letters: { where: "anywhere", sentence: `This look is not saved by this page. ${IN_EXCEL}` },
  partOfCell: {
    where: "anywhere",
    sentence:
      "Letters inside a cell are not given a look of their own here. Leave the cell, then choose the look for all of it.",
  },
  heights: { where: "anywhere", sentence: `Row heights are not saved by this page. ${IN_EXCEL}` },
  hiding: { where: "anywhere", sentence: `Columns are not hidden or shown here. ${IN_EXCEL}` },
  holding: { where: "anywhere", sentence: `How the sheet is held on screen is not saved by this page. ${IN_EXCEL}` },
  headers: {
    where: "anywhere",
    sentence:
      "That way of sorting takes the headers for a row of the list. Select all columns of the list, without its headers, then sort ascending or descending.",
  },
  unknown: { where: "anywhere", sentence: "This page cannot do that, because it does not know how to save it." },
} satisfies Record<string, Refused>;

/**
 * `cells`: what stands in them; `sorts` also says so, and asks what would stay behind. `looks`: what is saved of how they
 * look, and which rows show. `filters` likewise. `shows`: moves the view, types in a cell, takes back.
 */
type Permitted = "cells" | "sorts" | "looks" | "filters" | "shows";
export type Does = Permitted | keyof typeof REFUSALS;

const inGroups = <T extends string>(groups: Partial<Record<T, string>>): ReadonlyMap<string, T> =>
  new Map(
    Object.entries<string | undefined>(groups).flatMap(([does, ids]) =>
      ids!
        .trim()
        .split(/\s+/)
        .map((id) => [id, does as T] as const),
    ),
  );

/** What a person, a menu or a key can ask for. */
export const commands = inGroups<Does>({
  cells: `
    formula.command.insert-function sheets-formula.command.quick-sum
    sheet.command.set-range-values sheet.command.toggle-cell-checkbox
    sheet.command.auto-clear-content sheet.command.clear-selection-all sheet.command.clear-selection-content
    sheet.command.auto-fill sheet.command.copy-down sheet.command.copy-right sheet.command.refill
    univer.command.cut univer.command.paste
    sheet.command.optional-paste sheet.command.paste-besides-border sheet.command.paste-by-short-key
    sheet.command.paste-format sheet.command.paste-formula sheet.command.paste-value
    sheet.command.sort-range-asc sheet.command.sort-range-asc-ctx
    sheet.command.sort-range-desc sheet.command.sort-range-desc-ctx
    sheet.command.split-text-to-columns sheet.command.text-to-number
    ui.command.replace-all-matches ui.command.replace-current-match`,
  sorts: `sheet.command.sort-range sheet.command.reorder-range`,
  looks: `
    sheet.command.set-style sheet.command.clear-selection-format
    sheet.command.set-bold sheet.command.set-range-bold sheet.command.set-italic sheet.command.set-range-italic
    sheet.command.set-text-color sheet.command.set-range-text-color
    sheet.command.reset-text-color sheet.command.reset-range-text-color
    sheet.command.set-background-color sheet.command.reset-background-color
    sheet.command.set-horizontal-text-align sheet.command.set-text-wrap
    sheet.command.numfmt.add.decimal.command sheet.command.numfmt.subtract.decimal.command
    sheet.command.numfmt.set.currency sheet.command.numfmt.set.numfmt sheet.command.numfmt.set.percent
    sheet.command.apply-format-painter
    sheet.command.delta-column-width sheet.command.set-worksheet-col-width sheet.command.set-col-auto-width
    sheet.command.paste-col-width
    sheet.command.hide-row-confirm sheet.command.set-rows-hidden
    sheet.command.set-selected-rows-visible sheet.command.set-specific-rows-visible`,
  filters: `
    sheet.command.smart-toggle-filter sheet.command.set-filter-range sheet.command.set-filter-criteria
    sheet.command.clear-filter-criteria sheet.command.re-calc-filter sheet.command.remove-sheet-filter
    sheet.command.set-table-filter`,
  shows: `
    nil univer.command.copy univer.command.undo univer.command.redo
    sheet.command.repeat-last-action sheet.command.copy-formula-only
    sheet.command.set-once-format-painter sheet.command.set-infinite-format-painter
    sheet.command.expand-selection sheet.command.move-selection sheet.command.move-selection-enter-tab
    sheet.command.select-all sheet.command.select-range
    sheet.command.scroll-to-cell sheet.command.scroll-view sheet.command.set-scroll-relative
    sheet.command.change-zoom-ratio sheet.command.set-zoom-ratio
    sheet.command.set-row-header-width sheet.command.set-col-header-height
    sheet.command.set-worksheet-row-count sheet.command.set-worksheet-column-count
    sheet.command.set-worksheet-activate sheet.command.set-worksheet-show
    sheet.command.toggle-note-popup sidebar.operation.defined-name
    doc.command-cover-content doc.command-replace-content doc.command-replace-snapshot
    doc.command.after-space doc.command.break-line doc.command.enter doc.command.tab
    doc.command.delete-left doc.command.delete-right doc.command.delete-text doc.command.ime-input
    doc.command.inner-cut doc.command.inner-paste doc.command.insert-text doc.command.merge-two-paragraph
    doc.command.copy-current-paragraph doc.command.cut-current-paragraph doc.command.delete-current-paragraph
    doc.command.replace-selection doc.command.replace-text-runs doc.command.update-text
    doc.command.select-all doc.command.set-zoom-ratio doc.command.switch-mode`,

  rowsAbove: `
    sheet.command.insert-row sheet.command.insert-row-before sheet.command.insert-row-by-range
    sheet.command.insert-multi-rows-above`,
  rowsBelow: `sheet.command.insert-row-after sheet.command.insert-multi-rows-after`,
  rowsOut: `sheet.command.remove-row sheet.command.remove-row-by-range sheet.command.remove-row-confirm`,
  rows: `
    sheet.command.append-row sheet.command.move-rows
    sheet.command.table-insert-row sheet.command.table-insert-row-at sheet.command.table-remove-row`,
  columns: `
    sheet.command.insert-col sheet.command.insert-col-before sheet.command.insert-col-after
    sheet.command.insert-col-by-range sheet.command.insert-multi-cols-before sheet.command.insert-multi-cols-right
    sheet.command.remove-col sheet.command.remove-col-by-range sheet.command.remove-col-confirm
    sheet.command.move-cols
    sheet.command.table-insert-col sheet.command.table-insert-column-at
    sheet.command.table-remove-col sheet.command.table-remove-column-at`,
  pushing: `
    sheet.command.insert-range-move-down sheet.command.insert-range-move-down-confirm
    sheet.command.insert-range-move-right sheet.command.insert-range-move-right-confirm
    sheet.command.delete-range-move-left sheet.command.delete-range-move-left-confirm
    sheet.command.delete-range-move-up sheet.command.delete-range-move-up-confirm`,
  moving: `sheet.command.move-range`,
  sheets: `
    sheet.command.insert-sheet sheet.command.remove-sheet sheet.command.remove-sheet-confirm sheet.command.copy-sheet
    sheet.command.set-worksheet-hidden sheet.command.set-worksheet-name sheet.command.set-worksheet-order`,
  merges: `
    sheet.command.add-worksheet-merge sheet.command.add-worksheet-merge-all
    sheet.command.add-worksheet-merge-horizontal sheet.command.add-worksheet-merge-vertical
    sheet.command.remove-worksheet-merge`,
  tables: `
    sheet.command.add-table sheet.command.delete-table sheet.command.set-table-config
    sheet.command.add-table-theme sheet.command.remove-table-theme
    sheet.command.register-worksheet-range-theme-style sheet.command.remove-worksheet-range-theme-style
    sheet.command.set-worksheet-range-theme-style sheet.command.unregister-worksheet-range-theme-style`,
  protection: `
    sheet.command.add-range-protection sheet.command.add-range-protection-from-context-menu
    sheet.command.add-range-protection-from-sheet-bar sheet.command.add-range-protection-from-toolbar
    sheet.command.add-worksheet-protection sheet.command.change-sheet-protection-from-sheet-bar
    sheet.command.delete-range-protection sheet.command.delete-range-protection-from-context-menu
    sheet.command.delete-worksheet-protection sheet.command.delete-worksheet-protection-from-sheet-bar
    sheet.command.set-protection sheet.command.set-range-protection-from-context-menu
    sheet.command.set-worksheet-permission-points sheet.command.set-worksheet-protection
    sheet.command.view-sheet-permission-from-context-menu sheet.command.view-sheet-permission-from-sheet-bar`,
  formats: `
    sheet.command.add-average-conditional-rule sheet.command.add-color-scale-conditional-rule
    sheet.command.add-conditional-rule sheet.command.add-data-bar-conditional-rule
    sheet.command.add-duplicate-values-conditional-rule sheet.command.add-number-conditional-rule
    sheet.command.add-rank-conditional-rule sheet.command.add-text-conditional-rule
    sheet.command.add-time-period-conditional-rule sheet.command.add-uniqueValues-conditional-rule
    sheet.command.clear-range-conditional-rule sheet.command.clear-worksheet-conditional-rule
    sheet.command.delete-conditional-rule sheet.command.move-conditional-rule sheet.command.set-conditional-rule`,
  validation: `
    data-validation.command.addRule data-validation.command.addRuleAndOpen data-validation.command.removeAll
    data-validation.command.removeRule data-validation.command.updateDataValidationOptions
    data-validation.command.updateDataValidationSetting
    sheet.command.addDataValidation sheet.command.remove-all-data-validation
    sheet.command.remove-data-validation-rule sheet.command.updateDataValidationRuleRange
    sheets.command.clear-range-data-validation sheets.command.update-data-validation-options
    sheets.command.update-data-validation-setting`,
  notes: `sheet.command.delete-note sheet.command.update-note`,
  names: `sheet.command.insert-defined-name sheet.command.remove-defined-name sheet.command.set-defined-name`,
  letters: `
    sheet.command.set-border sheet.command.set-border-basic sheet.command.set-border-color
    sheet.command.set-border-position sheet.command.set-border-style
    sheet.command.set-font-family sheet.command.set-font-size sheet.command.set-range-font-family
    sheet.command.set-range-fontsize sheet.command.set-range-font-increase sheet.command.set-range-font-decrease
    sheet.command.set-underline sheet.command.set-range-underline sheet.command.set-stroke sheet.command.set-range-stroke
    sheet.command.set-range-subscript sheet.command.set-range-superscript
    sheet.command.set-text-rotation sheet.command.set-vertical-text-align
    sheet.command.set-tab-color sheet.command.set-worksheet-default-style`,
  partOfCell: `
    doc-paragraph-setting.command docs.command.page-setup
    doc.command.align-action doc.command.align-center doc.command.align-justify doc.command.align-left
    doc.command.align-right doc.command.bullet-list doc.command.change-list-nesting-level doc.command.change-list-type
    doc.command.check-list doc.command.close-header-footer doc.command.core-header-footer doc.command.create-table
    doc.command.delete-custom-block doc.command.h1-heading doc.command.h2-heading doc.command.h3-heading
    doc.command.h4-heading doc.command.h5-heading doc.command.horizontal-line doc.command.insert-bullet-list-bellow
    doc.command.insert-check-list-bellow doc.command.insert-custom-range doc.command.insert-horizontal-line-bellow
    doc.command.insert-order-list-bellow doc.command.list-operation doc.command.move-block
    doc.command.normal-text-heading doc.command.open-header-footer-panel doc.command.order-list
    doc.command.quick-heading doc.command.quick-list doc.command.remove-horizontal-line
    doc.command.reset-inline-format-text-background-color doc.command.set-inline-format
    doc.command.set-inline-format-bold doc.command.set-inline-format-font-family
    doc.command.set-inline-format-fontsize doc.command.set-inline-format-italic
    doc.command.set-inline-format-strikethrough doc.command.set-inline-format-subscript
    doc.command.set-inline-format-superscript doc.command.set-inline-format-text-background-color
    doc.command.set-inline-format-text-color doc.command.set-inline-format-underline
    doc.command.set-paragraph-named-style doc.command.subtitle-heading doc.command.title doc.command.toggle-check-list
    doc.command.table-insert-column doc.command.table-insert-column-left doc.command.table-insert-column-right
    doc.command.table-insert-row doc.command.table-insert-row-above doc.command.table-insert-row-bellow
    doc.operation.create-table doc.table.delete-columns doc.table.delete-rows doc.table.delete-table
    doc.table.tab-in-table`,
  heights: `sheet.command.delta-row-height sheet.command.set-row-height sheet.command.set-row-is-auto-height`,
  hiding: `
    sheet.command.hide-col-confirm sheet.command.set-col-hidden sheet.command.set-col-visible-on-cols
    sheet.command.set-selected-cols-visible`,
  holding: `
    sheet.command.set-frozen sheet.command.cancel-frozen sheet.command.set-selection-frozen
    sheet.command.set-row-frozen sheet.command.set-col-frozen sheet.command.set-first-row-frozen
    sheet.command.set-first-column-frozen sheet.command.toggle-gridlines sheet.command.set-gridlines-color`,
  headers: `
    sheet.command.sort-range-asc-ext sheet.command.sort-range-asc-ext-ctx sheet.command.sort-range-desc-ext
    sheet.command.sort-range-desc-ext-ctx sheet.command.sort-range-custom sheet.command.sort-range-custom-ctx`,
  unknown: `
    sheet.command.set-row-data sheet.command.set-col-data sheet.command.set-range-custom-metadata
    sheet.command.set-workbook-name`,
});

/**
 * What moves the view, or opens something to choose in. By the grid's own rules an operation changes nothing that is
 * saved, and every editor that opens makes up some with a name of its own: those that nobody named are let through.
 */
export const operations = inGroups<Does>({
  shows: `
    data-validation.operation.close-validation-panel sheet.operation.hide-data-validation-dropdown
    sheet.operation.show-data-validation-dropdown
    doc.operation.move-cursor doc.operation.move-selection doc.operation.set-selections doc.operation.set-zoom-ratio
    formula-ui.operation.change-ref-to-absolute formula-ui.operation.help-function
    formula-ui.operation.insert-function formula-ui.operation.more-functions formula-ui.operation.search-function
    sheet.operation.apply-filter sheet.operation.open-filter-panel sheet.operation.close-filter-panel
    sheet.operation.open-table-filter-panel
    sheet.operation.mark-dirty-row-auto-height sheet.operation.cancel-mark-dirty-row-auto-height
    sheet.operation.open.numfmt.panel sheet.operation.close.numfmt.panel
    sheet.operation.scroll-to-cell sheet.operation.scroll-to-range sheet.operation.set-scroll
    sheet.operation.set-activate-cell-edit sheet.operation.set-cell-edit-visible
    sheet.operation.set-cell-edit-visible-arrow sheet.operation.set-cell-edit-visible-f2
    sheet.operation.set-format-painter sheet.operation.set-selections sheet.operation.set-worksheet-active
    sheet.operation.set-zoom-ratio ui-sheet.command.show-menu-list ui.operation.focus-selection
    ui.operation.go-to-next-match ui.operation.go-to-previous-match
    ui.operation.open-find-dialog ui.operation.open-replace-dialog`,
  sheets: `sheet.operation.rename-sheet`,
  tables: `sheet.operation.open-table-selector`,
  protection: `sheet-permission.operation.openDialog sheet-permission.operation.openPanel`,
  formats: `sheet.operation.open.conditional.formatting.panel`,
  validation: `
    data-validation.operation.open-validation-panel data-validation.operation.toggle-validation-panel`,
  notes: `sheet.operation.add-note-popup`,
  partOfCell: `
    docs.operation.open-page-setting sidebar.operation.doc-header-footer-panel
    sidebar.operation.doc-paragraph-setting-panel`,
});

/**
 * What is carried out in the end, by what it changes. `values`: contents of cells. `places`: where cells stand.
 * `meanings`: what names and tables stand for, and how far a sheet reaches. `looks`: what is saved besides. `results`:
 * what the engine works out. `view`: nothing of anybody's. Else: nothing that a file of ours could hold, by why.
 */
export type Change = "values" | "places" | "meanings" | "looks" | "results" | "view" | keyof typeof REFUSALS;

export const mutations = inGroups<Change>({
  values: `sheet.mutation.set-range-values`,
  places: `
    sheet.mutation.insert-row sheet.mutation.remove-rows sheet.mutation.move-rows
    sheet.mutation.insert-col sheet.mutation.remove-col sheet.mutation.move-columns
    sheet.mutation.move-range sheet.mutation.reorder-range
    sheet.mutation.insert-sheet sheet.mutation.remove-sheet sheet.mutation.copy-worksheet-end
    sheet.mutation.set-worksheet-name sheet.mutation.set-worksheet-order`,
  meanings: `
    formula.mutation.set-defined-name formula.mutation.remove-defined-name
    sheet.mutation.set-sheet-table sheet.mutation.set-worksheet-row-count sheet.mutation.set-worksheet-column-count`,
  looks: `
    gastrostomy.mutation.set-column-widths gastrostomy.mutation.set-style-ids
    sheet.mutation.set-worksheet-col-width
    sheet.mutation.set-row-hidden sheet.mutation.set-row-visible sheet.mutation.set-worksheet-hidden
    sheet.mutation.set.numfmt sheet.mutation.remove.numfmt
    sheet.mutation.set-filter-range sheet.mutation.set-filter-criteria sheet.mutation.remove-filter
    sheet.mutation.re-calc-filter sheet.mutation.set-table-filter`,
  results: `
    formula.mutation.set-array-formula-data formula.mutation.set-formula-data
    formula.mutation.set-formula-calculation-result`,
  view: `
    doc.mutation.rename-doc doc.mutation.rich-text-editing
    formula.mutation.register-function
    formula.mutation.set-super-table formula.mutation.remove-super-table formula.mutation.set-super-table-option
    formula.mutation.set-feature-calculation formula.mutation.remove-feature-calculation
    formula.mutation.set-other-formula formula.mutation.remove-other-formula
    formula.mutation.set-cell-formula-dependency-calculation
    formula.mutation.set-cell-formula-dependency-calculation-result
    formula.mutation.set-formula-calculation-notification
    formula.mutation.set-formula-calculation-start formula.mutation.set-formula-calculation-stop
    formula.mutation.set-formula-dependency-calculation formula.mutation.set-formula-dependency-calculation-result
    formula.mutation.set-formula-string-batch-calculation formula.mutation.set-formula-string-batch-calculation-result
    formula.mutation.set-query-formula-dependency formula.mutation.set-query-formula-dependency-result
    formula.mutation.set-query-formula-dependency-all formula.mutation.set-query-formula-dependency-all-result
    formula.mutation.set-trigger-formula-calculation-start
    sheet.mutation.data-validation-formula-mark-dirty sheet.mutation.mark-dirty-filter-change
    sheet.mutation.empty sheet.mutation.set-worksheet-row-auto-height sheet.mutation.set-frozen
    sheet.mutation.toggle-note-popup sheet.mutation.update-note-position
    sheet.mutation.set-worksheet-permission-points
    sheet.mutation.add-range-theme sheet.mutation.set-range-theme sheet.mutation.remove-range-theme
    sheet.mutation.register-worksheet-range-theme-style sheet.mutation.unregister-worksheet-range-theme-style
    sheet.mutation.set-worksheet-range-theme-style sheet.mutation.remove-worksheet-range-theme-style`,

  merges: `sheet.mutation.add-worksheet-merge sheet.mutation.remove-worksheet-merge`,
  tables: `sheet.mutation.add-table sheet.mutation.delete-table`,
  protection: `
    sheet.mutation.add-range-protection sheet.mutation.set-range-protection sheet.mutation.delete-range-protection
    sheet.mutation.add-worksheet-protection sheet.mutation.set-worksheet-protection
    sheet.mutation.delete-worksheet-protection`,
  formats: `
    sheet.mutation.add-conditional-rule sheet.mutation.set-conditional-rule sheet.mutation.move-conditional-rule
    sheet.mutation.delete-conditional-rule`,
  validation: `
    data-validation.mutation.addRule data-validation.mutation.updateRule data-validation.mutation.removeRule`,
  notes: `sheet.mutation.update-note sheet.mutation.remove-note`,
  letters: `sheet.mutation.set-tab-color sheet.mutation.set-worksheet-default-style`,
  heights: `sheet.mutation.set-worksheet-row-height sheet.mutation.set-worksheet-row-is-auto-height`,
  hiding: `sheet.mutation.set-col-hidden sheet.mutation.set-col-visible`,
  holding: `sheet.mutation.toggle-gridlines sheet.mutation.set-gridlines-color`,
  unknown: `
    formula.mutation.set-image-formula-data
    sheet.mutation.set-row-data sheet.mutation.set-col-data sheet.mutation.set-workbook-name`,
});

const isRefusal = (does: string): does is keyof typeof REFUSALS => does in REFUSALS;

/** A sentence why it is not done; undefined where it may be. */
export function refusalOf(does: Does | Change, isFile: boolean): string | undefined {
  if (!isRefusal(does)) return undefined;
  const { where, sentence }: Refused = REFUSALS[does];
  return where === "anywhere" || isFile ? sentence : undefined;
}

/** Of a look of whole cells that is not saved, whichever command brings it. */
export const letterSentence = REFUSALS.letters.sentence;

export const doesOf = (id: string, isOperation = false): Does =>
  (isOperation ? operations.get(id) : commands.get(id)) ?? (isOperation ? "shows" : "unknown");

/** What came along with something that may be done, as pasting brings rules and merged cells along. */
export function isLeftOut(mutation: string, isFile: boolean): boolean {
  const change = mutations.get(mutation);
  return change !== undefined && refusalOf(change, isFile) !== undefined;
}

/** One that nobody named is taken for a change of everything. */
export const changeOf = (mutation: string): Change => mutations.get(mutation) ?? "places";

/** Something that is saved is otherwise than before; results that the engine works out are no change of anybody's. */
export const isChange = (mutation: string): boolean => !["results", "view"].includes(changeOf(mutation));

/** What a reader of cells would find may be otherwise than before. */
export const isSeen = (mutation: string): boolean => changeOf(mutation) !== "view";
