import { resolve } from "node:path";
import { expect, test } from "vitest";
import { checkFacts } from "./check.ts";
import { catalogueModule } from "./emit.ts";
import type { Problem } from "./problem.ts";
import { parseFact, type RawFacts, readFacts } from "./read.ts";

const real = readFacts(resolve(import.meta.dirname, "../../facts"));

/** The value at a dotted path of a copy, for breaking it. */
// biome-ignore lint/suspicious/noExplicitAny: a test breaks facts in ways their types forbid
type Loose = any;

/** Problems of a copy of the real facts after `breakIt`. */
function problemsAfter(file: string, breakIt: (value: Loose, all: RawFacts) => void): Problem[] {
  const copy: RawFacts = structuredClone(real.facts);
  breakIt(copy.get(file), copy);
  return checkFacts(copy).problems;
}

const TROCHUS = "animals/trochus-snail.yaml";

test("the real facts pass, with 73 animals", () => {
  expect(real.problems).toEqual([]);
  const { facts, problems } = checkFacts(real.facts);
  expect(problems).toEqual([]);
  expect(facts.animals.size).toBe(73);
});

test("the generated module is the same each time", () => {
  const again = readFacts(resolve(import.meta.dirname, "../../facts"));
  expect(catalogueModule(checkFacts(again.facts).facts)).toBe(catalogueModule(checkFacts(real.facts).facts));
});

const broken: readonly [
  name: string,
  file: string,
  field: string,
  says: RegExp,
  breakIt: (value: Loose) => void,
][] = [
  ["a bad diet sum", TROCHUS, "diet", /sum to 0.9/, (a) => (a.diet.film_glass.value = 0.15)],
  ["a reversed range", TROCHUS, "carbon.intake", /out of order/, (a) => (a.carbon.intake.low = 20)],
  ["a missing unit", TROCHUS, "body.live_mass.unit", /unit is missing/, (a) => delete a.body.live_mass.unit],
  ["a wrong unit", TROCHUS, "body.live_mass.unit", /expected "g"/, (a) => (a.body.live_mass.unit = "kg")],
  [
    "a missing source",
    TROCHUS,
    "tank.min_age.source",
    /source is missing/,
    (a) => delete a.tank.min_age.source,
  ],
  ["an empty source", TROCHUS, "tank.min_age.source", />=1/, (a) => (a.tank.min_age.source = [])],
  [
    "missing evidence",
    TROCHUS,
    "diet.film_rock.evidence",
    /missing/,
    (a) => delete a.diet.film_rock.evidence,
  ],
  [
    "unknown evidence",
    TROCHUS,
    "diet.film_rock.evidence",
    /one of/,
    (a) => (a.diet.film_rock.evidence = "lore"),
  ],
  [
    "an unknown source",
    TROCHUS,
    "tank.min_age.source",
    /unknown source nobody-1900/,
    (a) => {
      a.tank.min_age.source = ["nobody-1900"];
    },
  ],
  [
    "an unknown predator",
    TROCHUS,
    "eaten_by.sea-dragon",
    /no such animal/,
    (a) => {
      a.eaten_by["sea-dragon"] = a.eaten_by.triggerfish;
    },
  ],
  [
    "a one-way predator",
    TROCHUS,
    "eaten_by.yellow-tang",
    /says nothing/,
    (a) => {
      a.eaten_by["yellow-tang"] = a.eaten_by.triggerfish;
    },
  ],
  [
    "another likelihood on the other side",
    TROCHUS,
    "eaten_by.triggerfish",
    /says likely/,
    (a) => {
      a.eaten_by.triggerfish.value = "possible";
    },
  ],
  [
    "a likely eater without the risk",
    "animals/triggerfish.yaml",
    "risks.eats_snails",
    /missing/,
    (a) => {
      delete a.risks.eats_snails;
    },
  ],
  ["a wrong cool flag", TROCHUS, "water.cool_water", /28 °C/, (a) => (a.water.cool_water.value = true)],
  ["an unknown risk", TROCHUS, "risks", /explodes/, (a) => (a.risks.explodes = a.risks.may_starve)],
  ["an unreachable shelf", TROCHUS, "diet.film_glass", /out of reach/, (a) => (a.reach.glass.value = 0)],
  ["temperatures out of order", TROCHUS, "water.temperature", /order/, (a) => (a.water.temperature.min = 25)],
  ["a yearly loss of 1", TROCHUS, "life.annual_loss", /reaches 1/, (a) => (a.life.annual_loss.high = 1)],
  [
    "a loner in a group",
    "animals/tiger-cowry.yaml",
    "company.max_per_tank",
    /must be 1/,
    (a) => {
      a.company.max_per_tank.value = 3;
    },
  ],
  [
    "a hermit without shells",
    "animals/blue-leg-hermit.yaml",
    "needs.empty_shells",
    /hermits/,
    (a) => {
      a.needs.empty_shells = null;
    },
  ],
  [
    "a jumper without a lid",
    "animals/lawnmower-blenny.yaml",
    "needs.lid",
    /jumps/,
    (a) => {
      a.needs.lid.value = false;
    },
  ],
  [
    "a sentence with another figure",
    TROCHUS,
    "only_if.0",
    /says 35 days/,
    (a) => (a.tank.min_age.value = 40),
  ],
  ["a sentence of another form", TROCHUS, "only_if.0", /./, (a) => (a.only_if[0] = "Buy it.")],
  ["a misspelt field", TROCHUS, "body", /adult_sise/, (a) => (a.body.adult_sise = a.body.adult_size)],
  ["a missing field", TROCHUS, "reach.rock", /rock is missing/, (a) => delete a.reach.rock],
  [
    "a range of no row",
    "parameters/model-decay.yaml",
    "kW.range",
    /no parameter dec.fed_k/,
    (family) => {
      family.kW.range = "dec.fed_k";
    },
  ],
  [
    "a row of another family",
    "parameters/feed.yaml",
    "dec.fed_k",
    /family/,
    (family) => {
      family["dec.fed_k"] = family["feed.pellet.protein"];
    },
  ],
  [
    "a row without unit",
    "parameters/feed.yaml",
    "feed.pellet.P.spread.unit",
    /missing/,
    (family) => {
      delete family["feed.pellet.P"].spread.unit;
    },
  ],
  [
    "a rival of no source",
    "parameters/model-fish.yaml",
    "u0.rivals.0.source",
    /unknown source/,
    (family) => {
      family.u0.rivals[0].source = "nobody-1900";
    },
  ],
];

test.each(broken)("%s is caught, naming file and field", (_, file, field, says, breakIt) => {
  const problems = problemsAfter(file, breakIt);
  const found = problems.find((problem) => problem.file === file && problem.field === field);
  expect(found, JSON.stringify(problems)).toBeDefined();
  expect(found?.wrong).toMatch(says);
  expect(found?.fix).toMatch(/\.$/);
});

test("an id taken twice is caught, in an animal and in a parameter", () => {
  const twice = problemsAfter(TROCHUS, (animal, all) =>
    all.set("animals/trochus-two.yaml", structuredClone(animal)),
  );
  expect(twice.map(({ file, wrong }) => `${file}: ${wrong}`)).toContain(
    "animals/trochus-two.yaml: the id trochus-snail is taken by animals/trochus-snail.yaml",
  );

  const problems: Problem[] = [];
  parseFact("parameters/x.yaml", "a: 1\na: 2\n", new Map(), problems);
  expect(problems).toMatchObject([
    { file: "parameters/x.yaml", field: "line 2", wrong: "an id or field stands twice" },
  ]);
});

test("YAML that cannot be read is a problem with its line, not a crash", () => {
  const problems: Problem[] = [];
  parseFact("animals/x.yaml", "id: x\nnames: { common: [ }\n", new Map(), problems);
  expect(problems[0]).toMatchObject({ file: "animals/x.yaml", field: "line 2" });
});
