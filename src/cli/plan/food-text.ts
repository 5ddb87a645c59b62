/** Food: what goes short and is fed by hand, what is left on the shelves, what the larder holds. */

import { counted, dryFood, fitted, rations, rationsADay, table, wrap } from "../../answers/words.ts";
import type { Plan } from "../../engine/stocking/plan.ts";
import { SHELF_NAME, SHELVES } from "../../engine/types/shelf.ts";
import type { Io } from "../io.ts";

export function fedText({ fedByHand }: Plan, io: Io): string {
  if (fedByHand.length === 0) return "";
  const lines = fedByHand.map(({ animal, heads, mgC, dryFeedMg, standing }) => {
    const name = heads > 1 ? counted(heads, animal.commonName) : animal.commonName;
    const who = {
      resident: `The ${name} here`,
      wished: `The ${name} you wish for`,
      planned: `The ${name}, when all have come,`,
    }[standing];
    const what = animal.supplementalFood === null ? "" : ` (${animal.supplementalFood})`;
    const way = standing === "resident" ? " Or give some away." : "";
    return wrap(
      `${who} would go short by ${rationsADay(mgC)}: feed about ${dryFood(dryFeedMg)} of dry food a day by hand${what}.${way}`,
      io.width,
      "  ",
    );
  });
  return [io.bold("Food by hand"), ...lines].join("\n");
}

export function handText({ handWork }: Plan, io: Io): string {
  if (handWork.length === 0) return "";
  const lines = handWork.map(({ shelf, leftMgC, text }) =>
    wrap(
      `${SHELF_NAME[shelf]}: about ${rationsADay(leftMgC)} left. ${text[0]!.toUpperCase()}${text.slice(1)}.`,
      io.width,
      "  ",
      "    ",
    ),
  );
  return [io.bold("Left to your own hand"), ...lines].join("\n");
}

export function larderText(plan: Plan, io: Io): string {
  const draft = plan.waves.at(-1)?.draft ?? plan.drafts.at(-1);
  if (draft === undefined) return "";
  const rows = SHELVES.filter((shelf) => draft.larder.shelves[shelf].supply.high >= 0.5).map((shelf) => {
    const { supply, pessimistic } = draft.larder.shelves[shelf];
    return [
      SHELF_NAME[shelf],
      rations(pessimistic),
      rations(supply.central),
      `${rations(supply.low)} to ${rations(supply.high)}`,
      rations(draft.answer.eatenCentral[shelf]),
    ];
  });
  const title =
    "Larder: food your tank makes, by the last wave (rations a day; a ration is what one 22 mm trochus eats)";
  const heads = ["", "15 of 20 runs reach", "middle", "90 % band", "crew eats"];
  return [
    wrap(title, io.width).replace("Larder", io.bold("Larder")),
    fitted(table([heads, ...rows]), io.width, () =>
      rows.map(
        ([shelf, reached, middle, band, eaten]) =>
          `${shelf}: middle ${middle} (${band}), 15 of 20 runs reach ${reached}; crew eats ${eaten}`,
      ),
    ),
  ].join("\n");
}
