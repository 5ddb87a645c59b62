/** Dated care of the animals themselves: counts that would settle something, fallen snails, orders, gates of waves. */
import { animalById } from "../../catalogue/index.ts";
import { addDays, daysBetween } from "../../contract/quantity/calendar.ts";
import { GATE_WORDS } from "../../engine/stocking/gates.ts";
import { judgeGate } from "../bench/gate.ts";
import { bandWords } from "../heads/words.ts";
import type { RecordScene } from "../record-scene.ts";
import { linked, type Sentence, told } from "../sentence.ts";
import { counted, dateWords, withDates } from "../words.ts";
import { type AlmanacScene, type Dated, dated, duty, later, undated } from "./scene.ts";

/** Heads that a band may be wide before a count is worth its evening; as the heads' own advice has it. */
const WIDE = 2;
const COUNTED_LATELY = 21;
const MOST_COUNTS = 3;

/** Counts stand on one evening: the coming Saturday, or today where it is one. Judgement: most have time then. */
export function countDates({ heads, today }: AlmanacScene): Dated {
  const width = ({ living }: (typeof heads.kinds)[number]) => living.high - living.low;
  const evening = comingSaturday(today);
  const wide = heads.kinds
    .filter((kind) => width(kind) >= WIDE)
    .filter(({ last_count: last }) => {
      return last === null || last.says !== "so_many" || daysBetween(last.on, today) >= COUNTED_LATELY;
    })
    .toSorted((a, b) => width(b) - width(a))
    .slice(0, MOST_COUNTS);
  return dated(
    ...wide.map((kind) =>
      duty({
        ...{ id: `count.${kind.id}`, kind: "count", on: evening },
        do: [`Count the ${counted(2, kind.name).slice(2)} ${kind.seen.way}.`],
        why: [
          [
            "By what is logged ",
            told(bandWords(kind.living), kind.figures.now),
            " of them may live; in such a count each is seen with a chance of ",
            told(`${Math.round(100 * kind.seen.chance.central)} %`, kind.figures.seen),
            ".",
          ],
        ],
        byWhen: [`On ${dateWords(evening)}, or any quiet evening near it.`],
        wouldChange: [kind.settles],
        restsOn: `${kind.living.low} ${kind.living.high} ${kind.last_count?.on ?? "never counted"}`,
        done: { kind: "head_count", fields: { animal: kind.name } },
        leads: "heads",
      }),
    ),
  );
}

const SATURDAY = 6;
function comingSaturday(today: string): string {
  const weekday = new Date(`${today}T00:00:00Z`).getUTCDay();
  return addDays(today, (SATURDAY - weekday + 7) % 7);
}

/** Seen lying lately: look every day; else now and then as you feed. Days are judgement. */
const [LATELY_DAYS, EVERY_LATELY, EVERY_USUALLY] = [14, 1, 3];

export function rightingDates({ facts, record, today }: RecordScene): Dated {
  const kinds = facts.present.flatMap(({ id, count }) => {
    const animal = animalById.get(id);
    const helpless = animal?.canRightItself === "no" || animal?.canRightItself === "poorly";
    return count > 0 && helpless ? [animal] : [];
  });
  const [first] = kinds;
  if (first === undefined) return { dates: [], undated: [] };
  const seen = record.observations.some(
    (one) => one.kind === "sign" && one.sign === "fallen_snails" && daysBetween(one.on, today) <= LATELY_DAYS,
  );
  const every = seen ? EVERY_LATELY : EVERY_USUALLY;
  const names = [...new Set(kinds.map(({ commonName }) => commonName))];
  const list = names.map((name) => counted(2, name).slice(2)).join(" and ");
  const done = record.happenings
    .flatMap((one) => (one.kind === "chore" && one.chore === "fallen_snails_righted" ? [one.on] : []))
    .at(-1);
  return dated(
    duty({
      ...{ id: "righting", kind: "righting", every },
      on: later(done === undefined ? today : addDays(done, every), today),
      do: [names.length > 2 ? "Turn over snails that have fallen." : `Turn over ${list} that have fallen.`],
      why: [
        [
          `${names.length > 2 ? `${names.length} kinds here` : capital(list)} can't right themselves on sand, or do so poorly; one that lies is eaten or starves.`,
        ],
        ...(seen ? [["Some were seen lying within the last two weeks."] as Sentence] : []),
      ],
      byWhen: ["As you feed; a look is enough."],
      wouldChange: ["Two weeks in which none was seen lying, or other kinds."],
      restsOn: `${names.join()} ${seen}`,
      done: { kind: "chore", fields: { chore: "fallen_snails_righted" } },
      leads: "heads",
    }),
  );
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** The order that is worth sending, if the heads ask for one and nothing holds newcomers back. */
export function orderDates({ heads, advice, today }: AlmanacScene): Dated {
  const order = heads.orders[0];
  const asked = advice.find(({ about }) => about === "top_up");
  if (order === undefined || !order.worth || asked === undefined) return { dates: [], undated: [] };
  const kinds = order.items.map(({ id }) => id).toSorted();
  return dated(
    duty({
      ...{ id: `order.${kinds.join("_")}`, kind: "order", on: later(order.latest, today) },
      do: asked.do,
      why: asked.why,
      gate: ["Only if nothing died or ails unexplained since, and the tank's last tests are in order."],
      byWhen: asked.byWhen,
      wouldChange: asked.wouldChange,
      restsOn: order.items.map(({ id, count }) => `${id} ${count}`).join(),
      leads: "heads",
    }),
  );
}

/** Waves of the plan, each behind its gate; or the day to look again where nothing may be added yet. */
export function waveDates({ waves, advice, today, facts, record }: AlmanacScene): Dated {
  if (waves.kind === "nothing_yet") return nothingYet(waves, today);
  const [next] = waves.waves;
  const known = { facts, record, today, latest: [], answeredOn: null };
  const lookAgain = next === undefined ? null : judgeGate(next, waves, known).lookAgain;
  const closed = waves.waves.length > 0 && !advice.some(({ about }) => about === "wave");
  return dated(
    ...waves.waves.map((wave, i) => {
      const which = `wave ${wave.number}`;
      const from = told(dateWords(wave.from), wave.figures.from);
      return duty({
        ...{ id: `wave.${wave.number}`, kind: "wave" },
        // Before that day the next gate can't be met: as the bench says.
        on: later(later(wave.from, today), (i === 0 ? lookAgain : null) ?? today),
        do: closed
          ? [`Wait with ${which}: first what the bench asks for.`]
          : [`Look whether the gate of ${which} is open. Add it only then; else wait.`],
        gate: [
          `Only if ${wave.only_if.join("; ")}. Stop if ${wave.stop_if}.`,
          ...(i === 0 ? [] : [" Those before it must have come and done well."]),
        ],
        why: [
          ["It would bring ", ...broughtBy(wave), "."],
          ["Its window is ", from, ` to ${dateWords(wave.to)}; waiting costs nothing.`],
        ],
        byWhen: [
          wave.sooner_if === GATE_WORDS.open
            ? `Its window is open until ${dateWords(wave.to)}.`
            : `Not before ${dateWords(wave.from)}, sooner if ${wave.sooner_if}.`,
        ],
        wouldChange: [
          waves.would_change[0] === undefined
            ? "A count or a test that the gate asks for."
            : `Knowing ${waves.would_change[0].label} better: ${waves.would_change[0].ask}.`,
        ],
        restsOn: JSON.stringify([wave.animals.map(({ id, count }) => [id, count]), wave.only_if, closed]),
        done: i === 0 ? { kind: "addition", fields: { wave: String(wave.number) } } : null,
        leads: "waves",
      });
    }),
  );
}

type Waves = AlmanacScene["waves"];

const broughtBy = ({ animals }: Waves["waves"][number]): Sentence =>
  animals.flatMap(
    ({ name, count, figures }, i): Sentence => [
      ...(i === 0 ? [] : [i === animals.length - 1 ? " and " : ", "]),
      told(counted(count, name), figures.count),
    ],
  );

function nothingYet(
  { look_again_on: on, look_again_figure: figure, because, because_figures }: Waves,
  today: string,
): Dated {
  const why = because.map((text, i) => linked(withDates(text), because_figures[i]));
  if (on === null)
    return undated("look.plan", "The next wave", [
      "Nothing is to be added, and no date would change it: what stands in the way has to go first.",
    ]);
  return dated(
    duty({
      ...{ id: "look.plan", kind: "look", on: later(on, today) },
      do: ["Look again whether the first animals may come. Add nothing before."],
      why,
      byWhen: [
        "On ",
        figure === null ? dateWords(on) : told(dateWords(on), figure),
        "; waiting costs nothing.",
      ],
      wouldChange: ["What stands in the way, gone and logged."],
      restsOn: because.join(" "),
      leads: "waves",
    }),
  );
}
