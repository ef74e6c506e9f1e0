import { useState } from "react";
import type { SettingName } from "../../../src/settings/index";
import type { NumberUsed } from "../../actions/add-columns/interface";
import { agreement } from "../../actions/clinic-settings/agreement";
import { addColumns as words } from "../../texts/add-columns";
import { ownList } from "../../texts/own-list";
import { pane as paneTexts } from "../../texts/pane";
import type { Workbook } from "../../workbook/port";
import { Finished } from "../parts/Finished";
import { TryAgain } from "../parts/TryAgain";
import { Working } from "../parts/Working";
import { AddFoot } from "./AddFoot";
import { LengthsStep } from "./LengthsStep";
import { ListStep } from "./ListStep";
import { NumbersStep } from "./NumbersStep";
import { PreviewStep } from "./PreviewStep";
import { SaidStep } from "./SaidStep";
import { TickStep } from "./TickStep";
import { titleOf, useAddColumns, type AddColumnsState } from "./useAddColumns";
import type { JobProps } from "../pane/define-job";

type Props = Pick<JobProps, "workbook" | "overview" | "today" | "locale" | "isShown">;

/** One calm flow on one page: a step opens as soon as it can be answered. */
export function AddColumns({ workbook, overview, today, locale, isShown }: Props) {
  const state = useAddColumns({ workbook, overview, today, isShown });
  if (!workbook) return <p>{paneTexts.waiting}</p>;
  const { applying, fault } = state;
  const { phase } = applying;
  const agreed = agreement(overview, today);
  if (phase.is === "working") return <Working title={words.working.title} {...phase} stop={applying.stop} />;
  if (phase.is === "finished") {
    const { outcome } = phase.words;
    return (
      <Finished
        title={titleOf(outcome, phase.receipt)}
        said={phase.words}
        receipt={phase.receipt}
        workbook={workbook}
        reveal={state.reveal}
        again={outcome === "done" ? words.result.more : paneTexts.backToChoices}
        onAgain={state.backToChoices}
      >
        {outcome === "done" && <p>{agreed.sentence}</p>}
      </Finished>
    );
  }
  if (fault !== null) return <TryAgain sentence={fault} press={ownList.lookAgain} onPress={() => void state.look()} />;
  if (!state.survey) return <p>{ownList.looking}</p>;
  return (
    <>
      <ListStep number={1} state={state} />
      <Choosing key={state.round} state={state} workbook={workbook} locale={locale} agreed={agreed} />
    </>
  );
}

interface ChoosingProps {
  readonly state: AddColumnsState;
  readonly workbook: Workbook;
  readonly locale: string;
  readonly agreed: ReturnType<typeof agreement>;
}

function Choosing({ state, workbook, locale, agreed }: ChoosingProps) {
  const { survey, choices, plan, choose } = state;
  const [faulty, setFaulty] = useState<ReadonlySet<SettingName>>(new Set());
  /* Kept while a plan is refused: the numbers being typed must not vanish under somebody's hands. */
  const [lastNumbers, setLastNumbers] = useState<readonly NumberUsed[]>([]);
  const numbers = plan?.outcome === "planned" ? plan.numbers : lastNumbers;
  if (plan?.outcome === "planned" && plan.numbers !== lastNumbers) setLastNumbers(plan.numbers);
  if (!survey || !choices) return null;
  const { list } = survey;
  const canGoOn = list !== null && list.obstacles.length === 0;
  const isTicked = canGoOn && choices.recipes.length > 0;
  const ticked = list?.recipes.filter(({ key }) => choices.recipes.includes(key)) ?? [];
  const used = new Set(numbers.map(({ setting }) => setting.name));
  const hasFaultyNumbers = [...faulty].some((name) => used.has(name));
  let step = 1;
  return (
    <>
      {canGoOn && <TickStep number={++step} list={list} choices={choices} choose={choose} />}
      {isTicked && (
        <SaidStep number={++step} list={list} proposal={survey.proposal} choices={choices} choose={choose} />
      )}
      {isTicked && ticked.some(({ needsLengths }) => needsLengths) && (
        <LengthsStep number={++step} lengths={choices.lengths} onLengths={(lengths) => choose({ lengths })} />
      )}
      {isTicked && numbers.length > 0 && (
        <NumbersStep
          number={++step}
          numbers={numbers}
          agreed={agreed}
          hasFaulty={hasFaultyNumbers}
          choices={choices}
          choose={choose}
          onFaulty={(name, isFaulty) =>
            setFaulty((before) => {
              const after = new Set(before);
              if (isFaulty) after.add(name);
              else after.delete(name);
              return after;
            })
          }
        />
      )}
      {isTicked && plan && <PreviewStep number={++step} state={state} survey={survey} plan={plan} locale={locale} />}
      {canGoOn && (
        <AddFoot state={state} plan={isTicked ? plan : null} hasFaultyNumbers={hasFaultyNumbers} workbook={workbook} />
      )}
    </>
  );
}
