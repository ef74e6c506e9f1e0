import { useId } from "react";
import type { View } from "../../actions/show-only";
import { figure, rows } from "../../texts/pieces";
import { showOnly as words } from "../../texts/show-only";

interface Props {
  readonly counted: View["facets"][number];
  /** In sight from the beginning; with many headings each is one press away. */
  readonly isOpen: boolean;
  readonly onTick: (keys: readonly string[]) => void;
}

/** One heading with its choices, and how many rows each would show. */
export function FacetField({ counted: { facet, groups }, isOpen, onTick }: Props) {
  const id = useId();
  const ticked = groups.filter(({ isTicked }) => isTicked).map(({ group }) => group.key);
  return (
    <details className="fold" open={isOpen || undefined}>
      <summary>
        {words.by[facet.role]}{" "}
        <span className="note">{ticked.length > 0 ? words.ticked(ticked.length) : words.many(groups.length)}</span>
      </summary>
      <fieldset className="close-stack">
        <legend className="note">{words.inColumn(facet.header)}</legend>
        <ul className="plain-list close">
          {groups.map(({ group, isTicked, count }, i) => (
            <li className="tick" key={group.key}>
              <input
                type="checkbox"
                id={`${id}${i}`}
                checked={isTicked}
                onChange={() => onTick(isTicked ? ticked.filter((key) => key !== group.key) : [...ticked, group.key])}
              />
              <div>
                <label htmlFor={`${id}${i}`}>
                  {group.label}{" "}
                  <span className="mark" title={rows(count)}>
                    {figure(count)}
                    <span className="for-ears"> {count === 1 ? "row" : "rows"}</span>
                  </span>
                </label>{" "}
                {group.note !== "" && <span className="note">{group.note}</span>}
              </div>
            </li>
          ))}
        </ul>
      </fieldset>
    </details>
  );
}
