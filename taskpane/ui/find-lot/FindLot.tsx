/** Find a lot: typed or scanned, whom it touches, who cannot be ruled out, and the page to tell them by. */
import { useId } from "react";
import { agreement } from "../../actions/clinic-settings/agreement";
import { lookedInText, type LotSurvey } from "../../actions/find-lot";
import { findLot as words } from "../../texts/find-lot";
import { ownList } from "../../texts/own-list";
import { pane as paneTexts } from "../../texts/pane";
import { TextField } from "../forms/Field";
import type { JobProps } from "../pane/define-job";
import { Step } from "../parts/Step";
import { TryAgain } from "../parts/TryAgain";
import { FoundStep } from "./FoundStep";
import { LotsWatched } from "./LotsWatched";
import { useFindLot, type FindLotState } from "./useFindLot";

type Props = Pick<JobProps, "workbook" | "overview" | "today" | "isShown" | "locale" | "version">;

export function FindLot({ workbook, overview, today, isShown, locale, version }: Props) {
  const state = useFindLot(workbook, overview, today, isShown);
  if (!workbook || !overview) return <p>{paneTexts.waiting}</p>;
  const { failure, survey, found } = state;
  if (failure !== null) return <TryAgain sentence={failure} press={ownList.lookAgain} onPress={state.look} />;
  if (!survey) return <p>{ownList.looking}</p>;
  const paper = { overview, today, locale, version, agreed: agreement(overview, today).sentence };
  return (
    <>
      <form
        className="stack find-lot"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          state.find(state.typed);
        }}
      >
        <TextField
          name="lot"
          isRequired
          label={words.label}
          hint={words.hint}
          fault={state.fault ?? undefined}
          value={state.typed}
          onChange={state.type}
        />
        <div className="presses">
          <button type="submit" className="button primary">
            {words.find}
          </button>
        </div>
      </form>
      <LookedIn survey={survey} also={state.also} />
      {found && <FoundStep state={state} found={found} workbook={workbook} paper={paper} />}
      {survey.isCaseload && (
        <LotsWatched workbook={workbook} overview={overview} today={today} isShown={isShown} find={state.find} />
      )}
    </>
  );
}

/** Whoever looks must see where was looked, and can add a column whose header does not say lot. */
function LookedIn({ survey, also }: { readonly survey: LotSurvey; readonly also: FindLotState["also"] }) {
  const id = useId();
  const field = survey.others.length > 0 && (
    <div className="row-field">
      <label htmlFor={id}>{words.also}</label>
      <select id={id} value="" onChange={({ target }) => also(target.value)}>
        <option value="">{words.chooseColumn}</option>
        {survey.others.map(({ key, label }) => (
          <option key={key} value={key}>
            {label}
          </option>
        ))}
      </select>
    </div>
  );
  if (survey.lookedIn.length === 0)
    return (
      <Step title={words.also}>
        <p>{words.nowhere}</p>
        {field}
      </Step>
    );
  return (
    <>
      <p className="note">{words.lookedIn(lookedInText(survey))}</p>
      {field && (
        <details>
          <summary>{words.also}</summary>
          {field}
        </details>
      )}
    </>
  );
}
