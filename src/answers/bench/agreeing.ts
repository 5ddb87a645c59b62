/**
 * A list that never contradicts itself. Nothing is to be added while something is dangerous or wrong, a medicine is in
 * the water, dinoflagellates are suspected or an outbreak stands; one kind is not to be topped up and thinned at once;
 * what is told twice is told once. The more cautious of two stands.
 */
import type { WavesOutput } from "../../contract/output/waves.ts";
import { type Advice, URGENCY_ORDER } from "../advice.ts";
import { plain } from "../sentence.ts";

/** Matters that close a tank to newcomers, whatever else is said; declining them opens nothing. */
function closesTank({ about, urgency, id }: Advice): boolean {
  if (about === "danger" || about === "trouble" || about === "medicine") return true;
  if (id.includes("dinoflagellates")) return true;
  if (about === "growth" || about === "sign" || about === "heads" || about === "silence")
    return urgency === "today" || (urgency === "this_week" && about === "growth");
  return false;
}

const ADDS: ReadonlySet<Advice["about"]> = new Set(["wave", "top_up"]);

/** Kinds of animals in an id such as `way_down.trochus-snail`, or `top_up.conch+trochus-snail` of one order. */
const kindsOf = ({ id }: Advice): readonly string[] => (id.split(".")[1] ?? "").split("+");

export function agreeing(all: readonly Advice[], waves: WavesOutput | null): readonly Advice[] {
  const once = withoutTwins(all);
  const closed = once.some(closesTank);
  const fewer = new Set([
    ...once.flatMap((one) => (one.about === "way_down" ? kindsOf(one) : [])),
    ...hungryIn(waves),
  ]);
  const nothingYet = waves?.kind === "nothing_yet";
  const coming = new Set(waves?.waves[0]?.animals.map(({ id }) => id) ?? []);
  const waveStands = ![...coming].some((id) => fewer.has(id));
  const allowed = once.filter((one) => {
    if (!ADDS.has(one.about)) return true;
    if (closed) return false;
    if (one.about === "wave") return waveStands;
    // An order comes whole: one kind too many holds it all back.
    return !nothingYet && !kindsOf(one).some((kind) => fewer.has(kind));
  });
  return joined(allowed);
}

/** The same thing to do is told once, by the weightiest who asks for it, with what moves the others to ask. */
function joined(all: readonly Advice[]): readonly Advice[] {
  const byDeed = new Map<string, Advice[]>();
  for (const one of all.toSorted(compareAdvice)) {
    const deed = `${one.about} ${plain(one.do)}`;
    byDeed.set(deed, [...(byDeed.get(deed) ?? []), one]);
  }
  return [...byDeed.values()].flatMap(([first, ...others]): Advice[] => {
    if (first === undefined) return [];
    const more = others.flatMap(({ why }) => why.slice(0, 1));
    return [more.length === 0 ? first : { ...first, why: [...first.why, ...more] }];
  });
}

/** Kinds that live there and find too little. */
const hungryIn = (waves: WavesOutput | null): string[] =>
  (waves?.fed_by_hand ?? []).filter(({ standing }) => standing === "resident").map(({ id }) => id);

/** Of two with one id the weightier. */
function withoutTwins(all: readonly Advice[]): readonly Advice[] {
  const byId = new Map<string, Advice>();
  for (const one of all) {
    const other = byId.get(one.id);
    if (other === undefined || isBefore(one, other)) byId.set(one.id, one);
  }
  return [...byId.values()];
}

/** Urgency, then weight. */
const isBefore = (a: Advice, b: Advice): boolean => compareAdvice(a, b) < 0;
export const compareAdvice = (a: Advice, b: Advice): number =>
  URGENCY_ORDER.indexOf(a.urgency) - URGENCY_ORDER.indexOf(b.urgency) ||
  b.weight - a.weight ||
  a.id.localeCompare(b.id);
