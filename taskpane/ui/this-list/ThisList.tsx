import { useId } from "react";
import { roleNamed, roles, type Role } from "../../../src/columns/role";
import { settingNamed, type SettingName } from "../../../src/settings/index";
import { cannotDo } from "../../actions/action";
import { kindWords } from "../../actions/add-columns/kind-words";
import type { ColumnSurvey, SurveyedList } from "../../actions/list/interface";
import { kindColumn } from "../../actions/this-list";
import { ownList } from "../../texts/own-list";
import { pane as paneTexts } from "../../texts/pane";
import { thisList as words } from "../../texts/this-list";
import type { Workbook } from "../../workbook/port";
import { ListStep } from "../add-columns/ListStep";
import { WordField } from "../add-columns/WordFields";
import { Cannot } from "../parts/Cannot";
import { Finished } from "../parts/Finished";
import { ProblemNotice } from "../parts/ProblemNotice";
import { Sentences } from "../parts/Sentences";
import { Step } from "../parts/Step";
import { TryAgain } from "../parts/TryAgain";
import { Working } from "../parts/Working";
import { without } from "../parts/without";
import type { JobProps } from "../pane/define-job";
import { BringStep } from "./BringStep";
import { useThisList, type ThisListState } from "./useThisList";

type Props = Pick<JobProps, "workbook" | "overview" | "today" | "isShown" | "openNew">;

/** What the columns and words of a list are: guessed, said, and kept in the workbook by one press. */
export function ThisList({ workbook, overview, today, isShown, openNew }: Props) {
  const state = useThisList(workbook, overview, today, isShown);
  if (!workbook) return <p>{paneTexts.waiting}</p>;
  const { applying, survey, fault } = state;
  const { phase } = applying;
  if (phase.is === "working") return <Working title={words.working} {...phase} stop={applying.stop} />;
  if (phase.is === "finished")
    return (
      <Finished
        title={words.title[phase.words.outcome]}
        said={phase.words}
        receipt={phase.receipt}
        workbook={workbook}
        reveal={state.reveal}
        again={words.again}
        onAgain={state.backToChoices}
      />
    );
  if (fault !== null) return <TryAgain sentence={fault} press={ownList.lookAgain} onPress={() => void state.look()} />;
  if (!survey) return <p>{ownList.looking}</p>;
  const { list } = survey;
  return (
    <>
      <ListStep number={1} state={state} />
      {list && <ColumnsStep list={list} state={state} />}
      {list && <WordsStep list={list} state={state} />}
      {list && <NumbersKept state={state} />}
      {list && <BringStep list={list} is1904={overview?.dateSystem === 1904} today={today} openNew={openNew} />}
      {list && <Foot state={state} workbook={workbook} />}
    </>
  );
}

interface Part {
  readonly list: SurveyedList;
  readonly state: ThisListState;
}

function ColumnsStep({ list, state }: Part) {
  const { meanings } = state.choices!;
  const choose = (column: number, role: Role | null) => {
    const others = without(meanings, String(column)) as Readonly<Record<number, Role>>;
    state.choose({ meanings: role === null ? others : { ...others, [column]: role } });
  };
  return (
    <Step number={2} title={words.columns}>
      <p className="note">{words.columnsLead}</p>
      <ul className="rows">
        {list.columns
          .filter(({ header, sharesHeader }) => header.trim() !== "" && !sharesHeader)
          .map((column) => (
            <ColumnField
              key={column.index}
              column={column}
              role={meanings[column.index] ?? null}
              mark={markOf(list, column.index, meanings[column.index])}
              onRole={(role) => choose(column.index, role)}
            />
          ))}
      </ul>
    </Step>
  );
}

function markOf({ guesses, remembered }: SurveyedList, column: number, role: Role | undefined): string | null {
  if (role === undefined || guesses[role]?.column !== column) return null;
  return remembered?.columns[role] === undefined ? words.guess : words.said;
}

interface ColumnFieldProps {
  readonly column: ColumnSurvey;
  readonly role: Role | null;
  readonly mark: string | null;
  readonly onRole: (role: Role | null) => void;
}

function ColumnField({ column, role, mark, onRole }: ColumnFieldProps) {
  const id = useId();
  return (
    <li className="close-stack">
      <div className="row-field">
        <label htmlFor={id}>
          <strong>{column.header}</strong> {mark !== null && <span className="mark">{mark}</span>}
        </label>
        <select
          id={id}
          value={role ?? ""}
          onChange={(event) => onRole(event.target.value === "" ? null : (event.target.value as Role))}
        >
          <option value="">{words.noMeaning}</option>
          {roles.map(({ key, label }) => (
            <option key={key} value={key}>
              {label}
            </option>
          ))}
        </select>
      </div>
      <span className="note">{role === null ? ownList.samples(column.samples.slice(0, 3)) : roleNamed(role).help}</span>
    </li>
  );
}

function WordsStep({ list, state }: Part) {
  const choices = state.choices!;
  const column = kindColumn(choices);
  if (column === null) return null;
  const found = kindWords(list, column).filter(({ refused }) => refused === null);
  if (found.length === 0) return null;
  return (
    <Step number={3} title={words.words}>
      <p className="note">{words.wordsOf(list.columns[column]!.header)}</p>
      <ul className="rows">
        {found.map((word) => (
          <WordField
            key={word.key}
            word={word}
            kind={choices.words[word.key] ?? null}
            onKind={(kind) => {
              const others = without(choices.words, word.key) as typeof choices.words;
              state.choose({ words: kind === null ? others : { ...others, [word.key]: kind } });
            }}
          />
        ))}
      </ul>
    </Step>
  );
}

function NumbersKept({ state }: { readonly state: ThisListState }) {
  const { numbers, lengths } = state.survey!;
  const said = (Object.entries(numbers) as [SettingName, number][]).map(
    ([name, value]) => `${settingNamed(name).label}: ${value} ${settingNamed(name).unit}`,
  );
  if (lengths.length > 0) said.push(lengths.join("; "));
  return said.length === 0 ? null : (
    <Step title={words.numbers}>
      <Sentences of={said} />
    </Step>
  );
}

function Foot({ state, workbook }: { readonly state: ThisListState; readonly workbook: Workbook }) {
  const { plan, forgetting, survey } = state;
  if (!plan || !survey?.list) return null;
  const cannot = plan.outcome === "planned" ? cannotDo(workbook, plan.change) : null;
  const isOff = plan.outcome !== "planned" || plan.isKept || cannot !== null;
  return (
    <>
      <Step title={words.kept}>
        {plan.outcome === "problem" ? (
          <ProblemNotice problem={plan} reveal={state.reveal} />
        ) : plan.isKept ? (
          <p>{words.keptAll}</p>
        ) : (
          <Sentences of={[survey.list.remembered ? words.changed : words.notKept, ...plan.says]} />
        )}
        {forgetting && (
          <div className="presses">
            <button type="button" className="button" onClick={() => void state.forget()}>
              {words.forget}
            </button>
          </div>
        )}
      </Step>
      <div className="job-foot">
        <Cannot why={cannot} />
        <div className="presses">
          <button type="button" className="button primary" disabled={isOff} onClick={() => void state.keep()}>
            {words.press}
          </button>
        </div>
      </div>
    </>
  );
}
