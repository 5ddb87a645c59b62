/**
 * Reads a scenario from JSON: everything the balance needs is there, named as it should be and a finite number,
 * or the message says which key is not.
 */
import type { EventKind, TankEvent } from "./events.ts";
import { INPUT_SYMBOLS, type Inputs } from "./inputs.ts";
import { PARAMETER_SYMBOLS, type ParameterValues } from "./parameters.ts";
import { NICHES, POOLS } from "./pools.ts";
import type { CrewSpecies } from "./species.ts";
import type { Scenario } from "./trace.ts";

/** What is wrong, with the key it is wrong at. */
export class ScenarioError extends Error {
  readonly key: string;
  constructor(key: string, rule: string, received: unknown) {
    const shown = received === undefined ? "is missing" : `received ${JSON.stringify(received) ?? "nothing"}`;
    super(`${key}: ${rule}; ${received === undefined ? "it " : ""}${shown}`);
    this.key = key;
  }
}

type Field = "number" | "number?" | "boolean" | "species" | "pool";

const COUNT_OF_KIND = { species: "species", count: "number" } as const;
const EVENT_FIELDS: Readonly<Record<Exclude<EventKind, "set">, Readonly<Record<string, Field>>>> = {
  waterChange: {
    ...{ fraction: "number", newNO3N: "number?", newPO4P: "number?", newTAN: "number?", siphon: "number?" },
  },
  wipeGlass: { fraction: "number", removed: "number" },
  removeFilaments: { fraction: "number" },
  harvestRefugium: { fraction: "number" },
  changeFilter: {},
  renewSorbent: {},
  addAnimals: { ...COUNT_OF_KIND, condition: "number?" },
  removeAnimals: COUNT_OF_KIND,
  crewDeath: { ...COUNT_OF_KIND, found: "boolean" },
  fishDeath: { grams: "number", found: "boolean" },
  carrion: { mgC: "number", mgN: "number", mgP: "number" },
  dose: { pool: "pool", mg: "number" },
  stirSand: { fraction: "number" },
};
const SPECIES_NUMBERS = ["Imax", "R", "eta", "a", "eFull", "beta", "m0", "bC", "bN", "bP"] as const;
/** Inputs that something is divided by. */
const ABOVE_NOUGHT: ReadonlySet<string> = new Set(["V", "Ag", "Ar", "Ac", "macMax"]);
const MAY_BE_BELOW_NOUGHT: ReadonlySet<string> = new Set(["T"]);

/** @throws ScenarioError at the first key that is missing, unknown or not what it should be */
export function readScenario(value: unknown, at: string): Scenario {
  const given = asRecord(value, at);
  const days = numberAt(given, "days", at);
  if (!Number.isInteger(days) || days < 0) throw new ScenarioError(`${at}.days`, "must be whole days", days);
  const species = asList(given["species"], `${at}.species`).map((kind, i) =>
    readSpecies(kind, `${at}.species[${i}]`),
  );
  const ids = species.map(({ id }) => id);
  return {
    id: textAt(given, "id", at),
    days,
    tank: readInputs(given["tank"], `${at}.tank`),
    parameters: numbersOf(PARAMETER_SYMBOLS, given["parameters"], `${at}.parameters`) as ParameterValues,
    species,
    initial: readInitial(given["initial"], ids, `${at}.initial`),
    events: asList(given["events"], `${at}.events`).map((event, i) =>
      readEvent(event, ids, `${at}.events[${i}]`),
    ),
  };
}

function readInputs(value: unknown, at: string): Inputs {
  const inputs = numbersOf(INPUT_SYMBOLS, value, at) as Inputs;
  for (const symbol of INPUT_SYMBOLS) checkInput(symbol, inputs[symbol], at);
  return inputs;
}

function checkInput(symbol: string, value: number, at: string): void {
  if (ABOVE_NOUGHT.has(symbol) && value <= 0)
    throw new ScenarioError(`${at}.${symbol}`, "must be above 0", value);
  if (value < 0 && !MAY_BE_BELOW_NOUGHT.has(symbol)) {
    throw new ScenarioError(`${at}.${symbol}`, "must not be below 0", value);
  }
}

function readSpecies(value: unknown, at: string): CrewSpecies {
  const given = asRecord(value, at);
  const diet = asRecord(given["diet"], `${at}.diet`);
  for (const niche of Object.keys(diet)) {
    numberAt(diet, niche, `${at}.diet`);
    if (!(NICHES as readonly string[]).includes(niche)) {
      throw new ScenarioError(`${at}.diet.${niche}`, `must be one of ${NICHES.join(", ")}`, niche);
    }
  }
  if (!Object.values(diet).some((share) => Number(share) > 0)) {
    throw new ScenarioError(`${at}.diet`, "must hold a food with a share above 0", diet);
  }
  const numbers = numbersOf(SPECIES_NUMBERS, given, at) as Omit<CrewSpecies, "id" | "diet">;
  return { id: textAt(given, "id", at), diet: diet as CrewSpecies["diet"], ...numbers };
}

function readInitial(value: unknown, ids: readonly string[], at: string): Record<string, number> {
  const given = asRecord(value, at);
  const known = new Set<string>([...POOLS, ...ids.map((id) => `n.${id}`), ...ids.map((id) => `E.${id}`)]);
  for (const name of Object.keys(given)) {
    if (!known.has(name)) throw new ScenarioError(`${at}.${name}`, "must be a pool, n.kind or E.kind", name);
    if (numberAt(given, name, at) < 0)
      throw new ScenarioError(`${at}.${name}`, "must not be below 0", given[name]);
  }
  return given as Record<string, number>;
}

function readEvent(value: unknown, ids: readonly string[], at: string): TankEvent {
  const given = asRecord(value, at);
  const kind = textAt(given, "kind", at);
  if (numberAt(given, "t", at) < 0) throw new ScenarioError(`${at}.t`, "must not be below 0", given["t"]);
  if (kind === "set") {
    for (const key of Object.keys(given).filter((name) => name !== "t" && name !== "kind")) {
      if (!(INPUT_SYMBOLS as readonly string[]).includes(key)) {
        throw new ScenarioError(`${at}.${key}`, `must be an input: ${INPUT_SYMBOLS.join(", ")}`, key);
      }
      checkInput(key, numberAt(given, key, at), at);
    }
    return given as unknown as TankEvent;
  }
  const fields = EVENT_FIELDS[kind as keyof typeof EVENT_FIELDS];
  if (fields === undefined) {
    const kinds = [...Object.keys(EVENT_FIELDS), "set"].join(", ");
    throw new ScenarioError(`${at}.kind`, `must be one of ${kinds}`, kind);
  }
  for (const [name, field] of Object.entries(fields)) checkField(given, name, field, ids, at);
  return given as unknown as TankEvent;
}

function checkField(
  given: Readonly<Record<string, unknown>>,
  name: string,
  field: Field,
  ids: readonly string[],
  at: string,
): void {
  const value = given[name];
  if (field === "number?" && value === undefined) return;
  if (field === "number" || field === "number?") {
    const number = numberAt(given, name, at);
    if (number < 0) throw new ScenarioError(`${at}.${name}`, "must not be below 0", number);
    const isShare = name === "fraction" || name === "removed" || name === "siphon";
    if (isShare && number > 1) throw new ScenarioError(`${at}.${name}`, "must be at most 1", number);
  } else if (field === "boolean") {
    if (typeof value !== "boolean") throw new ScenarioError(`${at}.${name}`, "must be true or false", value);
  } else {
    const allowed: readonly string[] = field === "pool" ? POOLS : ids;
    const text = textAt(given, name, at);
    if (!allowed.includes(text)) {
      const rule = field === "pool" ? "must be a pool" : "must be one of the scenario's species";
      throw new ScenarioError(`${at}.${name}`, rule, text);
    }
  }
}

function asRecord(value: unknown, at: string): Readonly<Record<string, unknown>> {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    throw new ScenarioError(at, "must be an object", value);
  }
  return value as Record<string, unknown>;
}

function asList(value: unknown, at: string): readonly unknown[] {
  if (!Array.isArray(value)) throw new ScenarioError(at, "must be a list", value);
  return value;
}

function textAt(given: Readonly<Record<string, unknown>>, name: string, at: string): string {
  const value = given[name];
  if (typeof value !== "string" || value === "")
    throw new ScenarioError(`${at}.${name}`, "must be a text", value);
  return value;
}

function numberAt(given: Readonly<Record<string, unknown>>, name: string, at: string): number {
  const value = given[name];
  if (typeof value !== "number" || !Number.isFinite(value)) {
    throw new ScenarioError(`${at}.${name}`, "must be a finite number", value);
  }
  return value;
}

function numbersOf(names: readonly string[], value: unknown, at: string): Record<string, number> {
  const given = asRecord(value, at);
  return Object.fromEntries(names.map((name) => [name, numberAt(given, name, at)]));
}
