/**
 * The larder's numbers as figures: each with its spread, its formula, what went in and what would change it.
 * docs/model/larder.md has a heading for every formula key.
 */
import type { Figure, WorkingInput } from "../types/figure.ts";
import { figureId } from "../types/figure-id.ts";
import { exact, factInput, linkTo, parametersOf, round3, spreadText } from "../types/link.ts";
import { SHELF_NAME, SHELVES, type ShelfId } from "../types/shelf.ts";
import type { Growth, TankFacts } from "../types/tank.ts";
import type { Larder } from "./larder.ts";
import { latestReading, type ParameterTable } from "./members.ts";
import type { SupplyParts } from "./supply.ts";

export interface FigureScene {
  readonly facts: TankFacts;
  readonly table: ParameterTable;
  readonly larder: Larder;
  /** Parts of the member in the middle of every band. */
  readonly middle: SupplyParts;
  /** What would change a shelf or the whole most, the heaviest first; empty or left out: what usually does is told. */
  readonly heaviest?: Readonly<Record<ShelfId | "total", readonly string[]>>;
}

interface ShelfWorking {
  readonly formulaKey: string;
  readonly formula: string;
  readonly facts: readonly (readonly [keyof TankFacts, string, string])[];
  readonly parameters: readonly string[];
  readonly wouldChange: readonly string[];
}

const FILM_PARAMETERS = [
  ...["epsFilm", "Ik", "kapFilm", "muFilm", "rFilm", "sFilm", "vN", "vP", "KNfilm", "KPfilm"],
  ...["qNfilm", "disl", "grownInDay", "recycled"],
];
const FILM_FORMULA =
  "(growth at the grazed crop - its losses) / (1 + loosened per eaten) x share of the surface grown in x what nitrogen allows";
const DETRITUS_FORMULA =
  "(fish faeces + a fifth of the algae eaten + film sloughed) x share that comes to rest there x share that is food";

const WORKINGS: Readonly<Record<ShelfId, ShelfWorking>> = {
  film_glass: {
    formulaKey: "film",
    formula: `${FILM_FORMULA} x share of the glass not wiped`,
    facts: [
      ["glassM2", "lit glass", "m2"],
      ["parGlass", "light at the glass", "umol m-2 s-1"],
      ["lightHours", "light", "h/d"],
      ["temperatureC", "temperature", "C"],
    ],
    parameters: [...FILM_PARAMETERS, "cropGlass", "unwiped"],
    wouldChange: ["the light at the glass", "how often the glass needs wiping"],
  },
  film_rock: {
    formulaKey: "film",
    formula: FILM_FORMULA,
    facts: [
      ["litRockM2", "lit rock", "m2"],
      ["parRock", "light at the rock", "umol m-2 s-1"],
      ["lightHours", "light", "h/d"],
      ["temperatureC", "temperature", "C"],
    ],
    parameters: [...FILM_PARAMETERS, "cropRock"],
    wouldChange: ["the lit area of rock", "phosphate and nitrate"],
  },
  film_sand: {
    formulaKey: "film",
    formula: FILM_FORMULA,
    facts: [
      ["sandM2", "open sand", "m2"],
      ["parSand", "light at the sand", "umol m-2 s-1"],
      ["lightHours", "light", "h/d"],
      ["temperatureC", "temperature", "C"],
    ],
    parameters: [...FILM_PARAMETERS, "epsSand", "cropRock"],
    wouldChange: ["the open sand", "the light at the sand"],
  },
  hair_algae: {
    formulaKey: "hair-algae",
    formula: "film on rock x share that is young hair algae, more where more is seen",
    facts: [
      ["litRockM2", "lit rock", "m2"],
      ["parRock", "light at the rock", "umol m-2 s-1"],
      ["lightHours", "light", "h/d"],
      ["temperatureC", "temperature", "C"],
    ],
    parameters: ["filShare", ...FILM_PARAMETERS, "cropRock"],
    wouldChange: ["how much hair algae is seen", "the lit area of rock"],
  },
  bubble_algae: {
    formulaKey: "bubble-algae",
    formula: "crop for what is seen x lit rock x growth",
    facts: [["litRockM2", "lit rock", "m2"]],
    parameters: ["bubbleCrop", "bubbleGrowth"],
    wouldChange: ["how much of it is seen"],
  },
  detritus_sand: {
    formulaKey: "detritus",
    formula: DETRITUS_FORMULA,
    facts: [
      ["feedGPerDay", "feed", "g/d"],
      ["fishWetG", "fish", "g wet"],
      ["sandM2", "open sand", "m2"],
    ],
    parameters: ["fC", "detSand", "detFood", "sFilm"],
    wouldChange: ["the feed, weighed", "the open sand"],
  },
  detritus_crevice: {
    formulaKey: "detritus",
    formula: DETRITUS_FORMULA,
    facts: [
      ["feedGPerDay", "feed", "g/d"],
      ["fishWetG", "fish", "g wet"],
      ["litRockM2", "lit rock", "m2"],
    ],
    parameters: ["fC", "detCrevice", "detFood", "sFilm"],
    wouldChange: ["the feed, weighed", "the lit area of rock"],
  },
  uneaten_feed: {
    formulaKey: "leftovers",
    formula: "feed x its carbon x share not eaten x share found before it decays, plus food given by hand",
    facts: [
      ["feedGPerDay", "feed", "g/d"],
      ["feedCMgPerG", "carbon of the feed", "mg/g"],
      ["uneatenShare", "share not eaten", "of 1"],
      ["handFedMgCPerDay", "fed by hand", "mg C/d"],
    ],
    parameters: ["leftReach", "rationMax"],
    wouldChange: ["a look two minutes after feeding", "the feed, weighed"],
  },
  carrion: {
    formulaKey: "carrion",
    formula: "fish weight x share that dies unfound a day x carbon of fish, plus the crew's own dead",
    facts: [["fishWetG", "fish", "g wet"]],
    parameters: ["fishLost", "fishCperG"],
    wouldChange: ["losses found, counted"],
  },
};

/** Supply of one shelf, mg C a day. */
export function supplyFigure(shelf: ShelfId, scene: FigureScene): Figure {
  const working = WORKINGS[shelf];
  return {
    id: figureId.supply(shelf),
    label: `${SHELF_NAME[shelf]}: supply`,
    spread: scene.larder.shelves[shelf].supply,
    unit: "mg C/d",
    working: {
      formulaKey: `larder.md#${working.formulaKey}`,
      formula: working.formula,
      inputs: [
        ...working.facts.map(([field, label, unit]) => factInput(scene.facts, field, label, unit)),
        ...middleInputs(shelf, scene),
      ],
      parameters: parametersOf([...working.parameters, ...usualNutrients(shelf, scene.facts)], scene.table),
      animals: [],
      confidence: "computed",
      wouldChange: changing(shelf, scene),
    },
  };
}

/** What at least 15 of 20 runs reach. */
export function pessimisticFigure(shelf: ShelfId, scene: FigureScene): Figure {
  return {
    id: figureId.pessimistic(shelf),
    label: `${SHELF_NAME[shelf]}: what 15 of 20 runs reach`,
    spread: exact(scene.larder.shelves[shelf].pessimistic),
    unit: "mg C/d",
    working: {
      formulaKey: "larder.md#pessimistic",
      formula: "the supply that a quarter of the runs fall short of",
      inputs: [linkTo(supplyFigure(shelf, scene), "supply over the runs")],
      parameters: [],
      animals: [],
      confidence: "computed",
      wouldChange: changing(shelf, scene),
    },
  };
}

/** The whole larder, run by run. */
export function totalFigure(scene: FigureScene): Figure {
  return {
    id: figureId.total(),
    label: "the whole larder",
    spread: scene.larder.total,
    unit: "mg C/d",
    working: {
      formulaKey: "larder.md#total",
      formula: "all shelves of one run added up, then the band over the runs",
      inputs: SHELVES.map((shelf) => linkTo(supplyFigure(shelf, scene), SHELF_NAME[shelf])),
      parameters: [],
      animals: [],
      confidence: "computed",
      wouldChange: measured("total", scene) ?? ["the light", "the lit area of rock"],
    },
  };
}

/** Facts that go with most of the spread over the runs; null where none stands out. */
function measured(of: ShelfId | "total", { heaviest }: FigureScene): readonly string[] | null {
  const labels = heaviest?.[of] ?? [];
  return labels.length === 0 ? null : labels.slice(0, 2);
}

export const changing = (shelf: ShelfId, scene: FigureScene): readonly string[] =>
  measured(shelf, scene) ?? WORKINGS[shelf].wouldChange;

/** Stand-ins for readings that nobody took, where the shelf grows on them. */
function usualNutrients(shelf: ShelfId, { readings }: TankFacts): string[] {
  if (!GROWN.includes(shelf)) return [];
  return [
    ...(latestReading(readings, "no3_mg_n_per_l") === null ? ["no3Usual"] : []),
    ...(latestReading(readings, "po4_mg_p_per_l") === null ? ["po4Usual"] : []),
  ];
}
const GROWN: readonly ShelfId[] = ["film_glass", "film_rock", "film_sand", "hair_algae"];

function middleInputs(shelf: ShelfId, { middle, facts }: FigureScene): WorkingInput[] {
  const at = (label: string, value: number, unit: string): WorkingInput => ({
    label: `${label}, in the middle run`,
    value: `${round3(value)} ${unit}`,
    origin: "derived",
  });
  const grown = at("share grown in", middle.grownIn, "of 1");
  switch (shelf) {
    case "film_glass":
    case "film_rock":
    case "film_sand":
      return [
        nutrientInput(facts, "no3_mg_n_per_l", "nitrate nitrogen"),
        nutrientInput(facts, "po4_mg_p_per_l", "phosphate phosphorus"),
        at("grazed crop left standing", middle.residue[shelf], "mg C"),
        at("growth at that crop", middle.growth[shelf], "mg C/d"),
        at("its losses", middle.loss[shelf], "mg C/d"),
        grown,
        at("share that nitrogen allows", middle.nutrientCap, "of 1"),
      ];
    case "hair_algae":
      return [
        nutrientInput(facts, "no3_mg_n_per_l", "nitrate nitrogen"),
        nutrientInput(facts, "po4_mg_p_per_l", "phosphate phosphorus"),
        at("film on rock", middle.supply.film_rock, "mg C/d"),
        seenInput(facts, "hair_algae", "hair algae seen"),
      ];
    case "bubble_algae":
      return [seenInput(facts, "bubble_algae", "bubble algae seen")];
    case "detritus_sand":
    case "detritus_crevice":
      return [at("all new detritus", middle.detritus, "mg C/d")];
    default:
      return [];
  }
}

function nutrientInput(
  facts: TankFacts,
  quantity: "no3_mg_n_per_l" | "po4_mg_p_per_l",
  label: string,
): WorkingInput {
  const reading = latestReading(facts.readings, quantity);
  if (reading === null) return { label, value: "no reading: what tanks usually have", origin: "assumed" };
  const below = reading.censored === "below" ? ", below what the kit can tell" : "";
  return {
    label: `${label}${reading.on === null ? "" : `, read ${reading.on}`}`,
    value: `${spreadText(reading.value, "mg/L")}${below}`,
    origin: "stated",
    figure: figureId.reading(quantity),
  };
}

function seenInput({ sightings }: TankFacts, growth: Growth, label: string): WorkingInput {
  const seen = sightings[growth];
  return seen === undefined
    ? { label, value: "nobody said: as usual", origin: "assumed" }
    : { label, value: seen, origin: "stated" };
}

/** Symbols of the parameters that a shelf's supply is drawn from. */
export const parametersOfShelf = (shelf: ShelfId): readonly string[] => WORKINGS[shelf].parameters;
