/** "Nothing yet, because ...": why a plan buys nobody, and whether looking again would help. */
import { figureId } from "../types/figure-id.ts";
import { RATION_MG_C, SHELVES } from "../types/shelf.ts";
import type { TankFacts } from "../types/tank.ts";
import type { FedByHand, Refused, Spare } from "./plan-shape.ts";
import { addDays, type ReasonCode } from "./suitability.ts";
import type { WaveDraft } from "./waves.ts";

const LOOK_AGAIN_DAYS = 14;
const YOUNG_DAYS = 35;
/** Most kinds of reason that a sentence carries. */
const MOST_TOLD = 3;

interface NothingYet {
  readonly because: readonly string[];
  readonly becauseFigures: readonly (string | null)[];
  /** ISO date, or null where no date would change the answer. */
  readonly lookAgain: string | null;
}

export function nothingYet(
  facts: TankFacts,
  drafts: readonly WaveDraft[],
  refused: readonly Refused[],
  spare: readonly Spare[],
  fedByHand: readonly FedByHand[],
): NothingYet {
  if (facts.medicines.length > 0 || facts.trouble !== null) {
    const because = firstToMend(refused);
    return { because, becauseFigures: because.map(() => null), lookAgain: null };
  }
  const because: string[] = [];
  let offer: string | null = null;
  const last = drafts.at(-1);
  if (fedByHand.some(({ standing }) => standing === "resident")) {
    because.push("Those already there do not find enough: feed them by hand, or give some away.");
  }
  const crew = refused.filter(({ animal }) => animal.role === "crew" || animal.role === "crew_with_caution");
  const unsuited = crew.filter(({ reasons }) => reasons[0]?.code !== "starves");
  const someSuit = unsuited.length < crew.length || spare.some(({ animal }) => animal.group !== "pod");
  if (last !== undefined && someSuit) {
    const total = SHELVES.reduce((sum, shelf) => sum + last.supply.pessimistic[shelf], 0);
    const rations = (total / RATION_MG_C).toPrecision(2);
    offer = `In 15 of 20 runs the larder offers ${rations} rations a day in all by ${addDays(facts.asOf, last.date.day)}; no animal that suits this tank could live on what it reaches of that.`;
    because.push(offer);
    if (facts.ageDays.central < YOUNG_DAYS)
      because.push("The tank is young: film and diatoms come first, the crew after them.");
  }
  const tally = tallied(unsuited);
  if (tally !== "")
    because.push(`${someSuit ? "Of the other kinds" : "No kind suits this tank as it is"}: ${tally}.`);
  const timeHelps = someSuit || unsuited.some(({ reasons }) => reasons[0]?.code === "age");
  const days = Math.max(LOOK_AGAIN_DAYS, drafts[0]?.date.day ?? 0);
  const becauseFigures = because.map((text) => (text === offer ? figureId.offered() : null));
  return { because, becauseFigures, lookAgain: timeHelps ? addDays(facts.asOf, days) : null };
}

function firstToMend(refused: readonly Refused[]): string[] {
  const lines = refused.flatMap(({ reasons }) =>
    reasons
      .filter(({ code }) => code === "medicine" || code === "trouble")
      .map(({ text, until }) => `${text} Plan again ${until ?? ""}.`),
  );
  return [...new Set(lines)];
}

const KINDS_THAT: Readonly<Partial<Record<ReasonCode, string>>> = {
  excluded: "on your list of exclusions",
  stock_list: "not on your stock list",
  price: "above your price band",
  volume: "for larger tanks",
  age: "for older tanks",
  experience: "for more experienced keepers",
  temperature: "for water of another temperature",
  cool_water: "for cooler water",
  salinity: "for another salinity",
  sand: "for another bed of sand",
  rock: "for tanks with rock",
  caves: "for rock with caves",
  lid: "for tanks with a lid",
  pump_guard: "for tanks with guarded inlets",
  loose_rock: "for rock that is fixed",
  eaten_by: "likely to be eaten by what lives here or is planned",
  eats: "likely to eat what lives here or is planned",
  toxin: "able to poison a tank as they die",
};

/** "18 are for larger tanks, 7 are for tanks with a lid": by what stands first against each kind, commonest first. */
function tallied(unsuited: readonly Refused[]): string {
  const counts = new Map<string, number>();
  for (const { reasons } of unsuited) {
    const words = reasons[0] && KINDS_THAT[reasons[0].code];
    if (words !== undefined) counts.set(words, (counts.get(words) ?? 0) + 1);
  }
  return [...counts]
    .sort((a, b) => b[1] - a[1])
    .slice(0, MOST_TOLD)
    .map(([words, count]) => `${count} ${count === 1 ? "is" : "are"} ${words}`)
    .join(", ");
}
