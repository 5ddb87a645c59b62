/** How much of a dissolved medicine is left after water changes and carbon: shares that multiply. */
import { readPlain } from "../../contract/quantity/plain.ts";
import { exp, log } from "../../engine/numeric/elementary.ts";
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { spreadText } from "../../engine/types/link.ts";
import { told } from "../sentence.ts";
import { cornersOf, inputOf } from "./spread.ts";
import type { AmountField, Sum } from "./sum.ts";
import { plainRule, readWith } from "./water-fields.ts";

const share = (
  name: string,
  label: string,
  hint: string,
  empty: AmountField["empty"],
  example: string,
): AmountField => ({
  ...{ name, label, hint, empty, example, input: "amount", units: ["%"] },
  read: (text, context) => readPlain("percent", text, context),
});
const number = (name: string, label: string, most: number, empty: AmountField["empty"]): AmountField => ({
  ...{ name, label, hint: "", empty, input: "amount", units: [], example: "3" },
  read: readWith(plainRule(label, "", [], { min: 0, max: most }, "3")),
});

/** Share left, 0 to 1: each change leaves one less its share, each day on carbon one less what it takes a day. */
export function medicineLeft(
  changeShare: number,
  changes: number,
  carbonShareADay: number,
  carbonDays: number,
): number {
  const kept = (taken: number, times: number): number =>
    taken >= 1 ? (times > 0 ? 0 : 1) : exp(times * log(1 - taken));
  return kept(changeShare, changes) * kept(carbonShareADay, carbonDays);
}

export const MEDICINE_LEFT: Sum = {
  id: "medicine-left",
  group: "arrivals",
  name: "Medicine left",
  question: "How much of a medicine is left after water changes and carbon?",
  fields: [
    share("change", "Water changed each time", "", "needed", "25 %"),
    number("changes", "How many times", 100, "needed"),
    share(
      "carbon",
      "What carbon takes a day",
      "No table has it: from two tests a day apart, where there is a test.",
      { text: "0 %", how: "carbon is not counted where nothing is said" },
      "30 %",
    ),
    number("days", "Days on carbon", 365, { text: "0", how: "no days on carbon" }),
  ],
  examples: [
    { change: "25 %", changes: "4" },
    { change: "50 %", changes: "2", carbon: "20-40 %", days: "5" },
  ],
  work: (given) => {
    const inputs = [
      given.amount("change"),
      given.amount("changes"),
      given.amount("carbon"),
      given.amount("days"),
    ] as const;
    const [change, changes, carbon, days] = inputs;
    const spread = cornersOf(
      inputs,
      ([c = 0, n = 0, k = 0, d = 0]) => 100 * medicineLeft(c / 100, n, k / 100, d),
    );
    const figure: Figure = {
      ...{
        id: figureId.sum("medicine-left", "left"),
        label: "left of what was dissolved",
        spread,
        unit: "%",
      },
      working: {
        formulaKey: "arrivals.md#what-is-left",
        formula:
          "(1 - share changed) to the number of changes, times (1 - share that carbon takes a day) to the days",
        inputs: [
          inputOf("water changed each time", change),
          inputOf("times", changes),
          inputOf("what carbon takes a day", carbon),
          inputOf("days on carbon", days),
        ],
        ...{ parameters: [], animals: [], confidence: "computed" },
        wouldChange: ["the share of each change", "what rock and sand give back, which is not counted"],
      },
    };
    const value = told(spreadText(spread, "%"), figure.id);
    return {
      kind: "answer",
      lead: ["Of what was dissolved, ", value, " is left."],
      rows: [{ label: "Left of what was dissolved", value: [value] }],
      tables: [],
      cautions: [
        "A share is no all-clear: a test, or the day of the medicine's page, says when a crew may come back. Ask an aquatic vet before you stop a treatment.",
        "Treated water goes down the drain as local rules allow, never into the wild.",
      ],
      notes: [
        "What rock, sand and seams hold is not in it: copper and fenbendazole come back out of them.",
        "Changes of a quarter do not add up: four of them leave 32 %, not nothing.",
      ],
      wouldChange: ["One large change takes more than two of half its size."],
      figures: [figure],
    };
  },
};
