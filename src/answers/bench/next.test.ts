import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { MEASURED } from "../../contract/daybook/reading.ts";
import type { WavesOutput } from "../../contract/output/waves.ts";
import { type Advice, URGENCY_ORDER } from "../advice.ts";
import { plain } from "../sentence.ts";
import { restsOn } from "./declined.ts";
import { adviceFor, type BenchScene } from "./next.ts";
import {
  ago,
  facts,
  filmBack,
  fine,
  growth,
  moved,
  outage,
  reading,
  record,
  scene,
  seen,
  sign,
  TODAY as today,
  treated,
} from "./test-kit/scene.ts";

const wave = (from: string): WavesOutput["waves"][number] => ({
  number: 1,
  from,
  to: "2026-06-28",
  planned_share: 0.5,
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
  figures: { from: "plan.wave.1.from", planned_share: "plan.wave.1.safe", shelves: {} },
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
    residents: [],
    fed_by_hand: [],
    left_to_hand: [],
    would_change: [],
    ...change,
  }) as unknown as WavesOutput;

const standing = (one: BenchScene) => adviceFor(one).standing;
const danger = reading({
  quantity: "tan_mg_n_per_l",
  label: "Ammonia",
  text: "1.2 mg/L as N",
  flag: "danger",
  said: 'Ammonia "1.2 mg/L as N": 1.2 mg/L: act today',
});

describe("what comes first", () => {
  test("a dangerous reading, before everything that is well", () => {
    const [first] = standing(
      scene({ latest: [...fine, danger], waves: plan({ kind: "waves", waves: [wave(today)] }) }),
    );
    expect(first).toMatchObject({ urgency: "today", about: "danger" });
    expect(first.why.map(plain)[0]).toBe("Ammonia 1.2 mg/L: act today.");
  });

  test("a dangerous reading of which nothing was said is told as it was typed", () => {
    const [first] = standing(scene({ latest: [...fine, { ...danger, said: null }] }));
    expect(first.why.map(plain)[0]).toBe("Ammonia 1.2 mg/L as N is out of bounds.");
  });

  test("nothing is added while something is dangerous: the wave is not even brought up", () => {
    const waves = plan({ kind: "waves", waves: [wave(today)] });
    const abouts = (one: BenchScene) => standing(one).map(({ about }) => about);
    expect(abouts(scene({ latest: [...fine, danger], waves }))).not.toContain("wave");
    expect(abouts(scene({ waves }))).toContain("wave");
  });

  test("something wrong now, then medicine in the water", () => {
    const told = facts({ trouble: "fish gasping", medicines: ["formalin"] });
    expect(
      standing(scene({ facts: told }))
        .map(({ about }) => about)
        .slice(0, 2),
    ).toEqual(["trouble", "medicine"]);
  });

  const withWave = (change: Partial<BenchScene>) =>
    standing(scene({ waves: plan({ kind: "waves", waves: [wave(today)] }), ...change }))[0];

  test("an open wave whose gate can't be told: what would settle it, and waiting beside it", () => {
    const first = withWave({});
    expect(plain(first.do)).toBe("Look whether the gate of the first wave is met, and wait until then.");
    expect(first.why.map(plain).join(" ")).toContain(
      "Can't tell yet: film is back on the glass within a week of wiping.",
    );
    expect(first.wait.words).toContain("22 Jun 2026");
  });

  test("an open wave whose gate is met may come, or wait; one whose gate is not met waits", () => {
    expect(plain(withWave({ record: record([filmBack(4, 3)]) }).do)).toBe(
      "Add 3 trochus snails: its gate is open. Or wait.",
    );
    const bare = withWave({ record: record([filmBack(12, 3)]) });
    expect(plain(bare.do)).toBe("Wait with the first wave: its gate is not met.");
    const why = bare.why.map(plain);
    expect(why[0]).toMatch(/^Not met: film is back on the glass/);
    expect(why).toContain("It would bring 3 trochus snails.");
  });

  test("what several growths ask for is told once, with the reasons of all", () => {
    const growth = (id: string, why: string): Advice => ({
      ...{ id, urgency: "next_visit", weight: 20, about: "growth", by: null },
      ...{ byWhen: ["At the next visit."], wouldChange: ["A look."] },
      wait: { words: "Wait", leads: "growths" },
      do: ["Feed a third less for two weeks."],
      why: [[why]],
      act: { words: "See causes", leads: "growths" },
    });
    const found = standing(
      scene({
        lists: [
          growth("growth.hair_algae", "Hair algae: tufts."),
          growth("growth.film_glass", "Film: thick."),
        ],
      }),
    ).filter(({ about }) => about === "growth");
    expect(found).toHaveLength(1);
    expect(found[0]?.why.map(plain)).toEqual(expect.arrayContaining(["Hair algae: tufts.", "Film: thick."]));
  });

  test("a later wave is waited for, and names its day", () => {
    const [first] = standing(scene({ waves: plan({ kind: "waves", waves: [wave("2026-07-20")] }) }));
    expect(first).toMatchObject({ urgency: "next_visit", about: "wave" });
    expect(plain(first.do)).toBe("Wait with the first wave until 20 Jul 2026.");
  });

  test("nothing yet says why and when to look again, the number with its working", () => {
    const [first] = standing(scene({ waves: plan({}) }));
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
    const advice = standing(
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
    const [first] = standing(scene({ waves: plan({ fed_by_hand: names.map(hungry) }) }));
    expect(plain(first.do)).toBe(words);
    expect(plain(first.why[0]!)).toContain("about 9.5 mg of dry food a day");
  });

  test("a missing reading comes last, and only where none is newer than four weeks", () => {
    const old = fine.map((one) => (one.quantity === "po4_mg_per_l" ? { ...one, ageDays: 29 } : one));
    const advice = standing(scene({ latest: old, waves: plan({}) }));
    expect(advice.at(-1)).toMatchObject({ urgency: "cannot_tell", about: "missing" });
    expect(plain(advice.at(-1)!.do)).toContain("phosphate");
  });

  test("there is always something, and it may be to wait", () => {
    expect(standing(scene({}))[0].wait.words).toContain("Wait");
  });
});

const first = (change: Partial<BenchScene>) => standing(scene(change))[0];

describe("the record alone can make it today", () => {
  const events: readonly (readonly [string, Partial<BenchScene>])[] = [
    ["danger.no2_mg_per_l", { record: record([seen("no2_mg_n_per_l", 0.3, 2)]) }],
    ["danger.tan_mg_n_per_l", { record: record([seen("tan_mg_n_per_l", 0.6, 2)]) }],
    ["danger.salinity_psu", { record: record([seen("salinity_psu", 35, 9), seen("salinity_psu", 31, 1)]) }],
    ["sign.waterline_snails", { record: record([sign("waterline_snails", 0, { kindsSeen: 3 })]) }],
    ["sign.ill_animals", { record: record([sign("ill_animals", 1, { count: 2 })]) }],
    ["heads.found", { record: record([], [moved("lost_found", 2, 1), moved("lost_found", 2, 0)]) }],
    ["heads.feared", { record: record([], [moved("lost_feared", 5, 2)]) }],
    ["outage.power", { record: record([], [outage("power", 9, 1)]) }],
    ["medicine", { record: record([], [treated("Copper sulfate", "started", 3)]) }],
  ];
  test.each(events)("%s", (id, change) => {
    expect(first(change)).toMatchObject({ id, urgency: "today" });
    expect(first(change).weight).toBeGreaterThanOrEqual(90);
  });

  test("a slip in steps that each look small is a slip", () => {
    const steps = [34.6, 34.8, 34.7, 32.8, 31].map((value, i) => seen("salinity_psu", value, 10 - i));
    expect(first({ record: record(steps) })).toMatchObject({ id: "danger.salinity_psu", urgency: "today" });
  });

  test("the same in small is no alarm", () => {
    const small: readonly Partial<BenchScene>[] = [
      { record: record([seen("no2_mg_n_per_l", 0.02, 2)]) },
      { record: record([seen("salinity_psu", 35, 9), seen("salinity_psu", 34, 1)]) },
      { record: record([sign("waterline_snails", 0, { kindsSeen: 1, count: 1 })]) },
      { record: record([], [moved("lost_found", 1, 1)]) },
      { record: record([], [outage("power", 1, 1)]) },
      { record: record([], [treated("copper", "started", 30), treated("Copper", "ended", 3)]) },
    ];
    for (const change of small) expect(first(change).urgency).not.toBe("today");
  });

  test("ammonia in a tank in which nothing lives is no danger", () => {
    const empty = facts({ present: [], fishWetG: { ...facts().fishWetG, low: 0, central: 0, high: 0 } });
    expect(first({ facts: empty, record: record([seen("tan_mg_n_per_l", 2, 0)]) }).urgency).not.toBe("today");
  });
});

describe("what settles an event", () => {
  const losses = [moved("lost_found", 4, 20)];
  const id = "heads.found";
  const has = (change: Partial<BenchScene>) => standing(scene(change)).find((one) => one.id === id);

  test("time alone does not, and another bad sign does not", () => {
    expect(has({ record: record([], losses) })?.urgency).toBe("today");
    expect(has({ record: record([sign("hiding", 5), sign("hiding", 1)], losses) })?.urgency).toBe("today");
  });

  test("an ammonia test that reads nothing eases it; two good days a week later end it", () => {
    const clear = seen("tan_mg_n_per_l", 0, 19, { censored: "below" });
    expect(has({ record: record([clear], losses) })?.urgency).toBe("this_week");
    const good = [seen("no3_mg_n_per_l", 2, 9), seen("no3_mg_n_per_l", 2, 4)];
    expect(has({ record: record(good, losses) })).toBeUndefined();
  });

  test("trouble and then three weeks without good news is today's matter, whatever else was seen", () => {
    const trouble = record([sign("ill_animals", 35), sign("hiding", 2)]);
    const advice = standing(scene({ record: trouble }));
    expect(advice[0]).toMatchObject({ id: "silence.after_trouble", urgency: "today" });
  });

  test("silence alone ranks, and stays below what was seen to be wrong", () => {
    const silent = { answeredOn: ago(200), record: record([seen("no3_mg_n_per_l", 2, 50)]) };
    expect(first(silent)).toMatchObject({ id: "silence", urgency: "this_week" });
    expect(plain(first(silent).why[0]!)).toBe("Nothing was kept for 50 days that shows it well.");
    const unusual = record([seen("ph", 7.2, 50, { flag: "unusual" })]);
    expect(first({ ...silent, record: unusual }).id).toBe("usual.ph");
  });
});

describe("a tank's own usual", () => {
  const nitrates = (latest: number, count: number) =>
    record([
      ...Array.from({ length: count }, (_, i) => seen("no3_mg_n_per_l", 12 + (i % 3) * 0.5, 60 - 5 * i)),
      seen("no3_mg_n_per_l", latest, 1, { flag: "unusual" }),
    ]);
  const ofNitrate = (latest: number, count: number) =>
    standing(scene({ record: nitrates(latest, count) })).find(({ id }) => id === "usual.no3_mg_per_l");

  test("before eight days of readings the general bounds hold; from then on its own", () => {
    expect(ofNitrate(12.5, 4)?.urgency).toBe("this_week");
    expect(ofNitrate(12.5, 10)).toMatchObject({ urgency: "next_visit" });
    expect(ofNitrate(30, 10)).toMatchObject({ urgency: "this_week" });
  });
});

describe("it never contradicts itself", () => {
  const waves = plan({ kind: "waves", waves: [wave(today)] });
  const topUp = (kind: string): Advice => ({
    ...adviceFor(scene()).standing[0],
    ...{ id: `top_up.${kind}`, about: "top_up", urgency: "this_week", weight: 50 },
  });
  const wayDown = (kind: string): Advice => ({ ...topUp(kind), id: `way_down.${kind}`, about: "way_down" });
  const abouts = (change: Partial<BenchScene>) => standing(scene(change)).map(({ about }) => about);

  test.each<readonly [string, Partial<BenchScene>]>([
    ["a danger", { latest: [...fine, danger] }],
    ["trouble", { facts: facts({ trouble: "gasping" }) }],
    ["medicine", { facts: facts({ medicines: ["formalin"] }) }],
    ["suspected dinoflagellates", { record: record([growth("dinoflagellates", 1, 3)]) }],
    ["several found dead", { record: record([], [moved("lost_found", 4, 1)]) }],
  ])("%s: nothing is to be added", (_, change) => {
    const said = abouts({ waves, lists: [topUp("conch")], ...change });
    expect(said).not.toContain("wave");
    expect(said).not.toContain("top_up");
  });

  test("a danger that was declined opens nothing", () => {
    const [advice] = standing(scene({ latest: [...fine, danger] }));
    const declined = {
      ...{ entry: "d", on: today, advice: advice.id, reason: "kit is old", restsOn: restsOn(advice) },
    };
    const said = adviceFor(scene({ latest: [...fine, danger], waves, record: record([], [], [declined]) }));
    expect(said.standing.map(({ about }) => about)).not.toContain("wave");
    expect(said.declined[0]?.advice.id).toBe(advice.id);
  });

  test("no kind is topped up and thinned at once; another may be", () => {
    const lists = [
      ...[topUp("conch"), wayDown("conch"), topUp("nassarius-snail")],
      topUp("conch+trochus-snail"),
    ];
    const ids = standing(scene({ lists })).map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(["way_down.conch", "top_up.nassarius-snail"]));
    expect(ids).not.toContain("top_up.conch");
    expect(ids).not.toContain("top_up.conch+trochus-snail");
  });

  test("of two with one id the weightier stands", () => {
    const lists = [topUp("conch"), { ...topUp("conch"), weight: 80 }];
    expect(
      standing(scene({ lists }))
        .filter(({ about }) => about === "top_up")
        .map(({ weight }) => weight),
    ).toEqual([80]);
  });
});

describe("declined advice", () => {
  const silentSince = (days: number) => ({ answeredOn: ago(days), record: record() });
  const declining = (change: Partial<BenchScene>) => {
    const advice = first(change);
    return { entry: "d", on: today, advice: advice.id, reason: "on holiday", restsOn: restsOn(advice) };
  };

  test("is not brought up again, and is listed with its reason", () => {
    const before = silentSince(30);
    const said = adviceFor(scene({ ...before, record: record([], [], [declining(before)]) }));
    expect(said.standing.map(({ id }) => id)).not.toContain("silence");
    expect(said.declined).toMatchObject([{ reason: "on holiday", advice: { id: "silence" } }]);
  });

  test("comes back when what it rests on has changed", () => {
    const declined = [declining(silentSince(30))];
    const later = { ...silentSince(45), record: record([], [], declined) };
    expect(adviceFor(scene(later)).standing.map(({ id }) => id)).toContain("silence");
  });

  test("a danger comes back with a new reading", () => {
    const dangerous = (entry: string) => [...fine, { ...danger, entry }];
    const declined = [declining({ latest: dangerous("one") })];
    const withDecline = (entry: string) =>
      adviceFor(scene({ latest: dangerous(entry), record: record([], [], declined) }));
    expect(withDecline("one").standing[0].about).not.toBe("danger");
    expect(withDecline("two").standing[0].about).toBe("danger");
  });

  test("the latest word counts: declined without what it rested on, it stands", () => {
    const known = declining(silentSince(30));
    const { restsOn: _, ...older } = known;
    const words = record([], [], [known, older]);
    expect(adviceFor(scene({ ...silentSince(30), record: words })).declined).toEqual([]);
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
    scene({ latest: readings.map(reading), waves, facts: facts({ medicines }) }),
  );

test("one danger among however much that is well puts the tank at today: making one input worse never lowers it", () => {
  fc.assert(
    fc.property(anyScene, fc.nat(), (before, at) => {
      const rank = (one: BenchScene) => URGENCY_ORDER.indexOf(standing(one)[0].urgency);
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
      for (const advice of standing({ ...one, latest: [...one.latest, danger] })) {
        expect(plain(advice.do).split(/\s+/).length).toBeLessThanOrEqual(20);
        for (const part of [advice.do, ...advice.why, advice.byWhen, advice.wouldChange])
          expect(plain(part)).toMatch(/[.]$/);
        expect(advice.wait.words).not.toBe("");
      }
    }),
  );
});
