/** The water in a tank from its sides, sump, rock and sand: what every dose and change is reckoned from. */
import type { Figure } from "../../engine/types/figure.ts";
import { exact, linkTo } from "../../engine/types/link.ts";
import { careFigures, rowOf, WORK } from "./change-parts.ts";
import { furnished, ROCK, SAND, SIDES, SUMP } from "./new-tank-fields.ts";
import { middle } from "./parts.ts";
import type { Given, Sum, SumAnswer } from "./sum.ts";

const figure = careFigures("tank-volume");

export const TANK_VOLUME: Sum = {
  id: "tank-volume",
  group: "changes",
  name: "Water in a tank",
  question: "How much water is in it, with rock, sand and sump?",
  fields: [...SIDES, ROCK, SAND, SUMP],
  examples: [
    { length: "100 cm", width: "50 cm", height: "50 cm", rock: "15 kg", sand: "30 mm", sump: "40 L" },
    { length: "36 in", width: "18 in", height: "18 in" },
  ],
  work,
};

function work(given: Given): SumAnswer {
  const { waterL, displayL, lengthCm, widthCm, heightCm, inputs } = furnished(given);
  const put = (
    name: string,
    label: string,
    formula: string,
    spread: Figure["spread"],
    more = inputs,
    judged = true,
  ): Figure =>
    figure({
      ...{ name, label, unit: "L", at: "volume", formula, spread, inputs: more, judged },
      references: [judged ? WORK.memory : WORK.mixing],
      wouldChange: ["a count of the buckets when it is filled", "how full it is"],
    });
  const box = put(
    "box",
    "the box itself, outside",
    "length × width × height",
    exact((lengthCm * widthCm * heightCm) / 1000),
    inputs.slice(0, 3),
    false,
  );
  const display = put(
    "display",
    "water in the display",
    "box × 0.85 to 0.98 for glass and air, less rock at 0.4 to 0.7 L a kg, less sand at half to two thirds solid",
    displayL,
    [linkTo(box), ...inputs.slice(3, 5)],
  );
  const water = put("water", "water in all", "display + sump", waterL, [linkTo(display), ...inputs.slice(5)]);
  return {
    kind: "answer",
    lead: ["About ", middle(water), " of water moves in it."],
    rows: [
      rowOf("Water in all", water),
      rowOf("of that in the display", display),
      rowOf("The box itself, outside", box),
    ],
    tables: [],
    cautions: [],
    notes: [
      "Sides are of the glass outside: its thickness and the air above the water are taken off by a range.",
      "The sump's water falls when the pumps run: count it while they do.",
    ],
    wouldChange: ["Litres counted when it is filled: by far the best."],
    figures: [water, display, box],
  };
}
