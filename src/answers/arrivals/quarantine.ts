/**
 * Quarantine as dated days, per group, and a fallow time. Days are common practice, no source: a vet's word overrules
 * them. Nothing here names a medicine's amount.
 */
import { findAnimal } from "../../catalogue/index.ts";
import { addDays } from "../../contract/quantity/calendar.ts";
import type { KeptApart, TankRecord } from "../../engine/types/record.ts";

export const QUARANTINED = {
  fish: { name: "fish", days: 42 },
  corals: { name: "corals", days: 42 },
  /** Snails, crabs, shrimps and the like. */
  invertebrates: { name: "invertebrates", days: 28 },
} as const;
export type Quarantined = keyof typeof QUARANTINED;

/** Days without any fish after which white spot has died out in nearly every account. Common practice, no source. */
export const FALLOW_DAYS = 76;
/** The day on which a fish that has not eaten is a matter of its own. */
export const REFUSAL_DAY = 3;

export interface QuarantineDay {
  /** Days from the first. */
  readonly day: number;
  readonly on: string;
  readonly do: string;
}

type Row = readonly [day: number, words: string];

const ROWS: Readonly<Record<Quarantined, readonly Row[]>> = {
  fish: [
    [
      0,
      "Into a tank of its own, bare, aged filter, a pipe to hide in; lights low. Offer a little food in the evening.",
    ],
    [1, "Watch breathing, fins, spots, faeces. Test ammonia: a bare tank has few bacteria."],
    [REFUSAL_DAY, "Has it eaten? If not, see below. Test ammonia again."],
    [
      7,
      "Spots, dust, slime, white faeces or rubbing: call an aquatic vet before anything goes into the water.",
    ],
    [14, "Eating every day? Two weeks without a sign begin to count today; a sign starts them anew."],
    [28, "Most white spot and flukes have shown themselves by now."],
    [
      QUARANTINED.fish.days,
      "No sign for two weeks, eats every day: move it over, acclimated, none of the water with it.",
    ],
  ],
  corals: [
    [
      0,
      "Look at it under magnification, plug and underside too; cut the plug off. Dip in a vessel of its own, rinse twice.",
    ],
    [3, "Look by torch after dark: worms, snails and crabs that eat it come out."],
    [7, "Look for egg spirals; scrape them off. A second dip where the first found anything."],
    [21, "Eggs that were missed have hatched by now: look again by torch."],
    [QUARANTINED.corals.days, "Nothing found for three weeks: move it over, none of the water with it."],
  ],
  invertebrates: [
    [
      0,
      "Into a tank without copper, now or ever, with rock or food of its kind. No medicine for fish, no dip.",
    ],
    [1, "Who has not moved, righted itself or closed? Take out what is dead; test ammonia."],
    [7, "Who eats? Count by torch. Feed by hand what the bare tank does not grow."],
    [14, "Look for strangers: eggs, small snails on shells, crabs with black claws."],
    [
      QUARANTINED.invertebrates.days,
      "All there and feeding: move them over, acclimated, none of the water with them.",
    ],
  ],
};

export const quarantineDays = (group: Quarantined, from: string): readonly QuarantineDay[] =>
  ROWS[group].map(([day, words]) => ({ day, on: addDays(from, day), do: words }));

/** What follows where a fish has not eaten by the third day. Common practice, no source. */
export const REFUSES_FOOD: readonly string[] = [
  "Test ammonia, nitrite, temperature, salinity and pH first, and look for whoever chases it.",
  "Offer small live or frozen food at dusk, a little at a time; take out what is left.",
  "Look at breathing and belly: fast breath or a pinched belly can't wait.",
  "By the fifth day, or sooner with any other sign, ask an aquatic vet; ask the shop what it ate there.",
];

/** Signs of disease in fish: no crew cures them. */
export const SIGNS_OF_DISEASE: readonly string[] = [
  "White grains or dust, cloudy eyes, slime, ragged fins, rubbing, fast breath, lying on its side.",
  "Ask an aquatic vet today, with photos of the fish and the tests of the water.",
  "The fish goes into a hospital tank of its own; nothing that treats it goes into the tank of the crew.",
  "All fish that shared its water count as exposed: ask the vet about each.",
];

export const HOSPITAL_TANK: readonly string[] = [
  "Bare: glass, heater, air, a pipe to hide in. No rock and no sand, which bind copper.",
  "A sponge that ran in a healthy tank; ammonia tested daily; water changed by the test.",
  "Nets, hoses and towels of its own. Its water goes down the drain, never into a tank or the wild.",
];

export interface Apart {
  readonly what: KeptApart["what"];
  readonly group: Quarantined;
  readonly words: string;
  readonly entry: string;
  readonly from: string;
  /** ISO date; of a quarantine its last day, of a fallow time the first with fish again. */
  readonly until: string;
}

/** Who it is, by what was typed: a coral, an animal of the catalogue, else a fish, whose plan is the longest. */
export function quarantinedAs(words: string): Quarantined {
  if (/\b(?:coral|corals|frag|frags|anemone|zoanthids?)\b/i.test(words)) return "corals";
  const name = words.replace(/^\s*\d+\s*x?\s*/i, "");
  const found = findAnimal(name);
  if (found.kind === "one") return found.animal.group === "fish" ? "fish" : "invertebrates";
  return /\b(?:snails?|crabs?|shrimps?|hermits?|urchins?|stars?|conchs?|cucumbers?|slugs?|crew|invertebrates?)\b/i.test(
    name,
  )
    ? "invertebrates"
    : "fish";
}

/** Times apart that have begun and not ended, the latest first; an end closes the latest of its kind. */
export function apartIn({ happenings }: Pick<TankRecord, "happenings">): readonly Apart[] {
  const open: KeptApart[] = [];
  for (const one of happenings) {
    if (one.kind !== "apart") continue;
    if (one.step === "started") open.push(one);
    else {
      const at = open.findLastIndex(
        ({ what, words }) =>
          what === one.what && (one.words === "" || words.toLowerCase() === one.words.toLowerCase()),
      );
      if (at >= 0) open.splice(at, 1);
    }
  }
  return open.reverse().map(({ what, words, entry, on }) => {
    const group = quarantinedAs(words);
    const days = what === "fallow" ? FALLOW_DAYS : QUARANTINED[group].days;
    return { what, group, words, entry, from: on, until: addDays(on, days) };
  });
}

/** First day with fish again of a tank that lies fallow by its daybook, ISO date; null where it does not. */
export const fallowUntil = (record: Pick<TankRecord, "happenings">): string | null =>
  apartIn(record).find(({ what }) => what === "fallow")?.until ?? null;
