/** When to wipe the glass: by days to film as logged; else as the keeper said; else as the larder's film grows. */
import {
  grownFilmDays,
  lastDone,
  MOST_FILM_DAYS,
  measuredFilmDays,
} from "../../engine/care/dated/film-days.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { exact, factInput, parametersOf, workedOut } from "../../engine/types/link.ts";
import { TABLE } from "../figures/table.ts";
import { type Sentence, told } from "../sentence.ts";
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

const NAME = "glass_days";

export function glassDates(scene: AlmanacScene): Dated {
  const { facts, record, today } = scene;
  const told = facts.wipeGlassEveryDays;
  if (told.origin === "stated" && told.central === 0)
    return undated("glass", "Wiping the glass", ["You said that the glass is left as it is."]);
  const found = logged(scene) ?? said(scene) ?? grown(scene);
  if (found === null)
    return undated("glass", "Wiping the glass", [
      "The film on glass is eaten as fast as it grows in every run: nothing to wipe. Wipe where you want to look in.",
    ]);
  const every = Math.max(1, Math.round(found.figure.spread.central));
  if (every >= MOST_FILM_DAYS)
    return undated(
      "glass",
      "Wiping the glass",
      ["Film takes ", door(found.figure.spread), " or more to come back: wipe where you want to look in."],
      [found.figure],
    );
  const wiped = lastDone(record, "glass_wiped");
  return dated(
    duty({
      ...{ id: "glass", kind: "glass", on: dueAfter(wiped?.on ?? null, every, today), every },
      do: ["Wipe the glass you look through; leave the rest to the grazers."],
      why: [
        found.why,
        [wiped === null ? "No wiping is logged yet." : `Last wiped on ${dateWords(wiped.on)}.`],
      ],
      byWhen: ["When film hides what you want to see; a few days more harm nobody."],
      wouldChange: ["How many days the glass stayed clear, logged with each wiping."],
      figures: [found.figure],
      restsOn: `${every} ${wiped?.entry ?? ""}`,
      done: { kind: "chore", fields: { chore: "glass_wiped" } },
      leads: "growths",
    }),
  );
}

interface Found {
  readonly figure: Figure;
  readonly why: Sentence;
}

const LABEL = "Days from wiped glass to film that wants wiping";
const days = (spread: Spread): string => counted(Math.max(1, Math.round(spread.central)), "day");
const door = (spread: Spread) => told(days(spread), figureId.care("almanac", NAME));

function logged({ record }: AlmanacScene): Found | null {
  const measured = measuredFilmDays(record);
  if (measured === null) return null;
  const { returns } = measured;
  return {
    why: [
      "Film took ",
      door(measured.days),
      ` to come back, the middle of the last ${returns.length} times.`,
    ],
    figure: almanacFigure(NAME, {
      ...{ label: LABEL, spread: measured.days, unit: "d" },
      ...{ formulaKey: "almanac.md#glass", formula: "the middle of the days logged with the latest wipings" },
      inputs: returns.map((one) => ({
        ...{
          label: `logged on ${dateWords(one.on)}`,
          value: counted(one.days, "day"),
          origin: "stated" as const,
        },
      })),
      confidence: "measured",
      wouldChange: ["the next wiping, with its days", "more grazers, or more light"],
    }),
  };
}

function said({ facts }: AlmanacScene): Found | null {
  const { wipeGlassEveryDays: said } = facts;
  if (said.origin !== "stated") return null;
  const figure = almanacFigure(NAME, {
    ...{ label: LABEL, spread: exact(said.central), unit: "d" },
    ...{ formulaKey: "almanac.md#glass", formula: "as you said, until the daybook has two returns of film" },
    inputs: [factInput(facts, "wipeGlassEveryDays", "you wipe every", "d")],
    wouldChange: ["two wipings logged with the days until film was back", "what you said"],
  });
  return { figure, why: ["You said that you wipe every ", door(figure.spread), "."] };
}

function grown({ facts, larder }: AlmanacScene): Found | null {
  const shelf = larder.shelves.find(({ id }) => id === "film_glass");
  const crop = TABLE.get("cropGlass");
  const left = TABLE.get("unwiped");
  if (shelf === undefined || crop === undefined || left === undefined) return null;
  const areaM2 = facts.glassM2.central * left.spread.central;
  const spread = grownFilmDays({
    ...{ netMgCPerDay: shelf.balance_mg_c_per_day, areaM2, cropMgCPerM2: crop.spread.central },
  });
  if (spread === null) return null;
  const { low, central, high } = shelf.balance_mg_c_per_day;
  return {
    why: [
      "No days to film are logged; as the larder grows it, about ",
      door(spread),
      ": it hangs on light and grazers, so take it as a first guess.",
    ],
    figure: almanacFigure(NAME, {
      ...{ label: LABEL, spread, unit: "d" },
      formulaKey: "almanac.md#glass",
      formula: "twice the film that grazers leave, over what grows and is not eaten a day",
      inputs: [
        shownFigure({
          ...{ id: shelf.figures.balance, label: "film on glass, grown less eaten" },
          ...{ spread: { low, central, high }, unit: "mg C/d" },
        }),
        factInput(facts, "glassM2", "lit glass", "m2"),
        workedOut("glass left to grow", `${Number(areaM2.toPrecision(2))} m2`),
      ],
      parameters: parametersOf(["cropGlass", "unwiped"], TABLE),
      confidence: "judgement",
      wouldChange: ["two wipings logged with the days until film was back", "hours and strength of light"],
    }),
  };
}
