import { useId } from "react";
import { facetRoles, type ShowChoices, type ShowSurvey } from "../../actions/show-only";
import { roleNamed, type Role } from "../../../src/columns/role";
import { ownList } from "../../texts/own-list";
import { showOnly as words } from "../../texts/show-only";

interface Props {
  readonly survey: ShowSurvey;
  readonly choices: ShowChoices;
  readonly choose: (choices: ShowChoices) => void;
}

/** Which column is what, to be corrected: another column begins with nothing ticked under it. */
export function ColumnsField({ survey, choices, choose }: Props) {
  const id = useId();
  const { list } = survey.list;
  if (!list) return null;
  const columnOf = (role: Role): number | null =>
    role === "last" ? survey.withoutDate.column : (survey.facets.find((facet) => facet.role === role)?.column ?? null);
  const isMissing = survey.withoutDate.column === null || survey.facets.length === 0;
  return (
    <details className="fold" open={isMissing}>
      <summary>{ownList.which}</summary>
      <div className="stack">
        {(["last", ...facetRoles] as const).map((role) => (
          <div className="field" key={role}>
            <label htmlFor={`${id}${role}`}>{role === "last" ? roleNamed(role).label : words.by[role]}</label>
            <select
              id={`${id}${role}`}
              value={columnOf(role) ?? ""}
              onChange={({ target: { value } }) =>
                choose({
                  ticked: { ...choices.ticked, [role]: [] },
                  columns: { ...choices.columns, [role]: value === "" ? null : Number(value) },
                })
              }
            >
              <option value="">{ownList.noColumn}</option>
              {list.columns.map((column) => (
                <option key={column.index} value={column.index}>
                  {ownList.column(column.letters, column.header)}
                </option>
              ))}
            </select>
          </div>
        ))}
      </div>
    </details>
  );
}
