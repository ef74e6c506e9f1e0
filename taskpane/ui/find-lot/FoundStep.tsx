import { cellAddress } from "../../../src/columns/formula";
import {
  groups,
  listsOf,
  lotSheet,
  showAllOf,
  showFound,
  type FoundLots,
  type LotGroup,
  type LotRow,
} from "../../actions/find-lot";
import { sheetOfValues } from "../../actions/new-sheet";
import { findLot as words } from "../../texts/find-lot";
import type { Workbook } from "../../workbook/port";
import { Cannot } from "../parts/Cannot";
import { CellList } from "../parts/CellGroups";
import { Notice } from "../parts/Notice";
import { SheetPress } from "../parts/SheetPress";
import { Step } from "../parts/Step";
import { useReveal } from "../parts/useReveal";
import { PrintPress, type PaperFacts } from "../print/Paper";
import { countedText, openText, writtenLots } from "./counted";
import { LotPage } from "./LotPage";
import type { FindLotState } from "./useFindLot";

interface Props {
  readonly state: FindLotState;
  readonly found: FoundLots;
  readonly workbook: Workbook;
  readonly paper: PaperFacts;
}

/** What was found: the counts first, whom nobody can rule out beside them, then row by row. */
export function FoundStep({ state, found, workbook, paper }: Props) {
  const can = workbook.can("showRows");
  return (
    <>
      <Step title={words.title(writtenLots(found))}>
        {state.isFromLabel && <p className="note">{words.fromLabel(found.lots[0]!)}</p>}
        <p>
          <strong>{countedText(found)}</strong>
        </p>
        {found.open.length > 0 && (
          <Notice kind="caution">
            <p>{openText(found)}</p>
          </Notice>
        )}
        {groups.map((group) => (
          <Rows
            key={group}
            title={words.groups[group]}
            rows={found.found.filter((row) => row.group === group)}
            workbook={workbook}
          />
        ))}
        <SimilarLots state={state} found={found} />
        {found.lots.length > 1 && (
          <div className="presses">
            <button type="button" className="press" onClick={() => state.take(null)}>
              {words.leave}
            </button>
          </div>
        )}
      </Step>
      {found.open.length > 0 && (
        <Step title={words.openTitle}>
          {openGroups(found).map(([group, rows]) => (
            <Rows key={group} title={words.groups[group]} rows={rows} workbook={workbook} isOpen />
          ))}
          {can === true && (
            <div className="presses">
              <ShowPresses state={state} rows={found.open} press={words.showOpen} />
            </div>
          )}
        </Step>
      )}
      <p className="note">{words.caution}</p>
      <Cannot why={can === true ? null : can} />
      {state.said !== null && (
        <Notice kind={state.said.isDone ? "done" : "problem"}>
          <p>{state.said.sentence}</p>
          {state.said.filtered && (
            <div className="presses">
              <button
                type="button"
                className="press"
                onClick={() => state.apply(showAllOf(state.said!.filtered!), { shownAgain: state.said!.filtered! })}
              >
                {words.showAll(state.said.filtered.name)}
              </button>
            </div>
          )}
        </Notice>
      )}
      <div className="presses">
        <PrintPress press={words.print} page={<LotPage found={found} paper={paper} />} />
        <SheetPress
          workbook={workbook}
          change={() => sheetOfValues(lotSheet(found, writtenLots(found)), paper.overview, paper.today)}
        />
        {can === true && <ShowPresses state={state} rows={found.found} press={words.showThese} />}
      </div>
    </>
  );
}

const openGroups = ({ open }: FoundLots): readonly (readonly [LotGroup, FoundLots["open"]])[] =>
  groups
    .map((group) => [group, open.filter((row) => row.group === group)] as const)
    .filter(([, rows]) => rows.length > 0);

interface ShowProps {
  readonly state: FindLotState;
  readonly rows: readonly LotRow[];
  /** What the press says of so many rows of a list. */
  readonly press: (n: number, list: string) => string;
}

/** The host's own filter, one list a press. */
function ShowPresses({ state, rows, press }: ShowProps) {
  return listsOf(rows).map((list) => {
    const n = new Set(rows.filter((row) => row.list.key === list.key).map(({ row }) => row)).size;
    return (
      <button
        key={list.key}
        type="button"
        className="button"
        onClick={() => state.apply(showFound(rows, list), { shown: list })}
      >
        {press(n, list.name)}
      </button>
    );
  });
}

interface RowsProps {
  readonly title: string;
  readonly rows: readonly (LotRow | FoundLots["open"][number])[];
  readonly workbook: Workbook;
  /** Says why a row cannot be ruled out. */
  readonly isOpen?: boolean;
}

/** Rows of one sheet after the other, each one press away. */
function Rows({ title, rows, workbook, isOpen = false }: RowsProps) {
  const reveal = useReveal(workbook);
  if (rows.length === 0) return null;
  const text = (row: LotRow | FoundLots["open"][number]): string => {
    const why = isOpen && "why" in row && row.why !== "no lot" ? `: ${words.why[row.why]} (${row.lot})` : "";
    return `${row.id || words.noId}, ${row.about}${why}`;
  };
  return (
    <div className="close-stack">
      <h4>
        {title} <span className="note">{rows.length}</span>
      </h4>
      {listsOf(rows).map((list) => (
        <CellList
          key={list.key}
          sheet={list.sheet}
          reveal={reveal}
          cells={rows
            .filter((row) => row.list.key === list.key)
            .map((row) => ({
              address: cellAddress(row.sheetRow - 1, list.area.left + row.column),
              text: text(row),
            }))}
        />
      ))}
    </div>
  );
}

function SimilarLots({ state, found }: { readonly state: FindLotState; readonly found: FoundLots }) {
  if (found.similar.length === 0) return null;
  return (
    <div className="close-stack">
      <h4>{words.similar}</h4>
      <ul className="plain-list">
        {found.similar.map(({ lot, why, rows }) => (
          <li key={lot}>
            {words.similarLine(lot, rows.length, words.likeness[why])}{" "}
            <button type="button" className="press" onClick={() => state.take(lot)}>
              {words.take(lot)}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
