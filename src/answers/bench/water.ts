/**
 * What the latest value of each quantity asks for, beyond what was flagged as dangerous when it was typed: ammonia and
 * nitrite where something breathes, a slip of salinity or temperature, a value out of this tank's own usual.
 */
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import type { Measured } from "../../contract/daybook/reading.ts";
import type { Reading } from "../../engine/types/tank.ts";
import type { Advice } from "../advice.ts";
import { dateWords, lowered } from "../words.ts";
import { isStocked, type KnownOfTank, type Valued, valuesOf } from "./known.ts";
import { type Judged, judgeLatest, WATER_RULES, type WaterRule } from "./usual.ts";

/** As a keeper's reading names it. */
const MEASURED_OF: Readonly<Record<Reading["quantity"], Measured>> = {
  tan_mg_n_per_l: "tan_mg_n_per_l",
  no2_mg_n_per_l: "no2_mg_per_l",
  no3_mg_n_per_l: "no3_mg_per_l",
  po4_mg_p_per_l: "po4_mg_per_l",
  salinity_psu: "salinity_psu",
  temperature_c: "temperature_c",
  ph: "ph",
  alkalinity_meq_per_l: "alkalinity_dkh",
  calcium_mg_per_l: "calcium_mg_per_l",
  magnesium_mg_per_l: "magnesium_mg_per_l",
};

/** mg N/L from which each can't wait in a stocked tank, and from which it can be read at all. */
export const TOXIC = {
  tan_mg_n_per_l: { today: 0.25, readable: 0.1 },
  no2_mg_n_per_l: { today: 0.15, readable: 0.03 },
} as const;

/** It can't be told from nothing. */
export const isUnreadable = (
  { central, censored, step }: Pick<Valued, "central" | "censored" | "step">,
  quantity: keyof typeof TOXIC,
): boolean =>
  censored === "below" ||
  (censored === null && central < Math.max(TOXIC[quantity].readable, (step ?? 0) / 2));

export function waterAdvice(known: KnownOfTank): Advice[] {
  const out = WATER_RULES.flatMap((rule) => outOfUsual(known, rule));
  return [...toxic(known), ...out];
}

const pressing = (known: KnownOfTank, quantity: Measured): boolean =>
  known.latest.some((one) => one.quantity === quantity && one.flag === "danger");

function toxic(known: KnownOfTank): Advice[] {
  if (!isStocked(known)) return [];
  return (["tan_mg_n_per_l", "no2_mg_n_per_l"] as const).flatMap((quantity): Advice[] => {
    const latest = valuesOf(known, quantity).at(-1);
    // Flagged when it was typed: dangerAdvice says it.
    if (latest === undefined || pressing(known, MEASURED_OF[quantity])) return [];
    if (latest.central < TOXIC[quantity].today || latest.censored === "below") return [];
    const label = labelOf(quantity);
    return [
      {
        ...base(quantity, latest),
        id: `danger.${MEASURED_OF[quantity]}`,
        urgency: "today",
        weight: quantity === "tan_mg_n_per_l" ? 96 : 93,
        about: "danger",
        do: [`Stop feeding, change a quarter of the water, then test ${lowered(label)} again.`],
        why: [
          [`${readAs(known, quantity, latest)} in a tank with animals in it.`],
          ["Bacteria that use it up are too few for what goes in, or something dead lies somewhere."],
        ],
        byWhen: ["Today."],
        by: known.today,
      },
    ];
  });
}

function outOfUsual(known: KnownOfTank, rule: WaterRule): Advice[] {
  const values = valuesOf(known, rule.quantity);
  const latest = values.at(-1);
  const measured = MEASURED_OF[rule.quantity];
  if (latest === undefined || pressing(known, measured)) return [];
  const judged = judgeLatest(values, rule, known.today);
  if (judged.slipped) return [slip(known, rule, latest, judged)];
  const unusual =
    latest.flag === "unusual" ||
    known.latest.some((one) => one.quantity === measured && one.flag === "unusual");
  if (!judged.out && !unusual) return [];
  const label = labelOf(rule.quantity);
  // Out of general bounds, and always so here: no news, but no good news either.
  const settledHere = judged.usual !== null && !judged.out;
  return [
    {
      ...base(rule.quantity, latest),
      id: `usual.${measured}`,
      urgency: settledHere ? "next_visit" : "this_week",
      weight: settledHere ? 22 : 46 + Math.min(12, Math.floor(judged.margins)),
      about: "trend",
      do: [`Measure ${lowered(label)} again before you change anything.`],
      why: [
        [
          settledHere
            ? `${readAs(known, rule.quantity, latest)}: out of what is common, and usual in this tank.`
            : judged.usual === null
              ? `${readAs(known, rule.quantity, latest)}: out of what is common.`
              : `${readAs(known, rule.quantity, latest)}: well ${judged.side} what is usual in this tank, by the ${judged.usual.days} days of readings before.`,
        ],
      ],
      byWhen: [settledHere ? "With the next tests." : "This week."],
      by: null,
    },
  ];
}

function slip(known: KnownOfTank, { quantity }: WaterRule, latest: Valued, judged: Judged): Advice {
  const label = labelOf(quantity);
  const against = judged.usual === null ? "the readings before" : "what is usual in this tank";
  return {
    ...base(quantity, latest),
    id: `danger.${MEASURED_OF[quantity]}`,
    urgency: "today",
    weight: 92,
    about: "danger",
    do: [`Measure ${lowered(label)} again now with a second tool, then correct it slowly.`],
    why: [
      [`${readAs(known, quantity, latest)}: far ${judged.side} ${against}.`],
      ["Snails, crabs and shrimps bear a quick change worse than a wrong value: go back over days."],
    ],
    byWhen: ["Today."],
    by: known.today,
  };
}

const labelOf = (quantity: Reading["quantity"]): string => MEASURES[MEASURED_OF[quantity]].label;

/** "Nitrite 0.8 mg/L as NO2 on 3 Jun 2026", as it was typed. */
function readAs({ latest }: KnownOfTank, quantity: Reading["quantity"], { on }: Valued): string {
  const typed = latest.find((one) => one.quantity === MEASURED_OF[quantity]);
  return `${labelOf(quantity)}${typed === undefined ? "" : ` ${typed.text}`} on ${dateWords(on)}`;
}

function base(quantity: Reading["quantity"], latest: Valued) {
  const label = lowered(labelOf(quantity));
  return {
    wouldChange: [`A second test of ${label} that reads otherwise: log it, and this is judged anew.`],
    restsOn: latest.entry ?? `${latest.on} ${latest.central}`,
    act: { words: `Log ${label}`, leads: "readings" },
    wait: { words: "Wait: test again before acting", leads: "daybook" },
  } as const satisfies Partial<Advice>;
}
