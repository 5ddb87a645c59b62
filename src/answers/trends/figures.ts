/** Figures of one quantity's trend, each with its working. docs/model/trends.md */
import type { QuantityTrend } from "../../contract/output/trends.ts";
import type { Trend } from "../../engine/trends/trend.ts";
import type { Spread } from "../../engine/types/estimate.ts";
import type { Confidence, Figure, WorkingInput } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { exact, linkTo, parametersOf, round3, workedOut } from "../../engine/types/link.ts";
import { TABLE } from "../figures/table.ts";
import { dateWords } from "../words.ts";

const AT = "trends.md";

export function trendFigures(trend: Trend, output: QuantityTrend): Figure[] {
  const { id, unit, per_week: slope, today, usual, rising_of_20: rising } = output;
  const spelt = unit === "" ? "1" : unit;
  const step: Figure = {
    ...{ id: figureId.trend(id, "step"), label: `${output.label}: step of its test`, unit: spelt },
    spread: exact(trend.step),
    working: {
      ...{
        formulaKey: `${AT}#readings`,
        formula: "the coarsest step told of the last 20 readings, or else their last decimal",
      },
      inputs: [{ label: "readings", value: String(output.readings), origin: "stated" }],
      ...{ parameters: [], animals: [], confidence: "measured" },
      wouldChange: ["the smallest step of the kit, told with a reading"],
    },
  };
  const { line } = trend;
  const readings = readingsOf(output);
  const make = (
    what: string,
    label: string,
    spread: Spread,
    as: string,
    working: Pick<Figure["working"], "formulaKey" | "formula" | "inputs"> & {
      wouldChange?: readonly string[];
      confidence?: Confidence;
      parameters?: readonly string[];
    },
  ): Figure => ({
    ...{ id: figureId.trend(id, what), label: `${output.label}: ${label}`, spread, unit: as },
    working: {
      ...{ formulaKey: working.formulaKey, formula: working.formula, inputs: working.inputs },
      ...{ parameters: parametersOf(working.parameters ?? [], TABLE), animals: [] },
      confidence: working.confidence ?? "computed",
      wouldChange: working.wouldChange ?? [
        "another reading, a week or more from now",
        "a test with finer steps",
      ],
    },
  });
  const made: Figure[] = [step];
  if (line !== null && slope !== null && rising !== null) {
    const pairs = line.pairs.pool.length / 2;
    const slopeFigure = make("slope", "change a week", slope, `${spelt}/week`, {
      formulaKey: `${AT}#slope`,
      formula:
        "the median of the slopes that every pair of readings allows (Theil, Sen); 90 % limits by Kendall's S",
      inputs: [
        ...readings,
        workedOut("pairs of readings of different days", String(pairs)),
        workedOut("pairs that surely rise, less those that surely fall", String(line.pairs.s)),
        workedOut(
          "standard deviation of that by chance, likeness of neighbours reckoned in",
          round3(line.pairs.sd),
        ),
        linkTo(step, "step of the test"),
      ],
    });
    made.push(
      slopeFigure,
      make("rising", "versions of the line that rise, of 20", exact(rising), "of 20", {
        formulaKey: `${AT}#line`,
        formula:
          "200 slopes spread evenly over their confidence; those above nought, in twentieths; level ones by half",
        inputs: [linkTo(slopeFigure, "change a week"), linkTo(step, "step of the test"), ...readings],
      }),
    );
    if (today !== null) {
      made.push(
        make("today", "the line today", today, spelt, {
          formulaKey: `${AT}#line`,
          formula:
            "level of the readings at their middle day, by the mean of their middle half, carried on by the slope",
          inputs: [
            linkTo(slopeFigure, "change a week"),
            workedOut("scatter of readings around the line", `${round3(line.scatter)} ${unit}`.trim()),
            linkTo(step, "step of the test"),
            ...readings,
          ],
        }),
      );
    }
    for (const {
      side,
      value,
      why,
      parameter,
      of_20,
      already_of_20,
      within_days,
      first_on,
    } of output.limits) {
      const limit = make(`limit.${side}`, `limit ${side}`, exact(value), spelt, {
        formulaKey: `${AT}#limits`,
        formula:
          parameter === null
            ? "bounds beyond which a reading is called unusual when it is typed: judgement"
            : "as the weeks ahead have it",
        inputs: [{ label: "what the limit is", value: why, origin: "stated" }],
        parameters: parameter === null ? [] : [parameter],
        confidence: parameter === null ? "judgement" : "read",
        wouldChange: ["another source for the limit", "what the animals you keep can bear"],
      });
      made.push(
        limit,
        make(`chance.${side}`, `${side} the limit within ${within_days} days, of 20`, exact(of_20), "of 20", {
          formulaKey: `${AT}#limits`,
          formula:
            "versions of the line that are beyond the limit today or meet it within as many days as were seen, at most 90",
          inputs: [
            linkTo(limit, "limit"),
            linkTo(slopeFigure, "change a week"),
            linkTo(step, "step of the test"),
            workedOut("beyond it today", `${already_of_20} of 20`),
            workedOut(
              "first day",
              first_on === null
                ? "fewer than one version in twenty meets it on its way"
                : `${dateWords(first_on.middle)} (${dateWords(first_on.early)} to ${dateWords(first_on.late)})`,
            ),
          ],
        }),
      );
    }
  }
  const { turn } = trend;
  if (turn !== null) {
    made.push(
      make("turn", `days since its ${turn.shape === "peak" ? "highest" : "lowest"}`, exact(-turn.day), "d", {
        formulaKey: `${AT}#turns`,
        formula:
          "pairs of readings that surely rise before the day and fall after it (or the reverse), against what chance would have (Mack and Wolfe)",
        inputs: [
          workedOut("days with readings before and after", `${turn.before} and ${turn.after}`),
          workedOut("standard deviations beyond chance", round3(turn.deviations)),
          workedOut("days and shapes asked about", String(turn.asked)),
          linkTo(step, "step of the test"),
        ],
        wouldChange: ["more readings on either side of that day", "a test with finer steps"],
      }),
    );
  }
  if (usual !== null) {
    made.push(
      make(
        "usual",
        "usual in this tank",
        { low: usual.low, central: usual.central, high: usual.high },
        spelt,
        {
          formulaKey: `${AT}#usual`,
          formula:
            "median of a year's days with readings before the latest; four of five of them lie in the range",
          inputs: [workedOut("days with readings", String(usual.days)), linkTo(step, "step of the test")],
          wouldChange: ["more readings", "a change of care that stays"],
        },
      ),
    );
  }
  output.changes.forEach(({ on, shape, by, happened, asked, figure }) => {
    made.push({
      ...{ id: figure, spread: by, unit: shape === "bend" ? `${spelt}/week` : spelt },
      label: `${output.label}: ${shape === "step" ? "step" : "change of slope"} on ${dateWords(on)}`,
      working: {
        formulaKey: `${AT}#changes`,
        formula:
          "least squares: a line and the change beside it, outliers drawn in, error widened for the likeness of neighbours",
        inputs: [
          workedOut(
            "days and shapes asked about",
            `${asked}: of quiet quantities at most 1 in 20 is said to have changed`,
          ),
          ...(happened.length === 0
            ? [workedOut("in the daybook about that day", "nothing")]
            : happened.map(
                (words): WorkingInput => ({
                  label: "in the daybook about that day",
                  value: words,
                  origin: "stated",
                }),
              )),
          linkTo(step, "step of the test"),
        ],
        ...{ parameters: [], animals: [], confidence: "computed" },
        wouldChange: [
          "more readings on either side of that day",
          "what else was done then, told in the daybook",
        ],
      },
    });
  });
  return made;
}

function readingsOf({ window, readings }: QuantityTrend): WorkingInput[] {
  const from = `${window.days} days with readings, ${dateWords(window.from)} to ${dateWords(window.to)}`;
  const why = {
    recent: "the last 90 days",
    eight: "back to the eighth, as the last 90 days have fewer",
    change: "since the last change",
    turn: "since it turned",
  }[window.why];
  return [
    { label: "readings taken", value: `${from}: ${why}`, origin: "stated" },
    { label: "readings of it looked at", value: String(readings), origin: "stated" },
  ];
}
