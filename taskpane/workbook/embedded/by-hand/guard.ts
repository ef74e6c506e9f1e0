/**
 * What the grid could do but a saved file could not hold is not begun: a sentence says so. Saving changes a stranger's
 * file cell by cell; rows, columns and sheets that move would leave its charts, rules and formulas pointing astray.
 * commands.ts says of each command what it does.
 */
import { CanceledError, CommandType, ICommandService, WrapStrategy, type IRange } from "@univerjs/core";
import { SetStyleCommand } from "@univerjs/sheets";
import { doesOf, isLeftOut, letterSentence, refusalOf, type Does } from "./commands";
import type { Engine } from "../engine";
import { isUntold } from "../save/looks";

export interface Ward {
  readonly isFile: () => boolean;
  readonly say: (sentence: string) => void;
  /** The name of the sheet, where it is protected in the file against that. */
  readonly isProtected: (sheetId: string | undefined, from: "changes" | "filters") => string | undefined;
  /** Why cells of a range may not change their rows; undefined where they may. */
  readonly isTied: (sheetId: string | undefined, range: IRange) => string | undefined;
  /** The pane's own changes pass. */
  readonly isOurs: () => boolean;
}

interface Params {
  readonly subUnitId?: string;
  readonly range?: IRange;
  readonly style?: { readonly type?: string; readonly value?: unknown };
}

export function guard({ injector }: Engine, ward: Ward): void {
  const commands = injector.get(ICommandService);

  commands.beforeCommandExecuted(({ id, type, params }) => {
    if (type === CommandType.MUTATION || ward.isOurs()) return;
    const does = doesOf(id, type === CommandType.OPERATION);
    const sentence = refusalOf(does, ward.isFile()) ?? notNow(id, does, (params ?? {}) as Params);
    if (sentence === undefined) return;
    ward.say(sentence);
    throw new CanceledError();
  });

  function notNow(id: string, does: Does, { subUnitId, range, style }: Params): string | undefined {
    if (does === "shows") return undefined;
    if (id === SetStyleCommand.id && isUnsaved(style)) return letterSentence;
    const tie = does === "sorts" && range ? ward.isTied(subUnitId, range) : undefined;
    if (tie !== undefined) return tie;
    const name = ward.isProtected(subUnitId, does === "filters" ? "filters" : "changes");
    return name === undefined
      ? undefined
      : `The sheet "${name}" is protected in this file. Take the protection off in Excel, then open it here again.`;
  }

  leaveOut("syncExecuteCommand", true);
  leaveOut("executeCommand", Promise.resolve(true));

  /** Pasting, filling and clearing bring along what could not be saved: that part of them is not done. */
  function leaveOut<T extends "syncExecuteCommand" | "executeCommand">(way: T, done: unknown): void {
    const execute = commands[way].bind(commands) as (...given: unknown[]) => unknown;
    commands[way] = ((id: string, ...given: unknown[]) =>
      isLeftOut(id, ward.isFile()) && !ward.isOurs() ? done : execute(id, ...given)) as (typeof commands)[T];
  }
}

/** A look that saving does not take along (save/looks.ts). */
const isUnsaved = (style: Params["style"]): boolean =>
  style?.type !== undefined && (isUntold(style.type) || (style.type === "tb" && style.value === WrapStrategy.CLIP));
