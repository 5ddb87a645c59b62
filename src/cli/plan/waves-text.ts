/** The plan for a person to read: a finding first, then waves with their gates, then why, then what is uncertain. */

import { CAUTION, STATEMENT } from "../../answers/statement.ts";
import { dateWords, withDates, wrap } from "../../answers/words.ts";
import type { Plan } from "../../engine/stocking/plan.ts";
import type { Wave } from "../../engine/stocking/plan-shape.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Io } from "../io.ts";
import { changeText, checkText, limitText } from "./doubt-text.ts";
import { fedText, handText, larderText } from "./food-text.ts";
import { refusedText, spareText, wishText } from "./refused-text.ts";
import { residentText } from "./resident-text.ts";
import { waveText } from "./wave-text.ts";

export interface TextChoice {
  /** Also what each limit costs, and everyone who is refused. */
  readonly full: boolean;
}

export function planText(plan: Plan, facts: TankFacts, io: Io, { full }: TextChoice): string {
  const parts = [
    heading(facts, io),
    finding(plan, facts, io),
    ...plan.waves.map((wave) => waveText(wave, io, full)),
    fedText(plan, io),
    residentText(plan, io),
    handText(plan, io),
    larderText(plan, io),
    checkText(plan, io),
    wishText(plan, io),
    refusedText(plan, io, full),
    changeText(plan, facts, io),
    ...(full ? [limitText(plan, io), spareText(plan, io)] : []),
    cautionText(facts, io, full),
  ];
  return parts.filter((part) => part !== "").join("\n\n");
}

function heading(facts: TankFacts, io: Io): string {
  const litres = Math.round(facts.waterL.central);
  const age = Math.round(facts.ageDays.central);
  const old =
    age < 0
      ? `to be filled in ${-age} days`
      : `${facts.ageDays.origin === "assumed" ? "about " : ""}${age} days old`;
  const first = `${io.bold(facts.name)}: ${litres} L of water, ${old} on ${dateWords(facts.asOf)}.`;
  if (facts.unknownAnimals.length === 0) return first;
  const names = facts.unknownAnimals.join(", ");
  const caution = `Not reckoned with: ${names}, which the catalogue does not know. What it eats, and whether it would eat this crew, find out before you add anything.`;
  return `${first}\n${wrap(caution, io.width)}`;
}

function finding(plan: Plan, facts: TankFacts, io: Io): string {
  const say = (text: string) => wrap(text, io.width);
  if (plan.kind === "nothing_yet") return nothingText(plan, facts, io);
  const heads = (waves: readonly Wave[]) =>
    waves.reduce((sum, { animals }) => sum + animals.reduce((n, { count }) => n + count, 0), 0);
  const first = plan.waves[0]!;
  const all = heads(plan.waves);
  const when = first.day === 0 ? "now" : `from ${dateWords(first.from)}`;
  const rest =
    plan.waves.length > 1
      ? `, the first of ${plan.waves.length} waves; ${all} in all by ${dateWords(plan.waves.at(-1)!.to)}`
      : "";
  return say(
    `Add ${heads([first])} ${heads([first]) === 1 ? "animal" : "animals"} ${when}${rest}. ${plan.waves.length > 1 ? "Each wave" : "The wave"} waits for its gate, the "only if" below it; ${facts.name} loses nothing by waiting.`,
  );
}

function nothingText({ because, lookAgain }: Plan, facts: TankFacts, io: Io): string {
  const next =
    facts.trouble === null
      ? `${lookAgain === null ? "" : `Look again on ${dateWords(lookAgain)}. `}Waiting costs nothing.`
      : TROUBLE_FIRST;
  return [
    wrap(`Add nothing yet. ${next}`, io.width),
    ...because.map((text) => wrap(withDates(text), io.width, "  because: ", "    ")),
  ].join("\n");
}

const TROUBLE_FIRST =
  "First see to what is wrong: more movement at the surface, take out what is dead, test ammonia; an aquatic vet for sick animals.";

/** The vet is named where something ails now; mains, wounds and the wild on every plan. */
function cautionText({ medicines, trouble }: TankFacts, io: Io, full: boolean): string {
  const ails = full || medicines.length > 0 || trouble !== null;
  const lines = [STATEMENT, CAUTION.mains, CAUTION.wounds, ...(ails ? [CAUTION.sick] : []), CAUTION.wild];
  return lines.map((text) => wrap(text, io.width)).join("\n");
}
