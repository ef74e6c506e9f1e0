/** The entry that a person is still typing: it stands in the grid's editor, and in no cell yet. */
import { ICommandService } from "@univerjs/core";
import { DeviceInputEventType, IRenderManagerService } from "@univerjs/preset-sheets-core";
import { EditingRenderController, IEditorBridgeService, SetCellEditVisibleOperation } from "@univerjs/sheets-ui";
import type { Engine } from "../engine";
import type { OpenEntry } from "./entry";

/** Private in the grid (0.25.1): the workbook whose entry it has not finished with, because a question about it is open. */
interface Editing {
  readonly _editingUnit: string;
}

const nextPicture = (): Promise<unknown> => new Promise((resolve) => requestAnimationFrame(resolve));

/** Once the grid has painted: its editor comes with its page. */
export function openEntry({ injector }: Engine, unitId: () => string): OpenEntry {
  const editor = injector.get(IEditorBridgeService);
  const isOpen = () => editor.isVisible().visible;
  const isFinished = () => {
    const render = injector.get(IRenderManagerService).getRenderById(unitId());
    return !render || (render.with(EditingRenderController) as unknown as Editing)._editingUnit === "";
  };
  return {
    isOpen,
    async end() {
      if (!isOpen()) return;
      const params = { visible: false, eventType: DeviceInputEventType.Keyboard, unitId: unitId() };
      injector.get(ICommandService).syncExecuteCommand(SetCellEditVisibleOperation.id, params);
      while (!isFinished()) await nextPicture();
    },
    onChanged: (listen) => void editor.visible$.subscribe(listen),
  };
}
