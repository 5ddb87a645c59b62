/**
 * Animals that come from another tank of the keeper's: what its own daybook says against newcomers, and what to mind.
 * Only what holds for any newcomer is judged: tests, deaths, medicines, bare glass. Conditions of one wave of the plan
 * (who eats from which shelf) stay with that wave; they hang on the plan, which this does not work out.
 */
import { animalById } from "../../catalogue/index.ts";
import type { Message } from "../../contract/quantity/outcome.ts";
import { figure } from "../../contract/quantity/show.ts";
import { GATE_WORDS } from "../../engine/stocking/gates.ts";
import type { AnimalGroup } from "../../engine/types/animal.ts";
import { testsCondition } from "../bench/gate-animals.ts";
import { stopCondition } from "../bench/gate-stop.ts";
import { type KnownOfTank, valuesOf } from "../bench/known.ts";
import { coursesOf } from "../medicines/courses.ts";
import { MEDICINE_GROUP_OF } from "../medicines/words.ts";
import { dateWords } from "../words.ts";
import { apartIn } from "./quarantine.ts";

export interface MovingTank {
  readonly name: string;
  readonly known: KnownOfTank;
}

/** Days between the two tests that a gate asks for; as the first wave of a plan does. */
const TESTS_APART = { days: 3 } as const;
/** A step in salinity that every group bears at once, psu: the least of the rests in model/arrivals.md. */
const NO_STEP_PSU = 0.5;

/** Why nobody should come to this tank now, in sentences; null where nothing says so. `animal`: id in the catalogue. */
export function whyNotNow({ name, known }: MovingTank, animal: string | null): string | null {
  const reasons = [
    ...runningMedicines(known, animal),
    ...stopsOf(known),
    ...[testsCondition(known, TESTS_APART)].flatMap(({ state, because }) =>
      state === "not_met" ? [because] : [],
    ),
  ];
  return reasons.length === 0 ? null : `${name}: ${reasons.join(" ")}`;
}

/** What stops either kind of wave, each reason once. */
function stopsOf(known: KnownOfTank): string[] {
  const found = [GATE_WORDS.stopGrazers, GATE_WORDS.stopOthers]
    .map((text) => stopCondition(text, known))
    .flatMap(({ state, because }) => (state === "met" ? [because] : []));
  return found.filter((words, i) => !found.some((other, j) => j !== i && other.includes(words) && j < i));
}

/** In the water now, and not known to be borne. */
function runningMedicines({ facts, record, today }: KnownOfTank, animal: string | null): string[] {
  const group: AnimalGroup | undefined = animal === null ? undefined : animalById.get(animal)?.group;
  return coursesOf(facts.medicines, record, today).flatMap(({ typed, medicine, endedOn }) => {
    const effect =
      medicine === null || group === undefined ? "unknown" : medicine.groups[MEDICINE_GROUP_OF[group]].value;
    if (endedOn !== null || effect === "bears") return [];
    const words = { kills: "it kills them", harms: "it harms them", risky: "it may harm them" } as const;
    return [
      `${typed} is in the water: ${effect === "unknown" ? "what it does to them is not known" : words[effect]}.`,
    ];
  });
}

/** What to mind as they go in, most serious first. `animal`: id in the catalogue, null for the keeper's own. */
export function movingSaid(giving: MovingTank, receiving: MovingTank, animal: string | null): Message[] {
  return [
    ...apartSaid(giving, receiving, animal),
    { kind: "ECHO", text: acclimationWords(giving, receiving) },
    ...openTests(receiving),
    {
      kind: "ECHO",
      text: `Losses of their first 72 hours in ${receiving.name} count as the move's: they teach nothing of that tank`,
    },
  ];
}

/** Quarantine and fallow times that a move would end or break. */
function apartSaid(giving: MovingTank, receiving: MovingTank, animal: string | null): Message[] {
  const fish = animal !== null && animalById.get(animal)?.group === "fish";
  const inReceiving = apartIn(receiving.known.record).flatMap(({ what, words, until }): Message[] => {
    if (what === "quarantine") {
      const text = `${receiving.name} holds ${words || "animals"} in quarantine until ${dateWords(until)}: its days begin anew for all, newcomers too`;
      return [{ kind: "UNUSUAL", text }];
    }
    const text = fish
      ? `${receiving.name} lies fallow until ${dateWords(until)}: a fish ends that, and its days begin anew`
      : `${receiving.name} lies fallow until ${dateWords(until)}: bring none of the other tank's water with them`;
    return [{ kind: fish ? "DANGER" : "UNUSUAL", text }];
  });
  const inGiving = apartIn(giving.known.record).flatMap(({ what, words, until }): Message[] => {
    if (what === "fallow") return [];
    const text = `${giving.name} holds ${words || "animals"} in quarantine until ${dateWords(until)}: whatever it has goes along`;
    return [{ kind: "DANGER", text }];
  });
  return [...inReceiving, ...inGiving];
}

function acclimationWords(giving: MovingTank, receiving: MovingTank): string {
  const [from, into] = [lastSalinity(giving), lastSalinity(receiving)];
  const none = "and bring none of the old water";
  if (from === null || into === null) {
    return `Test salinity and temperature in both tanks, acclimate as with any arrival, ${none}`;
  }
  const gap = Math.abs(from - into);
  const waters = `Salinity last read ${figure(from)} psu in ${giving.name}, ${figure(into)} in ${receiving.name}`;
  return gap <= NO_STEP_PSU
    ? `${waters}: no step; float for the temperature, ${none}`
    : `${waters}: acclimate by steps as with any arrival, ${none}`;
}

const lastSalinity = ({ known }: MovingTank): number | null =>
  valuesOf(known, "salinity_psu").at(-1)?.central ?? null;

/** Tests that nobody made are said; they hold nobody up who has to move an animal. */
function openTests({ name, known }: MovingTank): Message[] {
  const { state, because } = testsCondition(known, TESTS_APART);
  return state === "cannot_tell"
    ? [{ kind: "ECHO", text: `Whether ${name} is ready can't be told: ${because}` }]
    : [];
}
