/** When to change the mechanical filter: before much of what it caught has decayed where it hangs. */
import { lastDone } from "../../engine/care/dated/film-days.ts";
import { daysToShare, sharedBack } from "../../engine/care/dated/filter-days.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { parametersOf, round3, workedOut } from "../../engine/types/link.ts";
import { TABLE } from "../figures/table.ts";
import { told } from "../sentence.ts";
import { counted, dateWords } from "../words.ts";
import {
  type AlmanacScene,
  almanacFigure,
  type Dated,
  dated,
  dueAfter,
  duty,
  shownFigure,
  undated,
} from "./scene.ts";

/** Where the load is not known: no more than half of what was caught comes back. Judgement. */
const USUAL_SHARE = 0.5;
/** Where it is: what comes back is no more than this share of all nitrogen freed into the water. Judgement. */
const SHARE_OF_FREED = 0.1;
const [LEAST_SHARE, MOST_SHARE] = [0.25, 0.6];

export function filterDates({ facts, record, today, flows }: AlmanacScene): Dated {
  const kept = facts.filterChangeDays;
  const decay = TABLE.get("kM");
  if (kept === null || decay === undefined)
    return undated("filter", "Changing the filter", ["No mechanical filter is told of."]);
  const nitrogen = flows?.elements.find(({ element }) => element === "N");
  const out = nitrogen?.out.find(({ id }) => id === "filter");
  const k = decay.spread;
  // What leaves with the filter today is what was caught, less what came back at today's rhythm.
  const caught = out === undefined ? null : out.mg_per_day.central / (1 - sharedBack(k.central, kept));
  const freed = nitrogen?.freed_mg_per_day.central ?? 0;
  const share =
    caught === null || caught <= 0
      ? USUAL_SHARE
      : Math.min(MOST_SHARE, Math.max(LEAST_SHARE, (SHARE_OF_FREED * freed) / caught));
  const longest = {
    low: daysToShare(k.high, share),
    central: daysToShare(k.central, share),
    high: daysToShare(k.low, share),
  };
  const unsaid = facts.assumed.includes("filterChangeDays");
  // A rhythm that nobody told is no reason to hurry.
  const every = Math.max(1, Math.min(unsaid ? Infinity : Math.round(kept), Math.floor(longest.central)));
  const figure = almanacFigure("filter_days", {
    ...{ label: "Longest time between filter changes", spread: longest, unit: "d" },
    formulaKey: "almanac.md#filter",
    formula:
      "days at which the share that has decayed, 1 - (1 - exp(-k t)) / (k t), reaches what is let pass",
    inputs: [
      workedOut("share let pass", `${Math.round(100 * share)} %`),
      workedOut(unsaid ? "taken as changed every" : "you change it every", counted(Math.round(kept), "day")),
      ...(out === undefined || nitrogen === undefined || caught === null
        ? [workedOut("load", "not worked out: half is let pass")]
        : [
            shownFigure({
              id: out.figure,
              label: "nitrogen that leaves with the filter",
              spread: out.mg_per_day,
              unit: "mg N/d",
            }),
            shownFigure({
              ...{ id: figureId.flow("N", "freed"), label: "nitrogen freed into the water" },
              ...{ spread: nitrogen.freed_mg_per_day, unit: "mg N/d" },
            }),
            workedOut("caught", `${round3(caught)} mg N/d`),
          ]),
    ],
    parameters: parametersOf(["kM"], TABLE),
    confidence: "judgement",
    wouldChange: ["more or less feed", "how fast dirt decays in the filter"],
  });
  const last = lastDone(record, "filter_changed");
  const sooner = every < Math.round(kept);
  return dated(
    duty({
      ...{ id: "filter", kind: "filter", on: dueAfter(last?.on ?? null, every, today), every },
      do: [
        unsaid
          ? "Change or rinse the mechanical filter, if it has one."
          : "Change or rinse the mechanical filter.",
      ],
      why: [
        [
          `What it holds decays where it hangs: ${caught === null ? "half" : `${Math.round(100 * share)} %`} of what it caught is back in the water after `,
          told(counted(Math.max(1, Math.floor(longest.central)), "day"), figure.id),
          unsaid
            ? "; whether there is one, or how often you change it, was not said."
            : sooner
              ? `, sooner than the ${counted(Math.round(kept), "day")} you told.`
              : ", and your own rhythm is no slower.",
        ],
        [last === null ? "No change of it is logged yet." : `Last changed on ${dateWords(last.on)}.`],
      ],
      byWhen: ["On its day, or when water runs past it; sooner after much feed."],
      wouldChange: ["Less feed, or what you say of the filter in the questions."],
      figures: [figure],
      restsOn: `${every} ${last?.entry ?? ""}`,
      done: { kind: "chore", fields: { chore: "filter_changed" } },
    }),
  );
}
