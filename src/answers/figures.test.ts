/**
 * No number of the outputs is a dead end: for every example tank each id that an output names opens, its links open,
 * a source is reached within three levels, and the value that opens is the value that was shown.
 */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { animals, findAnimal } from "../catalogue/index.ts";
import { readTankFile } from "../contract/tank-file/read.ts";
import { round3 } from "../engine/types/link.ts";
import type { TankFacts } from "../engine/types/tank.ts";
import { loadSolver } from "../solver/highs.ts";
import { reportOf } from "./check/report.ts";
import { factsShown } from "./figures/animal-facts.ts";
import { answersOf, type TankAnswers } from "./tank-answers.ts";
import { whatIf } from "./what-if.ts";
import { type WorkingFigure, workingOf } from "./working.ts";

const ROOT = join(import.meta.dirname, "../..");
const FEW = { members: 20, seed: 1 };
const MOST_LEVELS = 3;
const examples = readdirSync(join(ROOT, "examples")).filter((name) => /\.(yaml|json)$/.test(name));
const solve = await loadSolver();

function factsOf(name: string): { facts: TankFacts; checked: unknown } {
  const text = readFileSync(join(ROOT, "examples", name), "utf8");
  const result = readTankFile(text, { today: "2026-11-26", findAnimal });
  if (!result.ok) throw new Error(`${name} can't be read`);
  return { facts: result.facts, checked: reportOf(name, result) };
}

const answersFor = (facts: TankFacts, change: Parameters<typeof answersOf>[3] = null) =>
  answersOf(facts, FEW, { solve, progress: () => {} }, change);

/** Every id under a key `figure`, `figures`, `..._figure` or `..._figures`, however deep. */
function named(value: unknown, under = false): string[] {
  if (typeof value === "string") return under ? [value] : [];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => named(inner, under || /(^|_)figures?$/.test(key)));
}

const OPENED = new WeakMap<TankAnswers, Map<string, WorkingFigure | null>>();
function opened(answers: TankAnswers, id: string): WorkingFigure | null {
  const known = OPENED.get(answers) ?? new Map<string, WorkingFigure | null>();
  OPENED.set(answers, known);
  if (!known.has(id)) known.set(id, workingOf(answers, id));
  return known.get(id)!;
}

/** Levels from a working down to one that names a source, a parameter, or a fact the keeper told or left open. */
function levels(answers: TankAnswers, figure: WorkingFigure, seen: readonly string[] = []): number {
  if (seen.includes(figure.id)) return Number.POSITIVE_INFINITY;
  if (figure.parameters.length + figure.animals.length > 0 || /(^|\.)tank\./.test(figure.id)) return 1;
  const below = figure.inputs.flatMap(({ figure: link }) => {
    const linked = link === null ? null : opened(answers, link);
    return linked === null ? [] : [levels(answers, linked, [...seen, figure.id])];
  });
  return 1 + Math.max(0, ...below);
}

const HEADINGS = new Map<string, readonly string[]>();
function headingsOf(path: string): readonly string[] {
  const known = HEADINGS.get(path);
  if (known !== undefined) return known;
  const text = existsSync(join(ROOT, path)) ? readFileSync(join(ROOT, path), "utf8") : "";
  const made = [...text.matchAll(/^#+ (.*)$/gm)].map(([, words]) =>
    words!
      .toLowerCase()
      .replaceAll(/[^a-z0-9 ]/g, "")
      .trim()
      .replaceAll(" ", "-"),
  );
  HEADINGS.set(path, made);
  return made;
}

/** What is wrong with a working; plain tests, since there are tens of thousands of inputs. */
function faultsOf(answers: TankAnswers, figure: WorkingFigure): string[] {
  const { id, inputs, label, formula, formula_at, would_change, parameters, value } = figure;
  const faults: string[] = [];
  const held = (right: boolean, what: string) => {
    if (!right) faults.push(`${id}: ${what}`);
  };
  held(label !== "" && formula !== "", "says nothing");
  held(inputs.length > 0, "has no inputs");
  for (const input of inputs) {
    held(input.value.trim() !== "", `${input.label} has no value`);
    held(!/NaN|undefined|Infinity|\[object/.test(input.value), `${input.label} is ${input.value}`);
    if (input.figure === null) continue;
    const linked = opened(answers, input.figure);
    held(linked !== null, `${input.figure} is a dead end`);
    if (linked === null) continue;
    const shown = round3(linked.value.central);
    held(Number.parseFloat(input.value) === Number(shown), `${input.value}, where ${linked.id} has ${shown}`);
  }
  for (const one of parameters) {
    held(one.meaning !== "", `${one.id} means nothing`);
    held(one.sources.length > 0 || one.evidence === "judgement", `${one.id} has no source`);
  }
  held(would_change.length > 0 && would_change.length <= 2, "what would change it");
  held([value.low, value.central, value.high].every(Number.isFinite), "its value is no number");
  held(value.low <= value.central && value.central <= value.high, "its band");
  const [path, heading] = formula_at.split("#") as [string, string];
  held(headingsOf(path).includes(heading), `no heading ${formula_at}`);
  held(levels(answers, figure) <= MOST_LEVELS, "too many levels down to a source");
  return faults;
}

type Shown = readonly [id: string | null, value: number];

/** Numbers of the outputs beside the ids that they name. */
function shownIn({ larder, waves, ahead, animals: guide }: TankAnswers): Shown[] {
  const outlooks = [ahead.as_it_is, ...(ahead.what_if === null ? [] : [ahead.what_if.outlook])];
  return [
    [larder.total_figure, larder.total_mg_c_per_day.central],
    ...larder.shelves.flatMap((shelf): Shown[] => [
      [shelf.figures.supply, shelf.supply_mg_c_per_day.central],
      [shelf.figures.pessimistic, shelf.pessimistic_mg_c_per_day],
      [shelf.figures.wanted, shelf.wanted_mg_c_per_day],
      [shelf.figures.balance, shelf.balance_mg_c_per_day.central],
    ]),
    ...larder.mouths.flatMap((mouth): Shown[] => [
      [mouth.figures.heads, mouth.heads],
      [mouth.figures.need, mouth.need_mg_c_per_day],
      [mouth.figures.most, mouth.most_mg_c_per_day],
      ...Object.entries(mouth.figures.by_shelf).map(
        ([shelf, id]): Shown => [id, mouth.by_shelf_mg_c_per_day[shelf]!],
      ),
    ]),
    [waves.tank.figures.water, waves.tank.water_l.central],
    [waves.tank.figures.age, waves.tank.age_days.central],
    ...waves.to_add.map(({ figure, count }): Shown => [figure, count]),
    ...waves.waves.flatMap((wave): Shown[] => [
      [wave.figures.planned_share, wave.planned_share],
      ...wave.animals.flatMap((row): Shown[] => [
        [row.figures.count, row.count],
        [row.figures.spare_shells, row.spare_shells],
      ]),
      ...Object.entries(wave.figures.shelves).flatMap(([shelf, ids]): Shown[] => [
        [ids.pessimistic, wave.supply_pessimistic_mg_c_per_day[shelf]!],
        [ids.central, wave.supply_central_mg_c_per_day[shelf]!],
        [ids.eaten, wave.eaten_central_mg_c_per_day[shelf]!],
      ]),
    ]),
    ...waves.left_to_hand.map(({ figure, mg_c_per_day }): Shown => [figure, mg_c_per_day]),
    ...waves.fed_by_hand.flatMap((row): Shown[] => [
      [row.figures.food, row.mg_c_per_day],
      [row.figures.dry_feed, row.dry_feed_mg_per_day],
    ]),
    ...waves.wishes.map(
      ({ figure, costs }): Shown => [figure, costs.reduce((sum, { fewer }) => sum + fewer, 0)],
    ),
    ...waves.check.flatMap((kind): Shown[] => [
      [kind.figures.alive, kind.alive_of_20],
      [kind.figures.aged, kind.aged_of_20],
      [kind.figures.condition, kind.condition ?? 0],
    ]),
    ...waves.would_change.map(({ figure, weight }): Shown => [figure, weight]),
    ...outlooks.flatMap(({ quantities, kinds, chances }): Shown[] => [
      ...quantities.map(({ figure, q50 }): Shown => [figure, q50.at(-1)!]),
      ...chances.flatMap((row): Shown[] => [
        [row.figures.chance, row.of_20],
        [row.figures.limit, row.limit],
      ]),
      ...kinds.flatMap((kind): Shown[] => [
        [kind.figures.heads, kind.heads_alive.q50.at(-1)!],
        [kind.figures.alive, kind.alive_of_20],
        [kind.figures.aged, kind.aged_of_20],
        [kind.figures.starves, kind.starves_of_20],
        [kind.figures.condition, kind.condition?.central ?? 0],
      ]),
    ]),
    ...guide.animals.flatMap(({ figures, fit, ...animal }): Shown[] => [
      [figures["intake"]!, animal.intake_mg_c_per_day.central],
      [figures["break_even"]!, animal.keeps_weight_on_mg_c_per_day],
      [figures["without_food"]!, animal.without_food_days.central],
      [figures["spacing"]!, animal.spacing_l_per_animal.central],
      [figures["min_tank"]!, animal.min_tank_l],
      [figures["size"]!, animal.adult_size_mm.central],
      [figures["lifespan"]!, animal.lifespan_years.central],
      [fit?.figures.heads_here ?? null, fit?.heads_here ?? 0],
      [fit?.figures.alive ?? null, fit?.alive_of_20 ?? 0],
      [fit?.figures.short_by ?? null, fit?.short_by_mg_c_per_day ?? 0],
    ]),
  ];
}

function faultsIn(answers: TankAnswers, besides: unknown): string[] {
  const { workings, ...outputs } = answers;
  const ids = new Set([...named(outputs), ...named(besides)]);
  expect(ids.size).toBeGreaterThan(100);
  return [
    ...[...ids].filter((id) => opened(answers, id) === null).map((id) => `${id} is a dead end`),
    ...Object.values(workings).flatMap((figure) => faultsOf(answers, figure)),
    ...shownIn(answers).flatMap(([id, value]) =>
      id === null || opened(answers, id)?.value.central === value ? [] : [`${id} is shown as ${value}`],
    ),
  ];
}

describe.each(examples)("%s", (name) => {
  test("every number opens, down to a source", () => {
    const { facts, checked } = factsOf(name);
    expect(faultsIn(answersFor(facts), checked)).toEqual([]);
  });
});

test("with a what-if both courses open", () => {
  const { facts, checked } = factsOf("first-reef.yaml");
  const change = whatIf({ feed: "x2", crew: ["+2 trochus-snail"] }, facts);
  expect(faultsIn(answersFor(facts, change), checked)).toEqual([]);
});

test("every fact shown of every animal opens, without a tank", () => {
  for (const animal of animals) {
    for (const fact of factsShown(animal)) {
      const figure = workingOf(null, `animal.${animal.id}.${fact}`);
      expect(figure, `animal.${animal.id}.${fact}`).not.toBeNull();
      expect(figure!.animals[0]!.sources.length, animal.id).toBeGreaterThan(0);
    }
  }
});

test("what no tank has is answered by nothing", () => {
  expect(workingOf(null, "larder.film_glass.supply")).toBeNull();
  expect(workingOf(null, "animal.trochus-snail.colour")).toBeNull();
});
