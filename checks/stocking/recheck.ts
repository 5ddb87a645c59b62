/**
 * A plan judged again by a second reading of the rules, from the catalogue and docs/model/stocking.md alone: nothing of
 * the planner's suitability, programme or solver is imported, only the shapes of what goes in and comes out.
 * Answers the faults found, in words; an empty list is a pass.
 */
import type { Plan } from "../../src/engine/stocking/plan.ts";
import type { Animal } from "../../src/engine/types/animal.ts";
import { SHELVES, type ShelfId } from "../../src/engine/types/shelf.ts";
import type { TankFacts } from "../../src/engine/types/tank.ts";
import { type Eater, greatestFeed } from "../kit/transport.ts";

/** Food amounts below this are rounding of the solver's, mg C a day. */
const CRUMB = 1e-4;
/** How far diets lean to what is on offer; heads under this weight come in threes; fish eat half of a shelf at most. */
const LEAN = 1.4;
const SMALL_G = 1.5;
const FISH_SHARE = 0.5;
const LEVELS = ["first-tank", "experienced", "specialist"];
const FIVE_WEEKS = 35;

export function recheck(plan: Plan, facts: TankFacts, animals: readonly Animal[]): string[] {
  const scene = new Scene(facts, animals);
  return [
    ...shapeFaults(plan, facts),
    ...keepingFaults(plan, scene),
    ...companyFaults(plan, scene),
    ...foodFaults(plan, scene),
    ...partitionFaults(plan, scene),
    ...wishFaults(plan, scene),
    ...numberFaults(plan),
  ];
}

/** The tank as these checks look at it: who is there, who comes by whose will, and when. */
class Scene {
  readonly facts: TankFacts;
  readonly animals: readonly Animal[];
  readonly byId: ReadonlyMap<string, Animal>;
  readonly present: ReadonlyMap<string, number>;
  readonly planned: readonly { readonly id: string; readonly count: number; readonly day: number }[];
  /** Animals burn twice as fast with every 10 degrees. */
  readonly warmth: number;

  constructor(facts: TankFacts, animals: readonly Animal[]) {
    this.facts = facts;
    this.animals = animals;
    this.byId = new Map(animals.map((animal) => [animal.id, animal]));
    const present = new Map<string, number>();
    for (const { id, count } of facts.present) {
      if (count > 0 && this.byId.has(id)) present.set(id, (present.get(id) ?? 0) + count);
    }
    this.present = present;
    this.planned = facts.planned
      .filter(({ id, count }) => count > 0 && this.byId.has(id))
      .map(({ id, count, on }) => ({
        id,
        count,
        day: on === null ? 0 : Math.max(0, daysFrom(facts.asOf, on)),
      }));
    this.warmth = 2 ** ((facts.temperatureC.central - 25) / 10);
  }

  animal(id: string): Animal {
    const animal = this.byId.get(id);
    if (animal === undefined) throw new RangeError(`Cannot recheck the plan: no animal "${id}"`);
    return animal;
  }

  need(animal: Animal): number {
    return animal.breakEvenIntakeMgCPerDay * this.warmth;
  }

  eatsFromShelves(animal: Animal): boolean {
    return SHELVES.some((shelf) => animal.diet[shelf] > 0);
  }

  isCrew(animal: Animal): boolean {
    return animal.group !== "fish" && this.eatsFromShelves(animal);
  }
}

function shapeFaults(plan: Plan, facts: TankFacts): string[] {
  const faults: string[] = [];
  const say = (wrong: boolean, text: string): void => {
    if (wrong) faults.push(text);
  };
  say((plan.kind === "waves") !== plan.waves.length > 0, "kind and waves disagree");
  say(plan.kind === "nothing_yet" && plan.because.length === 0, "nothing yet, without a because");
  say(
    plan.because.some((text) => text.trim() === ""),
    "an empty because",
  );
  say(plan.kind === "waves" && plan.lookAgain !== null, "look again does not go with the kind");
  say(plan.lookAgain !== null && daysFrom(facts.asOf, plan.lookAgain) < 1, "look again is not ahead");
  let lastEnd = -1;
  plan.waves.forEach((wave, i) => {
    const start = daysFrom(facts.asOf, wave.from);
    const end = daysFrom(facts.asOf, wave.to);
    const name = `wave ${wave.number}`;
    say(wave.number !== i + 1, `${name} is number ${i + 1}`);
    say(start !== wave.day || wave.day < 0, `${name} starts on day ${start}, says ${wave.day}`);
    say(start <= lastEnd, `${name} begins before the one before has ended`);
    say(end - start < 7 || end - start > 28, `${name} has a window of ${end - start} days`);
    say(
      facts.ageDays.central + start < FIVE_WEEKS,
      `${name} comes at an age of ${facts.ageDays.central + start} days`,
    );
    say(
      !(wave.plannedShare >= 0.6 && wave.plannedShare <= 1),
      `${name} plans on ${wave.plannedShare} of the supply`,
    );
    say(wave.animals.length === 0, `${name} brings nobody`);
    const { gate } = wave;
    say(gate.onlyIf.length === 0 || gate.soonerIf === "" || gate.stopIf === "", `${name} has no gate`);
    for (const { animal, count } of wave.animals) {
      say(!Number.isInteger(count) || count < 1, `${name} brings ${count} ${animal.id}`);
    }
    const ids = wave.animals.map(({ animal }) => animal.id);
    say(new Set(ids).size !== ids.length, `${name} names a kind twice`);
    lastEnd = end;
  });
  return faults;
}

/** Each purchase against what its kind needs of the tank, the shop and the keeper. */
function keepingFaults(plan: Plan, scene: Scene): string[] {
  const { facts } = scene;
  const faults: string[] = [];
  const heads = new Map(scene.present);
  const said = (id: string, text: string) => faults.push(`${id}: ${text}`);
  if (plan.waves.length > 0 && facts.medicines.length > 0) faults.push("bought into medicine");
  if (plan.waves.length > 0 && facts.trouble !== null) faults.push("bought into trouble");
  const unasked = plan.waves[0]?.animals.filter(({ animal }) => !facts.wishes.includes(animal.id)) ?? [];
  const first = unasked.reduce((sum, { count }) => sum + count, 0);
  const most = 12 + Math.max(0, Math.floor((facts.displayL.central - 250) / 100));
  if (first > most) faults.push(`the first wave brings ${first}, more than ${most}`);
  for (const wave of plan.waves) {
    for (const { animal, count } of wave.animals) {
      const { id } = animal;
      heads.set(id, (heads.get(id) ?? 0) + count);
      const own = scene.planned.filter((row) => row.id === id).reduce((sum, row) => sum + row.count, 0);
      const inAll = heads.get(id)! + own;
      if (animal.role !== "crew" && animal.role !== "crew_with_caution") said(id, `role ${animal.role}`);
      if (animal.group === "pod") said(id, "pods bought by the head");
      const poisons = animal.risks.includes("releases_toxin_on_death");
      if (poisons && !facts.wishes.includes(id)) said(id, "can poison the tank and nobody wished for it");
      if (inAll * animal.spacingLitresPerAnimal.central > facts.displayL.central + 1e-9)
        said(id, `${inAll} heads want more than ${facts.displayL.central} L`);
      if (animal.maxPerTank !== null && inAll > animal.maxPerTank)
        said(id, `${inAll} heads, at most ${animal.maxPerTank} get on`);
      const group = Math.max(animal.groupMin, animal.liveWetMassG.central < SMALL_G ? 3 : 1);
      if (inAll < group) said(id, `${inAll} heads, comes in groups of ${group}`);
      if (facts.displayL.central < animal.minTankLitres) said(id, `wants ${animal.minTankLitres} L`);
      if (facts.ageDays.central + wave.day < animal.minTankAgeDays)
        said(id, `wants an age of ${animal.minTankAgeDays}`);
      if (LEVELS.indexOf(animal.keeperLevel) > LEVELS.indexOf(facts.keeperLevel.value))
        said(id, `is for ${animal.keeperLevel}`);
      if (facts.exclusions.includes(id)) said(id, "is excluded");
      if (facts.stockList?.includes(id) === false) said(id, "is not in stock");
      if (animal.priceBand > facts.priceBandMax) said(id, "is too dear");
      faults.push(...groundFaults(animal, facts).map((text) => `${id}: ${text}`));
    }
  }
  return faults;
}

function groundFaults(animal: Animal, facts: TankFacts): string[] {
  const faults: string[] = [];
  const { needs, temperatureC, salinityPsu, sideEffects, risks } = animal;
  const warm = facts.temperatureC.central;
  if (warm < temperatureC.min || warm > temperatureC.max) faults.push(`lives not at ${warm} C`);
  const salt = facts.salinityPsu.central;
  if (salt < salinityPsu.low - 1 || salt > salinityPsu.high + 1) faults.push(`lives not at ${salt} psu`);
  if (needs.sandDepthMmMin > 0 || needs.sandAreaCm2Min > 0) {
    const grain = facts.sandGrain.value;
    if (grain === "none" || facts.sandM2.central <= 0) faults.push("wants sand");
    if (facts.sandDepthMm.central < needs.sandDepthMmMin) faults.push("wants deeper sand");
    if (facts.sandM2.central * 1e4 < needs.sandAreaCm2Min) faults.push("wants more sand");
    const fine = needs.sandGrain?.includes("fine") === true;
    if (fine && (grain === "coarse" || grain === "rubble")) faults.push("wants finer sand");
  }
  if (needs.rockCaves && facts.rockKg.high <= 0) faults.push("wants rock");
  if (needs.rockCaves && facts.rockCaves.origin === "stated" && !facts.rockCaves.value)
    faults.push("wants caves");
  if (needs.lid && !facts.lid.value) faults.push("wants a lid");
  if (needs.pumpGuard && !facts.pumpGuards.value) faults.push("wants guarded pumps");
  const topples = sideEffects.bulldozing >= 2 || risks.includes("undermines_rock");
  if (topples && facts.rockKg.central > 0 && !facts.rockSecured.value) faults.push("topples loose rock");
  return faults;
}

/** No purchase beside anything likely to eat it or to be eaten by it, whoever brings that. */
function companyFaults(plan: Plan, scene: Scene): string[] {
  const bought = new Set(plan.waves.flatMap(({ animals }) => animals.map(({ animal }) => animal.id)));
  const all = new Set([...scene.present.keys(), ...scene.planned.map(({ id }) => id), ...bought]);
  const faults: string[] = [];
  for (const one of bought) {
    for (const other of all) {
      if (one !== other && (eatsSurely(scene, one, other) || eatsSurely(scene, other, one)))
        faults.push(`${one} is bought beside ${other}`);
    }
  }
  return faults;
}

function eatsSurely(scene: Scene, eater: string, eaten: string): boolean {
  return (
    scene.animal(eaten).predatorsOfIt.some((link) => link.id === eater && link.likelihood === "likely") ||
    scene.animal(eater).preysOn.some((link) => link.id === eaten && link.likelihood === "likely")
  );
}

/** Everyone alive at each wave's pessimistic supply, and hand feeding no more than it has to be. */
function foodFaults(plan: Plan, scene: Scene): string[] {
  const faults: string[] = [];
  const heads = new Map([...scene.present].filter(([id]) => scene.isCrew(scene.animal(id))));
  let since = Number.NEGATIVE_INFINITY;
  for (const draft of plan.drafts) {
    const { day, plannedShare } = draft.date;
    const name = `day ${day}`;
    for (const own of scene.planned) {
      if (own.day > since && own.day <= day && scene.isCrew(scene.animal(own.id)))
        heads.set(own.id, (heads.get(own.id) ?? 0) + own.count);
    }
    since = day;
    const supply = suppliesOf(draft.larder, scene, plannedShare);
    faults.push(...supply.faults.map((text) => `${name}: ${text}`));
    const before = hungerOf(heads, supply.left, scene, new Map());
    const wave = plan.waves.find((one) => one.day === day);
    const newcomers = new Set<string>();
    for (const { animal, count } of wave?.animals ?? []) {
      if (!heads.has(animal.id)) newcomers.add(animal.id);
      heads.set(animal.id, (heads.get(animal.id) ?? 0) + count);
    }
    const byHand = draft.answer.handFed;
    const after = hungerOf(heads, supply.left, scene, byHand);
    if (after > CRUMB) faults.push(`${name}: the crew lacks ${after} mg C a day`);
    let allowed = before + CRUMB;
    for (const id of scene.facts.wishes) {
      const animal = scene.byId.get(id);
      if (animal !== undefined && heads.has(id)) allowed += heads.get(id)! * scene.need(animal);
    }
    const given = [...byHand.values()].reduce((sum, mgC) => sum + mgC, 0);
    if (given > allowed) faults.push(`${name}: ${given} mg C by hand where ${allowed} would do`);
    for (const [id, mgC] of byHand) {
      if (!(mgC >= 0)) faults.push(`${name}: ${mgC} mg C by hand to ${id}`);
      if (newcomers.has(id) && !scene.facts.wishes.includes(id))
        faults.push(`${name}: ${id} is bought to be fed`);
    }
    for (const [id, count] of draft.answer.heads) {
      if (count !== (heads.get(id) ?? 0))
        faults.push(`${name}: ${count} ${id} in the answer, ${heads.get(id) ?? 0} counted`);
    }
  }
  return faults;
}

/** What a wave may plan on, shelf by shelf: reached by three members of four, a safe share of it, less what fish graze. */
function suppliesOf(larder: Plan["drafts"][number]["larder"], scene: Scene, plannedShare: number) {
  const faults: string[] = [];
  const left = SHELVES.map((shelf): number => {
    const { pessimistic } = larder.shelves[shelf];
    const reached = larder.parts.filter(({ supply }) => supply[shelf] >= pessimistic * (1 - 1e-9)).length;
    if (reached < 0.75 * larder.parts.length - 1)
      faults.push(`only ${reached} of ${larder.parts.length} members reach the supply of ${shelf}`);
    const planned = plannedShare * pessimistic;
    if (shelf === "uneaten_feed" || shelf === "carrion") return planned;
    let grazed = 0;
    for (const [id, count] of scene.present) {
      const animal = scene.animal(id);
      if (animal.group === "fish") grazed += count * scene.need(animal) * animal.diet[shelf];
    }
    return planned - Math.min(grazed, FISH_SHARE * planned);
  });
  return { left, faults };
}

/** What a crew lacks of its break-even food after hand feeding, mg C a day. */
function hungerOf(
  heads: ReadonlyMap<string, number>,
  supplies: readonly number[],
  scene: Scene,
  byHand: ReadonlyMap<string, number>,
): number {
  const eaters: Eater[] = [];
  let wanted = 0;
  for (const [id, count] of heads) {
    const animal = scene.animal(id);
    const whole = count * scene.need(animal);
    const need = Math.max(0, whole - (byHand.get(id) ?? 0));
    wanted += need;
    eaters.push({
      need,
      most: SHELVES.map((shelf: ShelfId) => whole * Math.min(1, LEAN * animal.diet[shelf])),
    });
  }
  return wanted - greatestFeed(supplies, eaters).fed;
}

/** Every animal of the catalogue has one place: bought, living there, planned, refused or spare. */
function partitionFaults(plan: Plan, scene: Scene): string[] {
  const faults: string[] = [];
  const bought = new Set(plan.waves.flatMap(({ animals }) => animals.map(({ animal }) => animal.id)));
  const planned = new Set(scene.planned.map(({ id }) => id));
  const refused = plan.refused.map(({ animal }) => animal.id);
  const spare = plan.spare.map(({ animal }) => animal.id);
  for (const { id } of scene.animals) {
    const left = [...refused, ...spare].filter((one) => one === id).length;
    const inTank = bought.has(id) || scene.present.has(id);
    if (inTank && left > 0) faults.push(`${id} is in the tank or the plan and left out of it`);
    if (!inTank && left !== 1 && !(planned.has(id) && left === 0)) faults.push(`${id} has ${left} places`);
  }
  for (const { animal, status, reasons } of plan.refused) {
    if (status !== "never" && status !== "not_yet") faults.push(`${animal.id}: status ${status}`);
    if (reasons.length === 0) faults.push(`${animal.id} is refused for no reason`);
    if (reasons.some(({ text }) => text.trim() === "")) faults.push(`${animal.id} has an empty reason`);
    const lasting = reasons.some(({ until }) => until === null);
    if (lasting !== (status === "never"))
      faults.push(`${animal.id}: ${status}, but its reasons say otherwise`);
  }
  for (const { animal, why } of plan.spare)
    if (why.trim() === "") faults.push(`${animal.id} is spare without why`);
  return faults;
}

/** Every wish is answered, and as the plan has it. */
function wishFaults(plan: Plan, scene: Scene): string[] {
  const faults: string[] = [];
  const there = new Set([
    ...plan.waves.flatMap(({ animals }) => animals.map(({ animal }) => animal.id)),
    ...scene.present.keys(),
    ...scene.planned.map(({ id }) => id),
  ]);
  for (const id of scene.facts.wishes) {
    if (!scene.byId.has(id)) continue;
    const answers = plan.wishes.filter(({ animal }) => animal.id === id);
    if (answers.length !== 1) faults.push(`wish ${id} has ${answers.length} answers`);
    if (answers.some(({ status }) => status === "in_plan") && !there.has(id))
      faults.push(`wish ${id} is said to be in the plan`);
  }
  return faults;
}

/** No number is missing, endless or, where it is an amount, below nothing. */
function numberFaults(plan: Plan): string[] {
  const faults: string[] = [];
  const amount = (value: number, name: string): void => {
    if (!(Number.isFinite(value) && value >= 0)) faults.push(`${name} is ${value}`);
  };
  for (const { larder, supply, answer, date } of plan.drafts) {
    for (const shelf of SHELVES) {
      const { supply: band, pessimistic } = larder.shelves[shelf];
      const name = `day ${date.day} ${shelf}`;
      for (const value of [band.low, band.central, band.high, pessimistic]) amount(value, name);
      if (!(band.low <= band.central && band.central <= band.high)) faults.push(`${name} is out of order`);
      amount(supply.pessimistic[shelf], `${name} pessimistic`);
      amount(supply.central[shelf], `${name} central`);
      amount(answer.uneaten[shelf] + CRUMB, `${name} uneaten`);
    }
    for (const [id, count] of answer.heads) amount(count, `day ${date.day} ${id}`);
  }
  for (const { animal, mgC, dryFeedMg } of plan.fedByHand) amount(mgC + dryFeedMg, `${animal.id} by hand`);
  for (const { shelf, leftMgC } of plan.handWork) amount(leftMgC, `${shelf} left`);
  for (const kind of plan.check?.kinds ?? []) {
    amount(kind.aliveOf20, `${kind.id} alive`);
    amount(kind.survive, `${kind.id} surviving`);
    amount(kind.fedShare, `${kind.id} fed`);
    if (kind.aliveOf20 > 20 || kind.fedShare > 1) faults.push(`${kind.id} lives more than always`);
  }
  if (plan.check !== null) {
    for (const [id, { values }] of Object.entries(plan.check.forecast.quantities)) {
      if (values.some((value) => !(Number.isFinite(value) && value >= 0)))
        faults.push(`forecast of ${id} is broken`);
    }
    for (const { id, heads } of plan.check.forecast.kinds) {
      if (heads.values.some((n) => !(Number.isInteger(n) && n >= 0)))
        faults.push(`forecast heads of ${id} are broken`);
    }
  }
  for (const { unknown, headsIfLow, headsIfHigh } of plan.wouldChange) {
    amount(unknown.weight, `weight of ${unknown.fact}`);
    for (const heads of [headsIfLow, headsIfHigh])
      if (heads !== null) amount(heads, `heads by ${unknown.fact}`);
  }
  return faults;
}

const daysFrom = (from: string, to: string): number =>
  Math.round((Date.parse(`${to.slice(0, 10)}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
