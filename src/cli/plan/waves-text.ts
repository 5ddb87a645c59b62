/** The plan for a person to read: a finding first, then waves with their gates, then why, then what is uncertain. */
import {
  explained,
  type Plan,
  type PlannedAnimal,
  type Refused,
  type Wave,
} from "../../engine/stocking/plan.ts";
import { SHELF_NAME, SHELVES } from "../../engine/types/shelf.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import type { Io } from "../io.ts";
import { CAUTIONS, STATEMENT } from "./statement.ts";
import { type Beside, toAdd } from "./waves-output.ts";
import { chance, counted, dateWords, rations, rationsADay, table, wrap } from "./words.ts";

/** One paragraph before the plan: what was changed, and how it differs from today's. */
export function besideText(plan: Plan, { changes, today }: Beside, io: Io): string {
  const now = new Map(toAdd(today).map((row) => [row.id, row]));
  const then = new Map(toAdd(plan).map((row) => [row.id, row]));
  const ids = [...new Set([...now.keys(), ...then.keys()])];
  const differs = ids.flatMap((id) => {
    const change = (then.get(id)?.count ?? 0) - (now.get(id)?.count ?? 0);
    const name = (then.get(id) ?? now.get(id))!.name;
    return change === 0 ? [] : [`${counted(Math.abs(change), name)} ${change > 0 ? "more" : "fewer"}`];
  });
  const all = (rows: ReadonlyMap<string, { count: number }>) =>
    [...rows.values()].reduce((sum, { count }) => sum + count, 0);
  return [
    wrap(`${io.bold("What if")}: ${changes.join("; ")}.`, io.width),
    wrap(
      `Today's plan adds ${all(now)} animals in all, this one ${all(then)}${differs.length === 0 ? ", the same" : `: ${differs.join(", ")}`}.`,
      io.width,
      "  ",
    ),
  ].join("\n");
}

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

function waveText({ number, from, to, animals, gate }: Wave, io: Io, full: boolean): string {
  const rows = animals.map(({ animal, count, eats, binding }) => [
    counted(count, animal.commonName),
    `eats ${eats.map((shelf) => SHELF_NAME[shelf]).join(", ")}`,
    `no more: ${binding.kind}`,
  ]);
  const lines = [
    io.bold(`Wave ${number}: ${dateWords(from)} to ${dateWords(to)}`),
    ...animalLines(rows, io),
    ...gate.onlyIf.map((text, i) =>
      wrap(text, io.width, i === 0 ? "  only if:   " : "             ", "               "),
    ),
    wrap(gate.soonerIf, io.width, "  sooner if: ", "             "),
    wrap(gate.stopIf, io.width, "  stop if:   ", "             "),
  ];
  const shells = animals.reduce((sum, { spareShells }) => sum + spareShells, 0);
  if (shells > 0)
    lines.push(
      wrap(
        `bring ${shells} empty shells of a size up for the hermits to change into`,
        io.width,
        "  also:      ",
        "             ",
      ),
    );
  lines.push(...cautionLines(animals, io));
  if (full) {
    for (const { animal, binding } of animals) {
      lines.push(
        wrap(
          `no more of the ${animal.commonName} because of ${binding.text}`,
          io.width,
          "  why:       ",
          "             ",
        ),
      );
    }
  }
  return lines.join("\n");
}

/** One line an animal where it fits; on a narrow screen, what it eats stands below. */
function animalLines(rows: readonly (readonly string[])[], io: Io): string[] {
  const wide = table(rows, 3, "  ").split("\n");
  if (wide.every((line) => line.length <= io.width)) return wide;
  return rows.flatMap(([who = "", ...rest]) => [`  ${who}`, wrap(rest.join("; "), io.width, "      ")]);
}

/** Each caution once, with the kinds that it is about. */
function cautionLines(animals: readonly PlannedAnimal[], io: Io): string[] {
  const kinds = new Map<string, string[]>();
  for (const { animal, cautions } of animals) {
    for (const caution of cautions) kinds.set(caution, [...(kinds.get(caution) ?? []), animal.commonName]);
  }
  return [...kinds].map(([caution, names]) =>
    wrap(`${names.join(", ")}: ${lowerFirst(caution)}`, io.width, "  mind:      ", "             "),
  );
}

const lowerFirst = (text: string): string => text[0]!.toLowerCase() + text.slice(1);

function fedText({ fedByHand }: Plan, io: Io): string {
  if (fedByHand.length === 0) return "";
  const lines = fedByHand.map(({ animal, mgC, dryFeedMg, standing }) => {
    const who = {
      resident: `The ${animal.commonName} here`,
      wished: `The ${animal.commonName} you wish for`,
      planned: `The ${animal.commonName}, when all have come,`,
    }[standing];
    const what = animal.supplementalFood === null ? "" : ` (${animal.supplementalFood})`;
    const way = standing === "resident" ? " Or give some away." : "";
    return wrap(
      `${who} would go short by ${rationsADay(mgC)}: feed about ${Math.round(dryFeedMg)} mg of dry food a day by hand${what}.${way}`,
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
      `${SHELF_NAME[shelf]}: about ${rationsADay(leftMgC)} left. ${text[0]!.toUpperCase()}${text.slice(1)}.`,
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

function checkText({ check, mends, kinds, fedByHand }: Plan, io: Io): string {
  if (check === null) return "";
  const nameOf = (id: string) => kinds.find(({ animal }) => animal.id === id)?.animal.commonName ?? id;
  const lines = check.kinds.map((kind) => {
    const why = explained(kind, fedByHand);
    return wrap(
      `${counted(kind.heads, nameOf(kind.id))}: ${chance(kind.aliveOf20)}${why === null ? "" : `; ${why}`}.`,
      io.width,
      "  ",
      "    ",
    );
  });
  const cut = mends.map(({ name, from, to, fedOf20 }) =>
    wrap(
      `${to === 0 ? `${name} left out` : `${name} cut from ${from} to ${to}`}: ${from} found enough food for 90 days in only ${fedOf20} of 20 runs.`,
      io.width,
      "  ",
      "    ",
    ),
  );
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
      `${animal.commonName}: in the plan; it costs ${costs.length === 0 ? "the others nothing" : costs.map(({ animal: other, fewer }) => `${counted(fewer, other.commonName)} less`).join(", ")}.`,
      io.width,
      "  ",
    );
  });
  return [io.bold("Your wishes"), ...lines].join("\n");
}

function refusedText({ refused }: Plan, io: Io, full: boolean): string {
  const asked = ({ animal }: Refused) => animal.role === "crew" && animal.keeperLevel === "first-tank";
  const shown = (full ? [...refused] : refused.filter(asked)).sort(
    (a, b) => rank(a.animal.role) - rank(b.animal.role) || a.reasons.length - b.reasons.length,
  );
  if (refused.length === 0) return "";
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
  return [io.bold("What each limit costs"), ...lines].join("\n");
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
