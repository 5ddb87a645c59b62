/**
 * Losses that nothing has settled: found ones ask what killed them, feared ones ask for a look by night. Several at once
 * can't wait. A clear ammonia test since then eases it, no more: what killed them may be still there.
 */
import { animalById } from "../../catalogue/index.ts";
import type { HeadsChanged } from "../../engine/types/record.ts";
import type { Advice } from "../advice.ts";
import { counted, dateWords } from "../words.ts";
import type { Unsettled } from "./events.ts";
import { type KnownOfTank, valuesOf } from "./known.ts";
import { isUnreadable } from "./water.ts";

/** Found heads that can't wait, and feared ones, of how large a share of all. */
const MANY_FOUND = 3;
const MANY_FEARED = 5;
const MANY_FEARED_SHARE = 0.4;

export function lossAdvice(known: KnownOfTank, { found, feared }: Unsettled): Advice[] {
  return [...foundAdvice(known, found), ...fearedAdvice(known, feared)];
}

const headsIn = (some: readonly HeadsChanged[]): number => some.reduce((sum, { count }) => sum + count, 0);

function named(some: readonly HeadsChanged[]): string {
  const byKind = new Map<string, number>();
  for (const { animal, count } of some) byKind.set(animal, (byKind.get(animal) ?? 0) + count);
  const all = [...byKind].map(([id, count]) => counted(count, animalById.get(id)?.commonName ?? id));
  return all.length <= 3 ? all.join(", ") : `${all.slice(0, 3).join(", ")} and others`;
}

const lastOf = (some: readonly HeadsChanged[]): string =>
  some
    .map(({ on }) => on)
    .sort()
    .at(-1) ?? "";

function foundAdvice(known: KnownOfTank, found: readonly HeadsChanged[]): Advice[] {
  if (found.length === 0) return [];
  const heads = headsIn(found);
  const last = lastOf(found);
  const ammonia = valuesOf(known, "tan_mg_n_per_l").at(-1);
  const eased = ammonia !== undefined && ammonia.on >= last && isUnreadable(ammonia, "tan_mg_n_per_l");
  const many = heads >= MANY_FOUND;
  const today = many && !eased;
  return [
    {
      id: "heads.found",
      urgency: today ? "today" : "this_week",
      weight: today ? 92 + Math.min(3, (heads - MANY_FOUND) / 4) : many ? 74 : heads === 2 ? 70 : 60,
      about: "heads",
      do: [
        eased
          ? "Look for what killed them: salinity, copper, a hunter by night."
          : many
            ? "Take out what is dead, then test ammonia, salinity and temperature now."
            : "Take out what is dead, then test ammonia and salinity.",
      ],
      why: [
        [
          `Found dead: ${named(found)}, the last on ${dateWords(last)}. Nothing kept since says that it is over.`,
        ],
        [
          eased
            ? "The tests since then show no ammonia: it is not that."
            : "A dead animal gives off ammonia, and what killed it may be there still.",
        ],
      ],
      byWhen: [today ? "Today." : "This week."],
      by: today ? known.today : null,
      wouldChange: ["An ammonia test that shows none, then two weeks of readings without another loss."],
      restsOn: found.map(({ entry }) => entry).join(" "),
      act: { words: "What to do first", leads: "wrong:dead" },
      wait: { words: "Test before acting", leads: "readings" },
    },
  ];
}

function fearedAdvice(known: KnownOfTank, feared: readonly HeadsChanged[]): Advice[] {
  if (feared.length === 0) return [];
  const heads = headsIn(feared);
  const there = known.facts.present.reduce((sum, { count }) => sum + count, 0);
  const mass = heads >= MANY_FEARED && heads >= MANY_FEARED_SHARE * there;
  return [
    {
      id: "heads.feared",
      urgency: mass ? "today" : heads >= 2 ? "this_week" : "next_visit",
      weight: mass ? 91 : heads >= 2 ? Math.min(64, 54 + heads) : 25,
      about: "heads",
      do: [
        mass
          ? "Test ammonia now, and count by torch an hour after dark."
          : "Count by torch an hour after dark before you call it a loss.",
      ],
      why: [
        [
          `Missing: ${named(feared)}, told on ${dateWords(lastOf(feared))}. Nothing kept since says otherwise.`,
        ],
        ["Many kinds lie buried by day, and hide for days after a moult: missing is not dead."],
      ],
      byWhen: [mass ? "Today." : heads >= 2 ? "This week." : "At the next look by night."],
      by: mass ? known.today : null,
      wouldChange: ["A head count by night that finds half of them or more."],
      restsOn: feared.map(({ entry }) => entry).join(" "),
      act: { words: "Log a head count", leads: "heads" },
      wait: { words: "Wait: look again tonight", leads: "daybook" },
    },
  ];
}
