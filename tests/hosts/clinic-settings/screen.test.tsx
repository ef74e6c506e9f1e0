/** What the section puts on screen for workbooks of every kind. */
import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { clinicSettings } from "../../../src/settings/index";
import { clinicSettings as words } from "../../../taskpane/texts/clinic-settings";
import { ClinicSettings } from "../../../taskpane/ui/clinic-settings/ClinicSettings";
import { fakeWorkbook, type FakeWorkbook } from "../../../taskpane/workbook/fake/workbook";
import { agreedPut, TODAY, workbookWith } from "./book";

async function screen(workbook: FakeWorkbook): Promise<string> {
  const overview = await workbook.overview();
  return renderToStaticMarkup(createElement(ClinicSettings, { workbook, overview, today: TODAY, locale: "en-GB" }))
    .replaceAll("&#x27;", "'")
    .replaceAll("&quot;", '"');
}

const plain = (markup: string) => markup.replace(/<[^>]+>/g, " ").replace(/\s+/g, " ");

describe("on screen", () => {
  test("a caseload that nobody has agreed says so before anything else", async () => {
    const text = plain(await screen(workbookWith())).trim();
    expect(text.startsWith("Nobody has agreed these settings yet.")).toBe(true);
  });

  test("an agreed one says who, when and until when", async () => {
    expect(plain(await screen(workbookWith(agreedPut)))).toContain(
      "Settings agreed by Nutrition team on 3 Apr 2026, review by 3 Apr 2027.",
    );
  });

  test("every setting with default, range, source and a press to its cell", async () => {
    const markup = await screen(workbookWith(agreedPut));
    for (const { label, source, range } of clinicSettings) {
      const text = plain(markup).toLowerCase();
      expect(text).toContain(label.toLowerCase());
      expect(text).toContain(source.toLowerCase());
      if (range) expect(text).toContain(range.words.toLowerCase());
      expect(markup).toContain(`aria-label="${words.line.showOf(label)}"`);
    }
  });

  test("an odd one is marked in words at the top and in its group", async () => {
    const text = plain(await screen(workbookWith({ ...agreedPut, Tract_Low: 1 })));
    expect(text.split("not usual: who agreed?")).toHaveLength(3);
    expect(text.indexOf("not usual: who agreed?")).toBeLessThan(text.indexOf(words.forms.agreement.title));
  });

  test("without settings: how to get them, what each begins with, and nothing to write or to go to", async () => {
    const markup = await screen(fakeWorkbook({ sheets: [{ name: "List", rows: [["ID"]] }] }));
    const text = plain(markup);
    expect(text).toContain(words.none.lead);
    expect(text).toContain("Set up a caseload");
    for (const { label } of clinicSettings) expect(text).toContain(label);
    expect(markup).not.toMatch(/<form|<input/);
    expect(markup).not.toContain(words.line.show);
  });

  test("never a word that promises", async () => {
    for (const put of [{}, agreedPut]) {
      expect(plain(await screen(workbookWith(put)))).not.toMatch(/\b(ok|okay|safe|fine)\b/i);
    }
  });
});
