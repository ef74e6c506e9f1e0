/** The state of Convert sizes: what was found, what was chosen, and what became of it. */
import { useEffect, useMemo, useState } from "react";
import { convertSizes, roomFor, spillCells } from "../../actions/convert-sizes";
import type { Choices, Room, SizesPlan, SizesSurvey } from "../../actions/convert-sizes/interface";
import type { Problem } from "../../actions/action";
import { convertSizes as words } from "../../texts/convert-sizes";
import { ownList } from "../../texts/own-list";
import { areaAddress } from "../../workbook/area";
import type { Overview, Workbook } from "../../workbook/port";
import { useAnnounce } from "../parts/announce";
import { listStoodIn, useListJob, type ListJob, type Standing } from "../parts/useListJob";

export interface ConvertState extends ListJob<SizesSurvey, Choices> {
  readonly plan: SizesPlan | Problem | null;
  /** The plan that was carried out last. */
  readonly carriedOut: SizesPlan | null;
  convert(): Promise<void>;
}

/**
 * Until somebody has chosen something, selected cells count, and of a single cell only where it stands: a long list is
 * not read again at every press of an arrow key.
 */
function selected(overview: Overview, withSelection: boolean): unknown {
  const { selection } = overview;
  if (!selection || !withSelection) return [];
  const { sheet, area } = selection;
  return area.rows === 1 && area.columns === 1 ? listStoodIn(overview) : [sheet, area];
}

const ways = {
  survey: convertSizes.survey,
  alsoSeen: selected,
  renewed: (before: SizesSurvey, fresh: SizesSurvey): SizesSurvey => ({
    ...fresh,
    selected: fresh.selected ?? before.selected,
  }),
};

export function useConvert(standing: Standing): ConvertState {
  const { workbook, isShown } = standing;
  const announce = useAnnounce();
  const job = useListJob<SizesSurvey, Choices>(standing, ways);
  const { survey, choices } = job;
  const [carriedOut, setCarriedOut] = useState<SizesPlan | null>(null);
  const room = useRoom(workbook, survey, choices, isShown, job.setFault);
  const plan = useMemo(
    () => (survey && choices ? convertSizes.plan(survey, choices, room) : null),
    [choices, room, survey],
  );
  return {
    ...job,
    plan,
    carriedOut,
    convert: async () => {
      if (plan?.outcome !== "planned") return;
      announce(words.working);
      setCarriedOut(plan);
      await job.applying.apply(plan.change, (receipt) => convertSizes.afterwards(plan, receipt));
    },
    reveal: (place) => {
      /* Going to a cell selects it: that is no other choice of column. */
      job.touch();
      job.reveal(place);
    },
  };
}

/**
 * Whether a formula's cells are free, looked at whenever other cells are named or the sheet was read anew; null until
 * that is known. What was found stands in a state of its own, beside what it was found for: a look that changed what it
 * depends on would look for ever.
 */
function useRoom(
  workbook: Workbook | null,
  survey: SizesSurvey | null,
  choices: Choices | null,
  isShown: boolean,
  onFault: (sentence: string) => void,
): Room | null {
  const [found, setFound] = useState<{ readonly of: SizesSurvey; readonly at: string; readonly room: Room } | null>(
    null,
  );
  const cells = survey && choices && spillCells(survey, choices);
  /* The same cells are another object at every choice. */
  const at = cells && `${cells.sheet} ${areaAddress(cells.area)}`;
  useEffect(() => {
    if (!workbook || !survey || !cells || at === null || !isShown) return;
    let isCurrent = true;
    roomFor(workbook, cells).then(
      (room) => isCurrent && setFound({ of: survey, at, room }),
      (error: unknown) => isCurrent && onFault(ownList.lookFailed(String(error))),
    );
    return () => {
      isCurrent = false;
    };
  }, [at, isShown, onFault, survey, workbook]);
  return found?.of === survey && found?.at === at ? found.room : null;
}
