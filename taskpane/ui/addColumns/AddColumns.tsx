import { useState } from "react";
import type { SettingName } from "../../../src/settings/index";
import { addColumns } from "../../actions/add-columns";
import type { NumberUsed } from "../../actions/add-columns/interface";
import { addColumns as words } from "../../texts/add-columns";
import { pane as paneTexts } from "../../texts/pane";
import type { Overview, Workbook } from "../../workbook/port";
import { Notice } from "../parts/Notice";
import { Working } from "../parts/Working";
import { ColumnsStep, neededRoles } from "./ColumnsStep";
import { KindsStep } from "./KindsStep";
import { ListStep } from "./ListStep";
import { NumbersStep } from "./NumbersStep";
import { PreviewStep } from "./PreviewStep";
import { Result } from "./Result";
import { TickStep } from "./TickStep";
import { useAddColumns, type AddColumnsState } from "./useAddColumns";

interface Props {
  readonly workbook: Workbook | null;
  readonly overview: Overview | null;
  readonly today: number;
  readonly locale: string;
  readonly isShown: boolean;
}

/** One calm flow on one page: a step opens as soon as it can be answered. */
export function AddColumns({ workbook, overview, today, locale, isShown }: Props) {
  const state = useAddColumns(workbook, overview, today, isShown);
  if (!workbook) return <p>{paneTexts.waiting}</p>;
  const { phase } = state;
  switch (phase.is) {
    case "looking":
      return <p>{words.looking}</p>;
    case "failed":
      return (
        <Notice kind="problem">
          <p>{phase.sentence}</p>
          <div className="presses">
            <button type="button" className="button" onClick={() => void state.look()}>
              {words.lookAgain}
            </button>
          </div>
        </Notice>
      );
    case "choosing":
      return <Choosing key={state.round} state={state} workbook={workbook} locale={locale} />;
    case "working":
      return (
        <Working
          title={words.working.title}
          done={phase.done}
          of={phase.of}
          isStopping={phase.isStopping}
          stop={state.stop}
        />
      );
    case "finished":
      return <Result finished={phase} state={state} workbook={workbook} />;
  }
}

/** Why this host cannot do it at all; null where it can. */
function cannotOf(workbook: Workbook): string | null {
  const answers = addColumns.needs.map((kind) => workbook.can(kind));
  return answers.find((answer) => typeof answer === "string") ?? null;
}

function Choosing({
  state,
  workbook,
  locale,
}: {
  readonly state: AddColumnsState;
  readonly workbook: Workbook;
  readonly locale: string;
}) {
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
  const needsKinds = isTicked && neededRoles(list, choices).some(({ role }) => role === "kind");
  const kindsAnswerable = needsKinds && (choices.kinds.from === "everyone" || typeof choices.columns.kind === "number");
  const used = new Set(numbers.map(({ setting }) => setting.name));
  const hasFaultyNumbers = [...faulty].some((name) => used.has(name));
  let step = 0;
  return (
    <>
      <ListStep number={++step} state={state} />
      {canGoOn && <TickStep number={++step} list={list} choices={choices} choose={choose} />}
      {isTicked && <ColumnsStep number={++step} list={list} choices={choices} choose={choose} />}
      {isTicked && kindsAnswerable && <KindsStep number={++step} list={list} choices={choices} choose={choose} />}
      {isTicked && numbers.length > 0 && (
        <NumbersStep
          number={++step}
          numbers={numbers}
          choices={choices}
          choose={choose}
          faulty={faulty}
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
      {isTicked && plan && (
        <PreviewStep
          number={++step}
          state={state}
          survey={survey}
          plan={plan}
          hasFaultyNumbers={hasFaultyNumbers}
          cannot={cannotOf(workbook)}
          locale={locale}
        />
      )}
    </>
  );
}
