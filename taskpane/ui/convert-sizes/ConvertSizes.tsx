import { convertSizes as words } from "../../texts/convert-sizes";
import { ownList } from "../../texts/own-list";
import { pane as paneTexts } from "../../texts/pane";
import type { Workbook } from "../../workbook/port";
import { ListStep } from "../add-columns/ListStep";
import { Finished } from "../parts/Finished";
import { TryAgain } from "../parts/TryAgain";
import { Working } from "../parts/Working";
import { PreviewStep } from "./PreviewStep";
import { PutStep } from "./PutStep";
import { SourceStep } from "./SourceStep";
import { Unread } from "./Unread";
import { useConvert, type ConvertState } from "./useConvert";
import type { JobProps } from "../pane/define-job";

type Props = Pick<JobProps, "workbook" | "overview" | "today" | "isShown">;

/** A column of sizes typed by many people: which, where to, what will not be read, and then the conversion. */
export function ConvertSizes({ workbook, overview, today, isShown }: Props) {
  const state = useConvert({ workbook, overview, today, isShown });
  if (!workbook) return <p>{paneTexts.waiting}</p>;
  const { applying, carriedOut } = state;
  const { phase } = applying;
  if (phase.is === "working") return <Working title={words.working} {...phase} stop={applying.stop} />;
  if (phase.is === "finished" && carriedOut)
    return (
      <>
        <Finished
          title={words.result.title[phase.words.outcome]}
          said={phase.words}
          receipt={phase.receipt}
          workbook={workbook}
          reveal={state.reveal}
          again={words.result.again}
          onAgain={state.backToChoices}
        />
        <Unread reading={carriedOut.reading} sheet={carriedOut.source.sheet} reveal={state.reveal} />
      </>
    );
  const { survey, fault } = state;
  if (fault !== null) return <TryAgain sentence={fault} press={ownList.lookAgain} onPress={() => void state.look()} />;
  if (!survey) return <p>{ownList.looking}</p>;
  return (
    <>
      <p className="note">{words.lead}</p>
      <ListStep number={1} state={state} />
      <Choosing key={state.round} state={state} workbook={workbook} />
    </>
  );
}

function Choosing({ state, workbook }: { readonly state: ConvertState; readonly workbook: Workbook }) {
  const { survey, choices, plan } = state;
  if (!survey || !choices || (survey.list === null && survey.selected === null)) return null;
  return (
    <>
      <SourceStep number={2} survey={survey} choices={choices} choose={state.choose} />
      <PutStep number={3} survey={survey} choices={choices} choose={state.choose} />
      {plan && <PreviewStep number={4} state={state} plan={plan} workbook={workbook} />}
    </>
  );
}
