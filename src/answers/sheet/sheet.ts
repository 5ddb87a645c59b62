/**
 * The sheet: one printed page of a tank, as plain words, cut to a length that fits a page for any tank.
 * What is cut is counted and told ("and 3 more: see the page"), never dropped in silence.
 * Limits: decides what stands on the page and in which words; the page decides how it looks.
 */
import { SHELF_NAME, type ShelfId } from "../../engine/types/shelf.ts";
import { inFull } from "../animals/fit-words.ts";
import { linked, type Sentence, type Told, told } from "../sentence.ts";
import type { TankAnswers } from "../tank-answers.ts";
import { counted, dateWords, dryFood, rations, rationsADay } from "../words.ts";
import { callMeIf } from "./call-me.ts";
import { measureFor } from "./fit.ts";

export interface SheetWave {
  readonly number: number;
  readonly when: Told;
  readonly animals: readonly Told[];
  readonly moreAnimals: number;
  readonly onlyIf: readonly string[];
  readonly moreConditions: number;
  /** Null where it is that of the wave before. */
  readonly stopIf: string | null;
}

export interface SheetShelf {
  readonly id: string;
  readonly name: string;
  /** Rations a day with their band: "1.3 (0.3 to 2.7)". */
  readonly grown: Told;
  readonly eaten: Told;
}

export interface Sheet {
  readonly asOf: string;
  readonly finding: string;
  readonly because: readonly Sentence[];
  readonly waves: readonly SheetWave[];
  readonly moreWaves: number;
  readonly shelves: readonly SheetShelf[];
  readonly feeding: readonly Sentence[];
  readonly moreFeeding: number;
  /** Of what is fed and nobody eats; null where there is none to speak of. */
  readonly leftOver: Sentence | null;
  readonly callMeIf: readonly Sentence[];
  /** Titles of the works that stand behind most of its figures. */
  readonly sources: readonly string[];
}

/** What fits beside the waves, in entries. */
const MOST = { feeding: 4, because: 6, sources: 2 } as const;

export function sheetOf(answers: TankAnswers): Sheet {
  const { waves, larder } = answers;
  const texts = waves.waves.map(({ animals, only_if, stop_if }, i) => ({
    animals: animals.map(({ name, count }) => counted(count, name)),
    conditions: only_if,
    stopIf: stop_if === waves.waves[i - 1]?.stop_if ? null : stop_if,
  }));
  const most = measureFor(texts);
  const shown = waves.waves.slice(0, most.waves);
  const feeding = waves.fed_by_hand.map(
    ({ name, dry_feed_mg_per_day, standing, figures }): Sentence => [
      `${name}${standing === "resident" ? "" : ", once it is there"}: `,
      told(dryFood(dry_feed_mg_per_day), figures.dry_feed),
      " of dry food a day by hand",
    ],
  );
  return {
    asOf: waves.tank.as_of,
    finding: findingOf(answers),
    because: waves.because
      .slice(0, MOST.because)
      .map((text, i) => linked(inFull(text), waves.because_figures[i])),
    waves: shown.map((wave, i) => ({
      number: wave.number,
      when: told(`${dateWords(wave.from)} to ${dateWords(wave.to)}`, wave.figures.from),
      animals: wave.animals
        .slice(0, most.animals)
        .map(({ name, count, figures }) => told(counted(count, name), figures.count)),
      moreAnimals: Math.max(0, wave.animals.length - most.animals),
      onlyIf: wave.only_if.slice(0, most.conditions),
      moreConditions: Math.max(0, wave.only_if.length - most.conditions),
      stopIf: texts[i]!.stopIf,
    })),
    moreWaves: waves.waves.length - shown.length,
    shelves: larder.shelves
      .filter(({ supply_mg_c_per_day }) => supply_mg_c_per_day.high >= LEAST_SHOWN_MG_C)
      .map(({ id, supply_mg_c_per_day: { low, central, high }, wanted_mg_c_per_day, figures }) => ({
        id,
        name: SHELF_NAME[id as ShelfId],
        grown: told(`${rations(central)} (${rations(low)} to ${rations(high)})`, figures.supply),
        eaten: told(rations(wanted_mg_c_per_day), figures.wanted),
      })),
    feeding: feeding.slice(0, MOST.feeding),
    moreFeeding: Math.max(0, feeding.length - MOST.feeding),
    leftOver: leftOverOf(answers),
    callMeIf: callMeIf(answers),
    sources: mostCited(answers).slice(0, MOST.sources),
  };
}

/** As the page of waves leaves it to the keeper's own hands. */
function leftOverOf({ waves }: TankAnswers): Sentence | null {
  const left = waves.left_to_hand.find(({ shelf }) => shelf === ("uneaten_feed" satisfies ShelfId));
  if (left === undefined) return null;
  return [
    "Feed less, or take out what is left after two minutes: about ",
    told(rationsADay(left.mg_c_per_day), left.figure),
    " are left.",
  ];
}

/** A shelf that gives less than this in its best run is no line of a page, mg C a day. */
const LEAST_SHOWN_MG_C = 0.5;

function findingOf({ waves }: TankAnswers): string {
  if (waves.kind === "nothing_yet") {
    const again = waves.look_again_on === null ? "" : ` Look again on ${dateWords(waves.look_again_on)}.`;
    return `Add nothing yet.${again} Waiting costs nothing.`;
  }
  const heads = waves.waves.reduce(
    (sum, { animals }) => sum + animals.reduce((n, { count }) => n + count, 0),
    0,
  );
  const last = waves.waves.at(-1)!;
  const inWaves = waves.waves.length === 1 ? "one wave" : `${waves.waves.length} waves`;
  return `${heads} ${heads === 1 ? "animal" : "animals"} in ${inWaves}, all by ${dateWords(last.to)}, each wave only if its conditions hold. Nothing is lost by waiting.`;
}

/** Works by how many parameters of the workings rest on them. */
function mostCited({ workings }: TankAnswers): string[] {
  const parameters = new Map(
    Object.values(workings).flatMap((figure) => figure.parameters.map((one) => [one.id, one] as const)),
  );
  const cited = new Map<string, number>();
  for (const { sources } of parameters.values()) {
    for (const { title, opened } of sources) {
      if (opened !== "none") cited.set(title, (cited.get(title) ?? 0) + 1);
    }
  }
  return [...cited]
    .sort((a, b) => b[1] - a[1] || a[0].localeCompare(b[0]))
    .map(([title]) => shortened(title));
}

/** A title as long as a line of paper. */
const LONGEST_TITLE = 90;
const shortened = (title: string): string =>
  title.length <= LONGEST_TITLE ? title : `${title.slice(0, title.lastIndexOf(" ", LONGEST_TITLE))} ...`;
