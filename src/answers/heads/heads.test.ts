/** Heads of invented tanks, out of records made by hand. */
import { expect, test } from "vitest";
import { findAnimal } from "../../catalogue/index.ts";
import { headsOutput } from "../../contract/output/heads.ts";
import { readTankFile } from "../../contract/tank-file/read.ts";
import type { HeadsChanged, HeadsSeen, Observation, TankRecord } from "../../engine/types/record.ts";
import { plain } from "../sentence.ts";
import { headsOf, restingWords } from "./heads.ts";
import { earlierCountsWords, livingSentence, lossSentence } from "./words.ts";

const TODAY = "2026-06-15";

function factsOf(animals: string, more = ""): Parameters<typeof headsOf>[0]["facts"] {
  const read = readTankFile(
    `grazewell_tank: 1
name: Try tank
water_l: 240 L
first_seawater_on: 2025-03-01
floor: { kind: sand, depth_mm: 40 mm, grain: fine }
fish: [{ animal: clownfish, count: 2 }]
animals_present: [${animals}]
${more}`,
    { today: TODAY, findAnimal },
  );
  if (!read.ok) throw new Error(JSON.stringify(read.findings[0]));
  return read.facts;
}

const changed = (kind: HeadsChanged["kind"], animal: string, count: number, on: string): HeadsChanged => ({
  ...{ kind, animal, count, on, entry: `${kind} ${on}` },
  ...{ condition: null, bodyRemoved: null, wave: null },
});
const counted = (
  animal: string,
  seen: number,
  on: string,
  hours: number | null,
  torch = true,
): HeadsSeen => ({
  ...{ kind: "heads", animal, seen, on, entry: `count ${on}`, about: false },
  ...{ hoursFromLightsOut: hours, torch, foodOffered: true },
});
const seenGrowth = (growth: "film_glass", score: number, on: string): Observation => ({
  ...{ kind: "growth", growth, score, traits: {}, on, entry: `growth ${on}` },
});
const record = (
  happenings: TankRecord["happenings"] = [],
  observations: TankRecord["observations"] = [],
): TankRecord => ({ happenings, observations, declined: [], asOf: TODAY });

const saidOf = (facts: ReturnType<typeof factsOf>, kept: TankRecord) =>
  headsOf({ facts, record: kept, today: TODAY });

const kindOf = (said: ReturnType<typeof headsOf>, id: string) =>
  said.output.kinds.find((kind) => kind.id === id)!;

test("what came, what was found, and a sentence with word and number", () => {
  const facts = factsOf("{ animal: trochus-snail, count: 4 }");
  const said = saidOf(
    facts,
    record(
      [
        changed("added", "trochus-snail", 5, "2026-01-10"),
        changed("lost_found", "trochus-snail", 1, "2026-04-02"),
      ],
      [counted("trochus-snail", 4, "2026-06-10", 2)],
    ),
  );
  expect(() => headsOutput.parse(said.output)).not.toThrow();
  const kind = kindOf(said, "trochus-snail");
  expect(kind).toMatchObject({ came: 5, on_record: 4, lost_found: 1, living: { likely: 4, high: 4 } });
  expect(plain(livingSentence(kind))).toMatch(/^5 banded trochus snails came; \d.* live.*of 20\)\.$/);
  expect(plain(lossSentence(kind))).toContain("1 found dead.");
  expect(kind.known).toMatchObject({ deaths: 1 });
});

test("heads that the answers tell, with no day and no count, are not called settled", () => {
  const kept = record([changed("added", "astraea-snail", 3, "2025-06-10")]);
  const kind = kindOf(
    saidOf(factsOf("{ animal: trochus-snail, count: 5 }, { animal: astraea-snail, count: 3 }"), kept),
    "trochus-snail",
  );
  expect(kind.came).toBe(5);
  expect(kind.living.low).toBeLessThan(5);
});

test("a count by day says nothing of those in the sand, and says so", () => {
  const facts = factsOf("{ animal: nassarius-snail, count: 6 }");
  const added = [changed("added", "nassarius-snail", 6, "2026-05-01")];
  const without = kindOf(saidOf(facts, record(added)), "nassarius-snail");
  const after = kindOf(
    saidOf(facts, record(added, [counted("nassarius-snail", 0, "2026-06-10", -4, false)])),
    "nassarius-snail",
  );
  expect(after.living).toEqual(without.living);
  expect(after.last_count).toMatchObject({ seen: 0, says: "at_least" });
  expect(after.last_count!.why).toContain("not missing");
});

test("every count is told beside those on record that day, the latest first", () => {
  const facts = factsOf("{ animal: nassarius-snail, count: 5 }");
  const changes = [
    changed("added", "nassarius-snail", 6, "2026-05-01"),
    changed("lost_found", "nassarius-snail", 1, "2026-05-20"),
  ];
  const looks = [
    counted("nassarius-snail", 3, "2026-05-10", 2, true),
    counted("nassarius-snail", 1, "2026-06-10", -4, false),
  ];
  const kind = kindOf(saidOf(facts, record(changes, looks)), "nassarius-snail");
  expect(kind.counts).toEqual([
    { on: "2026-06-10", seen: 1, of: 5, says: "at_least" },
    { on: "2026-05-10", seen: 3, of: 6, says: "so_many" },
  ]);
  expect(earlierCountsWords(kind)).toBe("Counted before: 3 of 6 on 10 May 2026.");
  expect(earlierCountsWords({ ...kind, counts: kind.counts.slice(0, 1) })).toBeNull();
});

test("more seen than on record is a question, and the record's number stands", () => {
  const said = saidOf(
    factsOf("{ animal: nassarius-snail, count: 5 }"),
    record([], [counted("nassarius-snail", 7, "2026-06-01", 2)]),
  );
  const kind = kindOf(said, "nassarius-snail");
  expect(kind.more_seen).toEqual({ on: "2026-06-01", seen: 7, on_record: 5, breeds: false });
  expect(kind.living.high).toBe(5);
  expect(said.advice.map(({ id }) => id)).toContain("heads.nassarius-snail.more_seen");
});

test("many gone, count after count: a question, with source water first for snails that nothing else explains", () => {
  const said = saidOf(
    factsOf("{ animal: trochus-snail, count: 8 }"),
    record(
      [changed("added", "trochus-snail", 8, "2025-11-01")],
      [
        counted("trochus-snail", 8, "2026-04-20", 2),
        counted("trochus-snail", 8, "2026-04-27", 2),
        counted("trochus-snail", 3, "2026-05-25", 2),
        counted("trochus-snail", 2, "2026-06-01", 2),
        counted("trochus-snail", 1, "2026-06-08", 2),
      ],
    ),
  );
  const { question } = kindOf(said, "trochus-snail");
  expect(question).not.toBeNull();
  expect(question!.causes[0]!.id).toBe("source_water");
  for (const cause of question!.causes) expect(cause.tell).not.toBe("");
  const advice = said.advice.find(({ id }) => id === "heads.trochus-snail.losses")!;
  expect(advice.urgency).toBe("this_week");
  // New ones wait until the cause is known.
  expect(said.output.orders.flatMap(({ items }) => items.map(({ id }) => id))).not.toContain("trochus-snail");
  expect(said.output.held_back.map(({ id }) => id)).toContain("trochus-snail");
});

test("upturned snails seen lately go before source water", () => {
  const fell: Observation = {
    ...{ kind: "sign", sign: "fallen_snails", animal: "astraea-snail", count: 2, kindsSeen: null },
    ...{ hoursFromLightsOut: null, traits: {}, on: "2026-06-02", entry: "sign" },
  };
  const said = saidOf(
    factsOf("{ animal: astraea-snail, count: 1 }"),
    record(
      [
        changed("added", "astraea-snail", 9, "2026-01-01"),
        changed("lost_found", "astraea-snail", 4, "2026-05-28"),
        changed("lost_found", "astraea-snail", 4, "2026-06-04"),
      ],
      [counted("astraea-snail", 9, "2026-05-20", 2), fell],
    ),
  );
  const { question } = kindOf(said, "astraea-snail");
  expect(question!.causes[0]).toMatchObject({ id: "fallen" });
  expect(question!.causes.findIndex(({ id }) => id === "source_water")).toBeGreaterThan(0);
});

test("an intact cast shell is no loss: said, and a fear about then moves nothing", () => {
  const facts = factsOf("{ animal: scarlet-hermit, count: 3 }");
  const cast: Observation = {
    ...{ kind: "sign", sign: "cast_shell", animal: "scarlet-hermit", count: 1, kindsSeen: null },
    ...{ hoursFromLightsOut: null, traits: {}, on: "2026-06-09", entry: "sign" },
  };
  const added = changed("added", "scarlet-hermit", 3, "2026-03-01");
  const feared = changed("lost_feared", "scarlet-hermit", 1, "2026-06-12");
  const calm = kindOf(saidOf(facts, record([added], [cast])), "scarlet-hermit");
  const withFear = kindOf(saidOf(facts, record([added, feared], [cast])), "scarlet-hermit");
  const without = kindOf(saidOf(facts, record([added, feared])), "scarlet-hermit");
  expect(withFear.cast_shell_on).toBe("2026-06-09");
  expect(withFear.living_of_20).toEqual(calm.living_of_20);
  const sum = (of20: readonly number[]) => of20.reduce((all, heads) => all + heads, 0);
  expect(sum(without.living_of_20)).toBeLessThan(sum(withFear.living_of_20));
});

test("bare glass for a week: food by hand or another home, in numbers, never the wild", () => {
  const said = saidOf(
    factsOf("{ animal: trochus-snail, count: 8 }"),
    record([], [seenGrowth("film_glass", 0, "2026-06-03"), seenGrowth("film_glass", 0, "2026-06-12")]),
  );
  expect(said.output.bare_glass_days).toBe(9);
  const [row] = said.output.way_down;
  expect(row).toMatchObject({ id: "trochus-snail", shelf: "film_glass", heads: 8 });
  expect(row!.fewer).toBeGreaterThan(0);
  expect(row!.dry_feed_mg_per_day).toBeGreaterThan(0);
  const advice = said.advice.find(({ id }) => id === "way_down.trochus-snail")!;
  expect(advice.why.map(plain).join(" ")).toContain("never the wild");
});

test("pods and worms are not counted by the head", () => {
  const said = saidOf(factsOf("{ animal: copepods, count: many }"), record());
  expect(said.output.not_followed.map(({ id }) => id)).toEqual(["copepods"]);
  expect(kindOf(said, "copepods")).toBeUndefined();
});

test("every figure that outputs and advice name is there, and each working leads on", () => {
  const said = saidOf(
    factsOf("{ animal: trochus-snail, count: 3 }, { animal: nassarius-snail, count: 2 }"),
    record(
      [
        changed("added", "trochus-snail", 8, "2025-11-01"),
        changed("lost_found", "trochus-snail", 5, "2026-05-01"),
        changed("added", "nassarius-snail", 8, "2025-11-01"),
        changed("lost_found", "nassarius-snail", 6, "2026-05-01"),
      ],
      [seenGrowth("film_glass", 0, "2026-06-03"), seenGrowth("film_glass", 0, "2026-06-12")],
    ),
  );
  const ids = new Set(said.figures.map(({ id }) => id));
  const named = JSON.stringify([said.output, said.advice]).match(/heads\.[a-z-]+\.[a-z_0-9]+/g) ?? [];
  const figures = named.filter((id) => !/\.(losses|count|more_seen)$/.test(id));
  expect(figures.length).toBeGreaterThan(20);
  for (const id of figures) expect(ids, id).toContain(id);
  for (const figure of said.figures) {
    for (const { figure: link } of figure.working.inputs)
      if (link?.startsWith("heads.") === true) expect(ids, `${figure.id} leads to ${link}`).toContain(link);
    expect(figure.working.formulaKey).toMatch(/^heads\.md#/);
  }
});

test("advice is one sentence of twenty words at most, the verb first", () => {
  const said = saidOf(
    factsOf("{ animal: nassarius-snail, count: 9 }, { animal: trochus-snail, count: 6 }"),
    record([
      changed("added", "nassarius-snail", 12, "2025-10-01"),
      changed("lost_found", "nassarius-snail", 3, "2026-02-01"),
    ]),
  );
  expect(said.advice.length).toBeGreaterThan(0);
  for (const { do: what } of said.advice) expect(plain(what).split(/\s+/).length).toBeLessThanOrEqual(20);
});

test("dead, resting or moulted: every group of the form has words of its own", () => {
  expect(restingWords("hermit").looksDead).toContain("cast skin");
  expect(restingWords("snail").dead).toContain("foul");
});
