/**
 * How near a daybook's looks could bring anybody: about each twin's truth, what every unknown does to what is looked at
 * (slopes.ts), the bands that the unknowns have before, and the errors of the looks bound what can be known of the
 * nitrogen that feed brings and of the weeks ahead. The bound is that of a tank that answers in proportion to small
 * pushes: near the truth, not everywhere. `node checks/twins/ceiling.ts [TANKS] [FIRST_SEED]`.
 */
import { JUDGEMENT } from "../../src/engine/calibration/judgement.ts";
import { cholesky, dot, solve, zeros } from "../../src/engine/calibration/matrix.ts";
import { USUAL } from "./habits.ts";
import { MEASURED } from "./measures.ts";
import { NEAR_ZERO, SERIES, type Series, type Slopes, slopesOf } from "./slopes.ts";
import { DAYBOOK_DAYS } from "./tank.ts";

/** Days between looks at each series (none: never), errors, and what is known besides. */
interface Looks {
  readonly is: string;
  readonly every: Readonly<Partial<Record<Series, number>>>;
  /** Times the usual errors; and whether kits and eye add nothing of their own. */
  readonly errors: number;
  readonly unbiased: boolean;
  /** Whether the model may be wrong for weeks, as calibration allows it to be. */
  readonly modelWrong?: boolean;
  /** Times either way within which the feed is known; left out: by the pinch. */
  readonly feedWithin?: number;
  /** Unknowns that are known. */
  readonly known: readonly string[];
}

const WEEKLY = { no3: 7, po4: 7, film_glass: 7, film_rock: 7 } as const;
const USUAL_LOOKS = { ...WEEKLY, tan: 14, hair_algae: 14, film_sand: 14, detritus_sand: 14 } as const;
const DAILY = Object.fromEntries(SERIES.map((series) => [series, 1]));
const usual = { every: USUAL_LOOKS, errors: 1, unbiased: false, known: [] } as const;
const exact = { every: DAILY, errors: 0.1, unbiased: true, known: [] } as const;
const GAS = ["dRock", "dSand", "Kdn"];
const ROCK = ["capRock", "kRock", "KRock"];
const FEED = ["feedNMgPerG", "feedPMgPerG"];
const FISH = ["uneatenShare", "fishWetG", "rationMax", "fN", "fP", "gN", "gP", "oN", "maintFeed", "endoN"];
const ALGAE = [
  ...["epsFilm", "epsSand", "epsFil", "Ik", "kapFilm", "kapFil", "muFilm", "muFil", "rFilm", "rFil"],
  ...["sFilm", "sFil", "BsFilm", "BsFil", "qNfilm", "qPfilm", "qNfil", "qPfil", "vN", "vP", "lamp"],
];
const SCENARIOS: readonly Looks[] = [
  { ...usual, is: "nothing looked at", every: {} },
  { ...usual, is: "the usual looks" },
  { ...usual, is: "the usual looks, the model as wrong as calibration allows", modelWrong: true },
  { ...usual, is: "without phosphate", every: { ...USUAL_LOOKS, po4: 0 } },
  { ...usual, is: "without film, algae and dirt", every: { no3: 7, po4: 7, tan: 14 } },
  { ...usual, is: "nitrate and phosphate twice as often", every: { ...USUAL_LOOKS, no3: 3.5, po4: 3.5 } },
  { ...usual, is: "nitrate and phosphate every day", every: { ...USUAL_LOOKS, no3: 1, po4: 1 } },
  { ...usual, is: "kits that add nothing of their own", unbiased: true },
  { ...usual, is: "what turns to gas known", known: GAS },
  { ...usual, is: "what rock takes of phosphate known", known: ROCK },
  { ...usual, is: "what the feed holds known", known: FEED },
  { ...usual, is: "what fish leave and keep known", known: FISH },
  { ...usual, is: "growth and make-up of algae known", known: ALGAE },
  { ...usual, is: "all of these known", known: [...GAS, ...ROCK, ...FEED, ...FISH, ...ALGAE] },
  { ...usual, is: "everything every day", every: DAILY },
  { ...exact, is: "everything every day, a tenth of the errors, nothing added" },
  { ...usual, is: "the feed known within a quarter", feedWithin: 1.25 },
  { ...usual, is: "the feed weighed for a week: known within a tenth", feedWithin: 1.1 },
];
/** What is known is known about so well, of a standard normal score. */
const KNOWN_WITHIN = 0.1;

/** Standard deviation of one look, of the usual kit and eye. */
function errorOf(series: Series, value: number): number {
  const shown = Math.exp(value);
  if (series === "tan") return Math.max(0.1, 0.05 / shown, 0.058 / shown);
  if (series === "no3") return Math.hypot(0.2, 0.13 / shown);
  if (series === "po4") return Math.max(0.1, 0.0072 / shown);
  return 0.58;
}
const biasOf = (series: Series): number =>
  series in NEAR_ZERO ? 0.1 : series === "detritus_sand" ? 0.6 : 0.3;
const EYES: Readonly<Partial<Record<Series, string>>> = {
  film_glass: "film",
  film_rock: "film",
  film_sand: "film",
};

/** Standard deviations as the looks leave them: of the logarithm of what comes in, and of each quantity ahead. */
function spreadsLeft({ names, value, slope, inflow, ahead }: Slopes, looks: Looks): number[] {
  // What each kit and eye adds is an unknown more.
  const adders = [...new Set(SERIES.map((series) => EYES[series] ?? series))];
  const size = names.length + adders.length;
  const precision = zeros(size, size);
  for (let k = 0; k < size; k += 1) precision[k]![k] = 1;
  for (const known of looks.known) {
    const k = names.indexOf(known);
    if (k < 0) throw new RangeError(`No unknown "${known}"`);
    precision[k]![k] = 1 / KNOWN_WITHIN ** 2;
  }
  if (looks.feedWithin !== undefined) {
    const k = names.indexOf("feedGPerDay");
    precision[k]![k] = (Math.log(USUAL.feedWithin) / Math.log(looks.feedWithin)) ** 2;
  }
  for (const series of SERIES) {
    const every = looks.every[series] ?? 0;
    if (every === 0) continue;
    const seen: { day: number; row: Float64Array; error: number }[] = [];
    for (let at = 4; at <= DAYBOOK_DAYS; at += every) {
      const day = Math.floor(at) - (DAYBOOK_DAYS + 1 - value[series].length);
      if (day < 0) continue;
      const row = new Float64Array(size);
      row.set(slope[series][day]!);
      row[names.length + adders.indexOf(EYES[series] ?? series)] = looks.unbiased ? 0 : biasOf(series);
      seen.push({ day, row, error: looks.errors * errorOf(series, value[series][day]!) });
    }
    // What the model may get wrong for weeks is shared by the looks of a series.
    const wrong = looks.modelWrong === true ? JUDGEMENT.modelError[series] ** 2 : 0;
    const ofSeries = cholesky(
      seen.map((a, i) =>
        Float64Array.from(
          seen,
          (b, j) =>
            wrong * Math.exp(-Math.abs(a.day - b.day) / JUDGEMENT.modelErrorDays) +
            (i === j ? a.error ** 2 : 0),
        ),
      ),
    );
    for (let i = 0; i < size; i += 1) {
      const weights = solve(
        ofSeries,
        Float64Array.from(seen, ({ row }) => row[i]!),
      );
      for (const [k, { row }] of seen.entries()) {
        if (weights[k] === 0) continue;
        for (let j = 0; j < size; j += 1) precision[i]![j] = precision[i]![j]! + weights[k]! * row[j]!;
      }
    }
  }
  const factor = cholesky(precision);
  return [inflow, ...MEASURED.map((id) => ahead[id])].map((row) => {
    const wanted = new Float64Array(size);
    wanted.set(row);
    return Math.sqrt(dot(wanted, solve(factor, wanted)));
  });
}

/** Chance below z, to seven digits (Abramowitz and Stegun 26.2.17). */
function normalCdf(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    (Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI)) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z > 0 ? 1 - tail : tail;
}

/** Share of truths within 25 % of the middle, of a logarithm so far spread. */
const within = (sd: number): number => normalCdf(Math.log(1 / 0.75) / sd) - normalCdf(-Math.log(1.25) / sd);
const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

/** Mean distance from the middle, of a normal so far spread. */
const distance = (sd: number): number => Math.sqrt(2 / Math.PI) * sd;

if (process.argv[1] === import.meta.filename) {
  const [tanks = "20", first = "1"] = process.argv.slice(2);
  const left = SCENARIOS.map((): number[][] => []);
  for (let seed = Number(first); seed < Number(first) + Number(tanks); seed += 1) {
    const slopes = slopesOf(seed);
    for (const [i, looks] of SCENARIOS.entries()) left[i]!.push(spreadsLeft(slopes, looks));
  }
  console.log(`| looks | inflow within 25 % | spread of it | ${MEASURED.join(" | ")} |`);
  for (const [i, { is }] of SCENARIOS.entries()) {
    const inflow = left[i]!.map(([sd]) => sd!);
    const ahead = MEASURED.map((_, k) => mean(left[i]!.map((sds) => distance(sds[k + 1]!))).toFixed(2));
    console.log(
      `| ${is} | ${(100 * mean(inflow.map(within))).toFixed(0)} % | ${mean(inflow).toFixed(2)} | ${ahead.join(" | ")} |`,
    );
  }
}
