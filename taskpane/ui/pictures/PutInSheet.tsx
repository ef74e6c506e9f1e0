/** The press that puts a picture into the workbook as a sheet, and the way back. */
import { createContext, useContext } from "react";
import { putFigure, type PutFigure } from "../../actions/pictures/put-in-sheet";
import { pictures as words } from "../../texts/pictures";
import type { Receipt, Workbook } from "../../workbook/port";
import { TakeBack } from "../parts/TakeBack";
import { useApply } from "../parts/useApply";
import { useReveal } from "../parts/useReveal";

/** Where pictures are put; null on paper. */
export const PutInto = createContext<Workbook | null>(null);

export function PutInSheet({ figure }: { readonly figure: PutFigure }) {
  const workbook = useContext(PutInto);
  return workbook && workbook.can("addSheet") === true ? <Put workbook={workbook} figure={figure} /> : null;
}

interface Props {
  readonly workbook: Workbook;
  readonly figure: PutFigure;
}

function Put({ workbook, figure }: Props) {
  const applying = useApply(workbook);
  const reveal = useReveal(workbook);
  const { phase } = applying;

  async function put() {
    const change = putFigure(figure, await workbook.overview());
    const carried = await applying.apply(change, (receipt) => said(receipt, change));
    const place = carried?.receipt.done[0]?.place;
    if (place) reveal(place);
  }

  if (phase.is !== "finished") {
    return (
      <button type="button" className="button" disabled={phase.is === "working"} onClick={() => void put()}>
        {words.put}
      </button>
    );
  }
  return (
    <>
      {phase.words.sentences.map((sentence) => (
        <p className="note" key={sentence}>
          {sentence}
        </p>
      ))}
      {phase.words.canTakeBack && (
        <TakeBack workbook={workbook} receipt={phase.receipt} onDone={applying.backToChoices} />
      )}
      <button type="button" className="button" onClick={applying.backToChoices}>
        {words.putAgain}
      </button>
    </>
  );
}

function said(receipt: Receipt, { steps: [step] }: ReturnType<typeof putFigure>) {
  const isDone = receipt.outcome === "done" && step?.kind === "addSheet";
  return {
    outcome: receipt.outcome,
    sentences: [isDone ? words.putAs(step.sheet.name, (step.sheet.charts ?? []).length > 0) : receipt.sentence],
    where: receipt.done[0]?.place ?? null,
    canTakeBack: isDone,
  };
}
