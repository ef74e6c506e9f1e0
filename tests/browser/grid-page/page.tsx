/** The grid alone, with its engine within reach. For tests; not part of what is shipped. */
import { CommandType, ICommandService, type ICommand } from "@univerjs/core";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/sheets";
import { startGrid } from "../../../taskpane/workbook/embedded/grid";

const said: string[] = [];

const { grid, engine } = startGrid(document.getElementById("root")!, {
  today: 46_132,
  dayFirst: true,
  say: (sentence) => said.push(sentence),
  hush: () => undefined,
});

const held = {
  said,
  grid,
  engine,
  isReady: false,
  registered(type: keyof typeof CommandType): string[] {
    const { _commandRegistry } = engine.injector.get(ICommandService) as unknown as {
      readonly _commandRegistry: { readonly _commands: ReadonlyMap<string, ICommand> };
    };
    return [..._commandRegistry._commands.values()].filter((one) => CommandType[one.type] === type).map(({ id }) => id);
  },
  /** The scripts that say how a cell looks. */
  handlersOfCells(): string[] {
    const { _interceptorsByName: handlers } = engine.injector.get(SheetInterceptorService) as unknown as {
      readonly _interceptorsByName: ReadonlyMap<unknown, readonly { readonly handler: unknown }[]>;
    };
    return (handlers.get(INTERCEPTOR_POINT.CELL_CONTENT) ?? []).map(({ handler }) => String(handler));
  },
  register(id: string): void {
    const command: ICommand = { id, type: CommandType.COMMAND, handler: () => true };
    engine.injector.get(ICommandService).registerCommand(command);
  },
  /** "refused" where the guard cancelled it: the grid swallows that and gives false, so that what was said tells. */
  async run(id: string, params: object): Promise<"done" | "refused" | "failed"> {
    const before = said.length;
    const book = engine.api.getActiveWorkbook()!;
    const here = { unitId: book.getId(), subUnitId: book.getActiveSheet().getSheetId() };
    const isDone = await engine.injector.get(ICommandService).executeCommand(id, { ...here, ...params });
    if (said.length > before) return "refused";
    return isDone ? "done" : "failed";
  },
};
export type GridPage = typeof held;

Object.assign(window, held);
void grid.openEmpty().then(() => Object.assign(window, { isReady: true }));
