import { useId } from "react";
import type { View } from "../../actions/show-only";
import { figure, rows } from "../../texts/pieces";
import { showOnly as words } from "../../texts/show-only";

/** More entries than this are folded away until somebody asks for them. */
const SHOWN_AT_ONCE = 10;

interface Props {
  readonly counted: View["facets"][number];
  readonly onTick: (keys: readonly string[]) => void;
}

/** One heading with its choices, and how many rows each would show. */
export function FacetField({ counted: { facet, groups }, onTick }: Props) {
  const id = useId();
  const ticked = groups.filter(({ isTicked }) => isTicked).map(({ group }) => group.key);
  const choices = (
    <ul className="plain-list">
      {groups.map(({ group, isTicked, count }, i) => (
        <li className="tick" key={group.key}>
          <input
            type="checkbox"
            id={`${id}${i}`}
            checked={isTicked}
            onChange={() => onTick(isTicked ? ticked.filter((key) => key !== group.key) : [...ticked, group.key])}
          />
          <label htmlFor={`${id}${i}`}>
            {group.label}{" "}
            <span className="mark" title={rows(count)}>
              {figure(count)}
              <span className="for-ears"> {count === 1 ? "row" : "rows"}</span>
            </span>
          </label>
          {group.note !== "" && <span className="note">{group.note}</span>}
        </li>
      ))}
    </ul>
  );
  return (
    <fieldset className="close-stack">
      <legend>{words.by[facet.role]}</legend>
      <p className="note">{words.inColumn(facet.header)}</p>
      {groups.length > SHOWN_AT_ONCE ? (
        <details className="fold">
          <summary>{words.many(groups.length)}</summary>
          {choices}
        </details>
      ) : (
        choices
      )}
    </fieldset>
  );
}
