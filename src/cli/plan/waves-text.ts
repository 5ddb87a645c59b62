/** The plan for a person to read: a finding first, then waves with their gates, then why, then what is uncertain. */
import { explained, type Plan, type Wave } from "../../engine/stocking/plan.ts";
import { SHELF_NAME, SHELVES } from "../../engine/types/shelf.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Io } from "../io.ts";
import { CAUTIONS, STATEMENT } from "./statement.ts";
import { chance, counted, dateWords, rations, table, wrap } from "./words.ts";

export interface TextChoice {
  /** Also what each limit costs, and everyone who is refused. */
  readonly full: boolean;
}

export function planText(plan: Plan, facts: TankFacts, io: Io, { full }: TextChoice): string {
  const parts = [
    heading(facts, io),
    finding(plan, facts, io),
    ...plan.waves.map((wave) => waveText(wave, io)),
    fedText(plan, io),
    handText(plan, io),
    larderText(plan, io),
    checkText(plan, io),
    wishText(plan, io),
    refusedText(plan, io, full),
    changeText(plan, facts, io),
    ...(full ? [limitText(plan, io), spareText(plan, io)] : []),
    cautionText(io, full),
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
  return `${io.bold(facts.name)}: ${litres} L of water, ${old} on ${dateWords(facts.asOf)}.`;
}

function finding(plan: Plan, facts: TankFacts, io: Io): string {
  const say = (text: string) => wrap(text, io.width);
  if (plan.kind === "nothing_yet") {
    const look = plan.lookAgain === null ? "" : ` Look again on ${dateWords(plan.lookAgain)}.`;
    return [
      say(`Add nothing yet.${look} Waiting costs nothing.`),
      ...plan.because.map((text) => wrap(text, io.width, "  because: ", "    ")),
    ].join("\n");
  }
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
    `Add ${heads([first])} ${heads([first]) === 1 ? "animal" : "animals"} ${when}${rest}. Each wave waits for its gate; ${facts.name} loses nothing by waiting.`,
  );
}

function waveText({ number, from, to, animals, gate }: Wave, io: Io): string {
  const rows = animals.map(({ animal, count, eats }) => [
    counted(count, animal.commonName),
    `eats ${eats.map((shelf) => SHELF_NAME[shelf]).join(", ")}`,
  ]);
  const lines = [
    io.bold(`Wave ${number}: ${dateWords(from)} to ${dateWords(to)}`),
    ...table(rows, 2, "  ").split("\n"),
    ...gate.onlyIf.map((text, i) =>
      wrap(text, io.width, i === 0 ? "  only if:   " : "             ", "               "),
    ),
    wrap(gate.soonerIf, io.width, "  sooner if: ", "             "),
    wrap(gate.stopIf, io.width, "  stop if:   ", "             "),
  ];
  for (const { animal, binding, spareShells, cautions } of animals) {
    const notes = [`no more because of ${binding.text}`];
    if (spareShells > 0) notes.push(`give them ${spareShells} empty shells to change into`);
    notes.push(...cautions.map((caution) => caution.replace(/\.$/, "")));
    lines.push(wrap(`${animal.commonName}: ${notes.join("; ")}.`, io.width, "    - ", "      "));
  }
  return lines.join("\n");
}

function fedText({ fedByHand }: Plan, io: Io): string {
  if (fedByHand.length === 0) return "";
  const lines = fedByHand.map(({ animal, mgC, dryFeedMg, resident }) => {
    const who = resident ? `The ${animal.commonName} here` : `A wished-for ${animal.commonName}`;
    const what = animal.supplementalFood === null ? "" : ` (${animal.supplementalFood})`;
    const way = resident ? " Or give some away." : "";
    return wrap(
      `${who} would go short by ${rations(mgC)} rations a day: feed about ${Math.round(dryFeedMg)} mg of dry food a day by hand${what}.${way}`,
      io.width,
      "  ",
    );
  });
  return [io.bold("Food by hand"), ...lines].join("\n");
}

function handText({ handWork }: Plan, io: Io): string {
  if (handWork.length === 0) return "";
  const lines = handWork.map(({ shelf, leftMgC, text }) =>
    wrap(
      `${SHELF_NAME[shelf]}: about ${rations(leftMgC)} rations a day are left. ${text[0]!.toUpperCase()}${text.slice(1)}.`,
      io.width,
      "  ",
      "    ",
    ),
  );
  return [io.bold("Left to your own hand"), ...lines].join("\n");
}

function larderText(plan: Plan, io: Io): string {
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
  const title = `Larder: food your tank makes, by the last wave (rations a day; a ration is what one 22 mm trochus eats)`;
  return [
    wrap(title, io.width).replace("Larder", io.bold("Larder")),
    table([["", "15 of 20 runs reach", "middle", "90 % band", "crew eats"], ...rows]),
  ].join("\n");
}

function checkText({ check, mends }: Plan, io: Io): string {
  if (check === null) return "";
  const lines = check.kinds.map((kind) => {
    const why = explained(kind);
    return wrap(
      `${counted(kind.heads, kind.id.replaceAll("-", " "))}: ${chance(kind.aliveOf20)}${why === null ? "" : `; ${why}`}.`,
      io.width,
      "  ",
      "    ",
    );
  });
  const cut = mends.map((mend) => wrap(`cut: ${mend}.`, io.width, "  ", "    "));
  return [
    wrap("At least half still alive 90 days after the last of them came, if nobody helps:", io.width),
    ...lines,
    ...cut,
  ].join("\n");
}

function wishText({ wishes }: Plan, io: Io): string {
  if (wishes.length === 0) return "";
  const lines = wishes.map(({ animal, status, costs }) => {
    if (status === "refused")
      return wrap(`${animal.commonName}: not in this plan; see below why.`, io.width, "  ");
    return wrap(
      `${animal.commonName}: in the plan; it costs ${costs.length === 0 ? "the others nothing" : costs.join(", ")}.`,
      io.width,
      "  ",
    );
  });
  return [io.bold("Your wishes"), ...lines].join("\n");
}

/** How many refusals the short form tells; the kinds that beginners most often buy come first. */
const SHORT_LIST = 8;

function refusedText({ refused }: Plan, io: Io, full: boolean): string {
  const crew = refused.filter(
    ({ animal }) => full || animal.role === "crew" || animal.role === "crew_with_caution",
  );
  if (crew.length === 0) return "";
  const order = [...crew].sort(
    (a, b) => rank(a.animal.role) - rank(b.animal.role) || a.reasons.length - b.reasons.length,
  );
  const shown = full ? order : order.slice(0, SHORT_LIST);
  const lines = shown.map(({ animal, status, reasons }) => {
    const until = reasons.flatMap((reason) => (reason.until === null ? [] : [reason.until]))[0];
    const verdict =
      status === "never" ? "never in this tank" : `not yet${until === undefined ? "" : `, ${until}`}`;
    return wrap(`${animal.commonName}: ${verdict}. ${reasons[0]!.text}`, io.width, "  ", "    ");
  });
  const more = refused.length - shown.length;
  if (more > 0) lines.push(`  ... and ${more} more: --all, or grazewell animals ID FILE`);
  return [io.bold("Not for this tank, or not yet"), ...lines].join("\n");
}

const rank = (role: string): number =>
  ["crew", "crew_with_caution", "compatibility_only", "hitchhiker"].indexOf(role);

function changeText({ wouldChange }: Plan, facts: TankFacts, io: Io): string {
  if (wouldChange.length === 0) return "";
  const lines = wouldChange.map(({ unknown, headsIfLow, headsIfHigh }) => {
    const heads =
      headsIfLow === null || headsIfHigh === null
        ? ""
        : ` (${headsIfLow} animals if it lies low, ${headsIfHigh} if high)`;
    return wrap(`${unknown.label}${heads}: ${unknown.ask}.`, io.width, "  ", "    ");
  });
  const assumed =
    facts.assumed.length > 0
      ? ` ${facts.assumed.length} facts were assumed: grazewell check names them.`
      : "";
  return [
    wrap(`${io.bold("What would change this plan most")}${assumed === "" ? "" : `.${assumed}`}`, io.width),
    ...lines,
  ].join("\n");
}

function limitText({ limitCosts }: Plan, io: Io): string {
  if (limitCosts.length === 0) return "";
  const lines = limitCosts.map(({ text, heads, headsWithout, changes }) =>
    wrap(
      `without ${text}: ${headsWithout} animals instead of ${heads}${changes.length === 0 ? ", nothing changes" : ` (${changes.join(", ")})`}.`,
      io.width,
      "  ",
      "    ",
    ),
  );
  return [io.bold("What each limit costs (last wave, all at once)"), ...lines].join("\n");
}

function spareText({ spare }: Plan, io: Io): string {
  if (spare.length === 0) return "";
  return [
    io.bold("Fit, but not needed"),
    ...spare.map(({ animal, why }) => wrap(`${animal.commonName}: ${why}.`, io.width, "  ", "    ")),
  ].join("\n");
}

function cautionText(io: Io, full: boolean): string {
  const lines = full ? CAUTIONS : CAUTIONS.filter((_, i) => i === 0 || i === 3);
  return [STATEMENT, ...lines].map((text) => wrap(text, io.width)).join("\n");
}
