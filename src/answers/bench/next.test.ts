import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import { MEASURED } from "../../contract/daybook/reading.ts";
import type { WavesOutput } from "../../contract/output/waves.ts";
import { plain } from "../sentence.ts";
import type { LatestReading } from "./latest.ts";
import { adviceFor, type BenchScene, URGENCY_ORDER } from "./next.ts";

const today = "2026-06-15";

const wave = (from: string): WavesOutput["waves"][number] => ({
  number: 1,
  from,
  to: "2026-06-28",
  safe_start_share: 0.5,
  only_if: ["film is back on the glass within a week of wiping"],
  sooner_if: "the glass needs wiping twice as often as now",
  stop_if: "a snail lies on its back",
  animals: [
    {
      id: "trochus-snail",
      name: "trochus snail",
      count: 3,
      eats: ["film_glass"],
      binding: { kind: "food", text: "food", figure: null },
      cautions: [],
      only_if: [],
      spare_shells: 0,
      figures: { count: "plan.trochus-snail.count", spare_shells: null },
    },
  ],
  supply_pessimistic_mg_c_per_day: {},
  supply_central_mg_c_per_day: {},
  eaten_central_mg_c_per_day: {},
  figures: { from: "plan.wave.1.from", safe_start: "plan.wave.1.safe", shelves: {} },
});

/** A plan with nothing in it but what advice is made of. */
const plan = (change: Partial<WavesOutput>): WavesOutput =>
  ({
    kind: "nothing_yet",
    because: ["In 15 of 20 runs the larder offers 1.1 rations a day."],
    because_figures: ["plan.because.0"],
    look_again_on: "2026-07-21",
    look_again_figure: "plan.look_again",
    waves: [],
    fed_by_hand: [],
    left_to_hand: [],
    would_change: [],
    ...change,
  }) as unknown as WavesOutput;

const reading = (change: Partial<LatestReading>): LatestReading => ({
  quantity: "no3_mg_per_l",
  label: "Nitrate",
  text: "10",
  on: today,
  ageDays: 0,
  flag: null,
  said: null,
  entry: null,
  count: 1,
  ...change,
});
const fine = MEASURED.map((quantity) => reading({ quantity, label: MEASURES[quantity].label }));

const scene = (change: Partial<BenchScene>): BenchScene => ({
  facts: { trouble: null, medicines: [], asOf: today },
  latest: fine,
  waves: null,
  today,
  ...change,
});
const danger = reading({
  quantity: "tan_mg_n_per_l",
  label: "Ammonia",
  text: "1.2 mg/L as N",
  flag: "danger",
  said: 'Ammonia "1.2 mg/L as N": 1.2 mg/L: act today',
});

describe("what comes first", () => {
  test("a dangerous reading, before everything that is well", () => {
    const [first] = adviceFor(
      scene({ latest: [...fine, danger], waves: plan({ kind: "waves", waves: [wave(today)] }) }),
    );
    expect(first).toMatchObject({ urgency: "today", about: "danger" });
    expect(first.why.map(plain)[0]).toBe("Ammonia 1.2 mg/L: act today.");
  });

  test("a dangerous reading of which nothing was said is told as it was typed", () => {
    const [first] = adviceFor(scene({ latest: [...fine, { ...danger, said: null }] }));
    expect(first.why.map(plain)[0]).toBe("Ammonia 1.2 mg/L as N is out of bounds.");
  });

  test("nothing is added while something is dangerous: the wave is not even brought up", () => {
    const waves = plan({ kind: "waves", waves: [wave(today)] });
    const abouts = (one: BenchScene) => adviceFor(one).map(({ about }) => about);
    expect(abouts(scene({ latest: [...fine, danger], waves }))).not.toContain("wave");
    expect(abouts(scene({ waves }))).toContain("wave");
  });

  test("something wrong now, then medicine in the water", () => {
    const facts = { trouble: "fish gasping", medicines: ["copper"], asOf: today };
    expect(
      adviceFor(scene({ facts }))
        .map(({ about }) => about)
        .slice(0, 2),
    ).toEqual(["trouble", "medicine"]);
  });

  test("an open wave shows its gate, and waiting beside it", () => {
    const [first] = adviceFor(scene({ waves: plan({ kind: "waves", waves: [wave(today)] }) }));
    expect(plain(first.do)).toBe("Add 3 trochus snails, but only if the gate below is open.");
    expect(first.why.map(plain).join(" ")).toContain("film is back on the glass");
    expect(first.wait.words).toContain("22 Jun 2026");
  });

  test("a later wave is waited for, and names its day", () => {
    const [first] = adviceFor(scene({ waves: plan({ kind: "waves", waves: [wave("2026-07-20")] }) }));
    expect(first).toMatchObject({ urgency: "next_visit", about: "wave" });
    expect(plain(first.do)).toBe("Wait with the first wave until 20 Jul 2026.");
  });

  test("nothing yet says why and when to look again, the number with its working", () => {
    const [first] = adviceFor(scene({ waves: plan({}) }));
    expect(plain(first.byWhen)).toBe("Look again on 21 Jul 2026.");
    expect(first.why[0]?.some((part) => typeof part !== "string" && part.figure === "plan.because.0")).toBe(
      true,
    );
  });

  const hungry = (name: string) => ({
    ...{ id: name, name, standing: "resident" as const, mg_c_per_day: 4, dry_feed_mg_per_day: 9.54 },
    figures: { food: "a", dry_feed: "b" },
  });

  test("animals that find too little, then hand work", () => {
    const advice = adviceFor(
      scene({
        waves: plan({
          fed_by_hand: [hungry("trochus snail")],
          left_to_hand: [{ shelf: "film_glass", mg_c_per_day: 11, text: "wipe the glass", figure: "c" }],
        }),
      }),
    );
    expect(advice.map(({ about }) => about)).toEqual(["hungry", "nothing_yet", "hand_work"]);
  });

  test.each([
    [["banded trochus snail"], "Feed the banded trochus snail by hand, or give some away."],
    [["trochus snail", "turbo snail"], "Feed the trochus snail and turbo snail by hand, or give some away."],
    [
      ["trochus snail", "turbo snail", "abalone"],
      "Feed the trochus snail, turbo snail and 1 more kind by hand, or give some away.",
    ],
    [
      ["trochus snail", "turbo snail", "abalone", "urchin"],
      "Feed the trochus snail, turbo snail and 2 more kinds by hand, or give some away.",
    ],
  ])("%j are named in one sentence, with one amount each", (names, words) => {
    const [first] = adviceFor(scene({ waves: plan({ fed_by_hand: names.map(hungry) }) }));
    expect(plain(first.do)).toBe(words);
    expect(plain(first.why[0]!)).toContain("about 9.5 mg of dry food a day");
  });

  test("a missing reading comes last, and only where none is newer than four weeks", () => {
    const old = fine.map((one) => (one.quantity === "po4_mg_per_l" ? { ...one, ageDays: 29 } : one));
    const advice = adviceFor(scene({ latest: old, waves: plan({}) }));
    expect(advice.at(-1)).toMatchObject({ urgency: "cannot_tell", about: "missing" });
    expect(plain(advice.at(-1)!.do)).toContain("phosphate");
  });

  test("there is always something, and it may be to wait", () => {
    expect(adviceFor(scene({}))[0].wait.words).toContain("Wait");
  });
});

const anyReading = fc.record({
  quantity: fc.constantFrom(...MEASURED),
  ageDays: fc.integer({ min: 0, max: 400 }),
  flag: fc.constantFrom(null, "unusual" as const),
});
const anyScene = fc
  .record({
    readings: fc.array(anyReading, { maxLength: 10 }),
    waves: fc.constantFrom(null, plan({}), plan({ kind: "waves", waves: [wave(today)] })),
    medicines: fc.constantFrom<readonly string[]>([], ["copper"]),
  })
  .map(({ readings, waves, medicines }) =>
    scene({ latest: readings.map(reading), waves, facts: { trouble: null, medicines, asOf: today } }),
  );

test("one danger among however much that is well puts the tank at today: making one input worse never lowers it", () => {
  fc.assert(
    fc.property(anyScene, fc.nat(), (before, at) => {
      const rank = (one: BenchScene) => URGENCY_ORDER.indexOf(adviceFor(one)[0].urgency);
      const latest = [...before.latest];
      latest.splice(at % (latest.length + 1), 0, danger);
      expect(rank({ ...before, latest })).toBe(0);
      expect(rank({ ...before, facts: { ...before.facts, trouble: "gasping" } })).toBeLessThanOrEqual(
        rank(before),
      );
    }),
  );
});

test("every piece of advice has its four parts, in a first sentence of at most twenty words", () => {
  fc.assert(
    fc.property(anyScene, (one) => {
      for (const advice of adviceFor({ ...one, latest: [...one.latest, danger] })) {
        expect(plain(advice.do).split(/\s+/).length).toBeLessThanOrEqual(20);
        for (const part of [advice.do, ...advice.why, advice.byWhen, advice.wouldChange])
          expect(plain(part)).toMatch(/[.]$/);
        expect(advice.wait.words).not.toBe("");
      }
    }),
  );
});
