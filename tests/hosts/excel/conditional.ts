/** Conditional formats of the kind "cell value", as far as the add-in uses them. */
import { overlaps } from "../../../taskpane/workbook/area";
import type { Sheet } from "../../../taskpane/workbook/fake/book";
import type { Area } from "../../../taskpane/workbook/port";
import { ApiError, read, type ExcelObject, type Json } from "./objects";

export interface ConditionalFormat {
  readonly id: string;
  readonly sheet: Sheet;
  readonly area: Area;
  rule: Json;
  readonly look: Map<string, Json>;
}

export class ConditionalFormats {
  readonly all: ConditionalFormat[] = [];
  private next = 1;

  on(sheet: Sheet, area: Area, mayWrite: () => void): ExcelObject {
    const here = () => this.all.filter((one) => one.sheet === sheet && overlaps(one.area, area));
    return {
      type: "ConditionalFormatCollection",
      items: () => here().map((one) => this.object(one, mayWrite)),
      item: (id) => {
        const found = this.all.find((one) => one.id === id);
        return found && this.object(found, mayWrite);
      },
      methods: {
        Add: ([kind]) => {
          mayWrite();
          if (kind !== "CellValue") throw new ApiError("InvalidArgument", `a conditional format ${String(kind)}`);
          const made = { id: `{format-${this.next++}}`, sheet, area, rule: null, look: new Map<string, Json>() };
          this.all.push(made);
          return this.object(made, mayWrite);
        },
      },
    };
  }

  private object(one: ConditionalFormat, mayWrite: () => void): ExcelObject {
    const trait = (name: string) => ({
      get: () => one.look.get(name) ?? null,
      set: (value: Json) => void one.look.set(name, value),
    });
    return {
      type: "ConditionalFormat",
      id: one.id,
      properties: { id: read(() => one.id) },
      parts: {
        cellValue: () => ({
          type: "CellValueConditionalFormat",
          properties: { rule: { get: () => one.rule, set: (rule) => void (one.rule = rule) } },
          parts: {
            format: () => ({
              type: "ConditionalRangeFormat",
              parts: {
                font: () => ({
                  type: "ConditionalRangeFont",
                  properties: { color: trait("ink"), bold: trait("bold"), italic: trait("italic") },
                }),
                fill: () => ({ type: "ConditionalRangeFill", properties: { color: trait("ground") } }),
              },
            }),
          },
        }),
      },
      methods: {
        Delete: () => {
          mayWrite();
          this.all.splice(this.all.indexOf(one), 1);
        },
      },
    };
  }
}
