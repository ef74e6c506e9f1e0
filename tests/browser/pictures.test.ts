/**
 * Pictures of the invented caseload in the real page: what is drawn is what the table says, measured on the drawing and
 * not by the scale that drew it; and a copy is a picture.
 */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { pictures as words } from "../../taskpane/texts/pictures";
import { pictures } from "../../taskpane/ui/pictures/job";
import { findings, inPane, openDesk, type Desk } from "./caseload/desk";
import { launchOwnBrowser } from "./launch";
import { goTo } from "./places";
import { serveDist, type Served } from "./serve";

let browser: Browser;
let served: Served;
let desk: Desk;
let page: Page;

beforeAll(async () => {
  /* The clipboard is one for the whole browser. */
  [browser, served] = await Promise.all([launchOwnBrowser(), serveDist()]);
  desk = await openDesk(browser, served.url);
  ({ page } = desk);
  await goTo(page, pictures);
  await inPane(page).locator("svg.picture").first().waitFor();
});
afterAll(async () => {
  await browser?.close();
  await served?.close();
});
beforeEach(() => expect(desk.faults).toEqual([]));

type Name = keyof typeof words.names;

/** Presses a question and gives its picture. */
async function ask(name: Name): Promise<void> {
  await inPane(page).getByRole("button", { name: words.names[name], exact: true }).click();
}

const figure = (title: string) => inPane(page).locator(".figure").filter({ hasText: title });

async function tableOf(title: string): Promise<readonly (readonly string[])[]> {
  return figure(title)
    .locator("tbody tr")
    .evaluateAll((rows) => rows.map((row) => [...row.children].map((cell) => cell.textContent ?? "")));
}
/** Numbers of attributes of marks, in the drawing's own units. */
async function marks(title: string, what: string, ...attributes: readonly string[]) {
  return figure(title)
    .locator(`svg ${what}`)
    .evaluateAll(
      (all, names) => all.map((one) => names.map((name) => Number(one.getAttribute(name)))),
      [...attributes],
    );
}

test("every question is one press: its sentence first, its figures as a table, nothing for axe to find", async () => {
  for (const name of Object.keys(words.names) as Name[]) {
    await ask(name);
    const one = inPane(page).locator(".figure");
    await one.locator("h3").filter({ hasText: words[name].title }).waitFor();
    expect(await one.count()).toBe(1);
    expect((await one.locator("p").first().innerText()).length).toBeGreaterThan(20);
    if (name === "person") {
      await one.getByLabel(words.person.id, { exact: true }).fill("d-041");
      await one.getByRole("button", { name: words.person.show, exact: true }).click();
      await one.locator("svg").waitFor();
    }
    expect(await one.locator("tbody tr").count()).toBeGreaterThan(0);
    expect(await one.locator("svg[role=img]").getAttribute("aria-label")).toBeTruthy();
    await one.locator("details").evaluate((all) => ((all as HTMLDetailsElement).open = true));
    expect(await findings(page), name).toEqual([]);
  }
});

describe("what is drawn is what the table says", () => {
  test("reasons: the length of each line is its count", async () => {
    await ask("reasons");
    const table = await tableOf(words.reasons.title);
    const lines = await marks(words.reasons.title, "line", "x1", "x2");
    const each = (lines[0]![1]! - lines[0]![0]!) / Number(table[0]![1]);
    lines.forEach(([from, to], i) => expect((to! - from!) / each).toBeCloseTo(Number(table[i]![1]), 6));
    expect(lines).toHaveLength(table.length);
  });

  test("due by month: the height of each bar is its count, those without a day too", async () => {
    await ask("due");
    const table = await tableOf(words.due.title);
    const bars = (await marks(words.due.title, "g rect, rect[fill]", "height", "width", "x", "y")).filter(
      ([, width]) => width! > 20 && width! < 40,
    );
    const counted = table.flatMap(([, due, unplanned]) => [due!, ...(unplanned ? [unplanned] : [])]).map(Number);
    const most = Math.max(...counted);
    const unit = Math.max(...bars.map(([height]) => height!)) / most;
    expect(bars.map(([height]) => Math.round((height! / unit) * 1e6) / 1e6).sort((a, b) => a - b)).toEqual(
      counted.sort((a, b) => a - b),
    );
  });

  test("lives: each step falls to the share that still works", async () => {
    await ask("life");
    const table = await tableOf(words.life.title);
    const d = await figure(words.life.title).locator("svg path[fill=none]").first().getAttribute("d");
    const points = d!
      .slice(1)
      .split("L")
      .map((point) => point.split(",").map(Number) as [number, number]);
    const levels = await marks(words.life.title, "g line[x1]", "y1");
    const [empty, full] = [Math.max(...levels.map(([y]) => y!)), Math.min(...levels.map(([y]) => y!))];
    const shares = points.map(([, y]) => Math.round((100 * (empty - y)) / (empty - full)));
    const drawn = [...new Set(shares)].slice(1);
    const told = [...new Set(table.map((row) => Number(row[2]!.replace("%", ""))))].filter((share) => share < 100);
    /* The drawing ends where few are watched, the table does not. */
    expect(told.slice(0, drawn.length)).toEqual(drawn);
    expect(drawn.length).toBeGreaterThan(10);
  });

  test("planned interval: the line's heights are the shares, the bars add up to the devices that are told of", async () => {
    await ask("intervals");
    const table = await tableOf(words.intervals.title);
    const d = (await figure(words.intervals.title).locator("svg path[fill=none]").getAttribute("d"))!;
    const heights = d
      .slice(1)
      .split("L")
      .map((point) => Number(point.split(",")[1]));
    const risen = heights.map((y) => heights[0]! - y).slice(1);
    const shares = table.map(([, share]) => Number(share!.replace("%", "")));
    expect(risen).toHaveLength(shares.length);
    /* Shares are written in whole percents. */
    const unit = risen.at(-1)! / shares.at(-1)!;
    risen.forEach((y, i) => expect(Math.abs(y / unit - shares[i]!)).toBeLessThan(1.1));
    const told = await figure(words.intervals.title).locator("p").allInnerTexts();
    const planned = Number(/^(\d+) device/.exec(told.find((line) => /came out/.test(line))!)![1]);
    const total = async (what: string) =>
      (await marks(words.intervals.title, `rect.${what}`, "height")).reduce((sum, [height]) => sum + height!, 0);
    const [plannedHeight, failedHeight] = [await total("planned"), await total("failed")];
    await ask("life");
    const failed = Number(
      /(\d+) of \d+ failed/.exec(await figure(words.life.title).locator("p").first().innerText())![1],
    );
    expect(plannedHeight / failedHeight).toBeCloseTo(planned / failed, 6);
  });

  test("one person: each bar begins and ends on its days", async () => {
    await ask("person");
    await inPane(page).getByLabel(words.person.id, { exact: true }).fill("D-041");
    await inPane(page).getByRole("button", { name: words.person.show, exact: true }).click();
    await figure(words.person.named("D-041")).locator("svg").waitFor();
    const table = await tableOf(words.person.named("D-041"));
    const bars = await marks(words.person.named("D-041"), "rect.device", "x", "width");
    expect(bars).toHaveLength(table.length);
    const dayOf = (text: string) => Date.parse(`${text} UTC`) / 86_400_000;
    const [first] = table;
    const unit = bars[0]![1]! / (dayOf(first![1]!) - dayOf(first![0]!));
    bars.forEach(([x, width], i) => {
      const [from, until, days] = table[i]!;
      expect((x! - bars[0]![0]!) / unit).toBeCloseTo(dayOf(from!) - dayOf(first![0]!), 6);
      expect(width! / unit).toBeCloseTo(until === "" ? Number(days) : dayOf(until!) - dayOf(from!), 6);
    });
  });

  test("checks: what the latest one missed stands beside each person as the figures have it", async () => {
    await ask("checks");
    const table = await tableOf(words.checks.title);
    const texts = await figure(words.checks.title).locator("svg text").allTextContents();
    const drawn = Array.from({ length: texts.length / 2 }, (_, i) => [texts[2 * i]!, texts[2 * i + 1]!]);
    expect(drawn.length).toBe(12);
    drawn.forEach(([id, latest], i) => {
      const [person, , , missing] = table[i]!;
      expect([id, latest!.replace(" mL", "")]).toEqual([person, missing]);
    });
  });
});

test("another kind of device gives other counts, and too few are said to be too few", async () => {
  await ask("life");
  const before = await figure(words.life.title).locator("p").first().innerText();
  await inPane(page).getByLabel(words.kind).selectOption("bumper");
  await expect.poll(() => figure(words.life.title).locator("p").first().innerText()).toContain("Too few to say");
  await inPane(page).getByLabel(words.kind).selectOption("balloon");
  await expect.poll(() => figure(words.life.title).locator("p").first().innerText()).toBe(before);
});

test("a copy is a picture of the drawing's own shape", async () => {
  await ask("reasons");
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  await figure(words.reasons.title).getByRole("button", { name: words.copy }).click();
  await figure(words.reasons.title).getByText(words.copied).waitFor();
  const size = await page.evaluate(async () => {
    const [item] = await navigator.clipboard.read();
    const picture = await createImageBitmap(await item!.getType("image/png"));
    return [picture.width, picture.height];
  });
  const box = await figure(words.reasons.title).locator("svg").getAttribute("viewBox");
  const [, , width, height] = box!.split(" ").map(Number);
  expect(size).toEqual([4 * width!, 4 * height!]);
});
