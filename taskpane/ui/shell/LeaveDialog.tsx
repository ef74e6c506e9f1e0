import { useLayoutEffect, useRef } from "react";
import { shell as shellTexts } from "../../texts/shell";

const words = shellTexts.leave;

interface Props {
  readonly name: string;
  readonly onSave: () => void;
  readonly onDiscard: () => void;
  readonly onStay: () => void;
}

/** Asks before unsaved changes are lost. The browser's own dialog keeps the keyboard inside and gives it back. */
export function LeaveDialog({ name, onSave, onDiscard, onStay }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => {
    const { current } = dialog;
    current?.showModal();
    /* Closed while it still stands in the page: one that is only taken away gives no focus back. */
    return () => current?.close();
  }, []);
  return (
    <dialog ref={dialog} aria-labelledby="leave-title" onClose={onStay}>
      <div className="stack">
        <h2 id="leave-title">{words.title}</h2>
        <p>{words.text(name)}</p>
        <div className="presses">
          <button type="button" className="button primary" onClick={onSave}>
            {words.saveFirst}
          </button>
          <button type="button" className="button" onClick={onDiscard}>
            {words.discard}
          </button>
          <button type="button" className="button" onClick={onStay}>
            {words.stay}
          </button>
        </div>
      </div>
    </dialog>
  );
}
