import { useId, useRef } from "react";
import { shell as words } from "../../texts/shell";
import { product } from "../../texts/pane";
import type { DayFirst } from "../../workbook/embedded/interface";
import type { DayFirstWord } from "../pane/define-job";

const CHOICES: readonly DayFirstWord[] = ["refuse", "day", "month"];

export const dayFirstWord = (dayFirst: DayFirst): DayFirstWord =>
  dayFirst === null ? "refuse" : dayFirst ? "day" : "month";
const dayFirstOf = (word: DayFirstWord): DayFirst => (word === "refuse" ? null : word === "day");

interface Props {
  readonly name: string;
  readonly isChanged: boolean;
  readonly isReady: boolean;
  readonly isBusy: boolean;
  readonly dayFirst: DayFirst;
  /** A date was typed that can be read two ways: from then on the answer can be seen and changed. */
  readonly isDayFirstAsked: boolean;
  readonly onDayFirst: (dayFirst: DayFirst) => void;
  readonly onOpen: (file: File) => void;
  readonly onSave: () => void;
  readonly onNew: () => void;
  /** On a telephone: whether the sheet is shown, and not the pane. */
  readonly isSheetInSight: boolean;
  readonly onSheet: () => void;
}

/** The workbook's name, and what can be done with the whole of it. */
export function Bar(props: Props) {
  const {
    isDayFirstAsked,
    name,
    isChanged,
    isReady,
    isBusy,
    dayFirst,
    onDayFirst,
    onOpen,
    onSave,
    onNew,
    isSheetInSight,
    onSheet,
  } = props;
  const id = useId();
  const isIdle = isReady && !isBusy;
  return (
    <header className="bar" id="bar" tabIndex={-1}>
      <div className="bar-title">
        <span className="note">{product}</span>
        <h1>{name}</h1>
        {isChanged && <span className="unsaved">{words.unsaved}</span>}
      </div>
      <div className="presses">
        <OpenButton className="button" label={words.open} isDisabled={!isIdle} onOpen={onOpen} />
        <button
          type="button"
          className={isChanged ? "button primary" : "button"}
          title={words.saveHelp}
          disabled={!isIdle}
          onClick={onSave}
        >
          {words.save}
        </button>
        <button type="button" className="button" disabled={!isIdle} onClick={onNew}>
          {words.new}
        </button>
        <button type="button" className="button phone-only" aria-pressed={isSheetInSight} onClick={onSheet}>
          {isSheetInSight ? words.toPaneAgain : words.toSheet}
        </button>
      </div>
      {isDayFirstAsked && (
        <div className="bar-dates">
          <label htmlFor={id}>{words.dayFirst}</label>
          <select
            id={id}
            value={dayFirstWord(dayFirst)}
            disabled={!isReady}
            onChange={(event) => onDayFirst(dayFirstOf(event.target.value as DayFirstWord))}
          >
            {CHOICES.map((choice) => (
              <option key={choice} value={choice}>
                {words.dayFirstChoices[choice]}
              </option>
            ))}
          </select>
        </div>
      )}
    </header>
  );
}

interface OpenButtonProps {
  readonly className: string;
  readonly label: string;
  readonly isDisabled: boolean;
  readonly onOpen: (file: File) => void;
}

/** A press that lets a file be chosen. */
export function OpenButton({ className, label, isDisabled, onOpen }: OpenButtonProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className={className} disabled={isDisabled} onClick={() => input.current?.click()}>
        {label}
      </button>
      <input
        ref={input}
        type="file"
        accept=".xlsx,.xlsm"
        aria-label={words.openLabel}
        hidden
        onChange={(event) => {
          const file = event.target.files?.[0];
          /* The same file may be chosen again after it was mended. */
          event.target.value = "";
          if (file) onOpen(file);
        }}
      />
    </>
  );
}
