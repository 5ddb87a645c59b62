/**
 * Cases of common practice, no source: what a keeper with some years would say first. Growths and strangers by what is
 * seen; causes by what the record holds. Beside them: how many questions each thing takes to be named.
 */
import { describe, expect, test } from "vitest";
import { diagnosis } from "../../src/catalogue/diagnosis.ts";
import { rankCauses } from "../../src/engine/care/diagnosis/causes.ts";
import { type Traits, weigh } from "../../src/engine/care/diagnosis/key.ts";
import { nextQuestion } from "../../src/engine/care/diagnosis/next-question.ts";
import type { Effect, KeyThing, TraitKey } from "../../src/engine/types/diagnosis.ts";
import { type Bent, diagnosisScene, growth, reading, sign, subjectOf } from "../kit/diagnosis-scene.ts";

const first = (key: TraitKey, yes: readonly string[], no: readonly string[]) =>
  weigh(key, Object.fromEntries([...yes.map((id) => [id, true]), ...no.map((id) => [id, false])]))[0]?.thing
    ?.id ?? "else";

type Seen = readonly [thing: string, yes: readonly string[], no?: readonly string[]];
const seenRows = (rows: readonly Seen[]) => rows.map(([thing, yes, no = []]) => ({ thing, yes, no }));

describe("growths by what is seen", () => {
  test.each(
    seenRows([
      ["film-algae", ["colour_green", "texture_dust", "on_glass", "snail_tracks"]],
      [
        "diatoms",
        ["colour_brown", "texture_dust", "on_sand", "young_tank"],
        ["gas_bubbles", "gone_by_night"],
      ],
      ["dinoflagellates", ["colour_brown", "texture_strings", "gas_bubbles", "gone_by_night"]],
      ["dinoflagellates", ["colour_brown", "texture_slime", "gas_bubbles", "snails_die"], ["sheets"]],
      ["sand-dinoflagellates", ["colour_brown", "texture_dust", "on_sand", "gone_by_night"], ["on_rock"]],
      ["cyanobacteria", ["colour_red", "texture_slime", "sheets", "low_flow"]],
      ["cyanobacteria", ["colour_black", "texture_slime", "smell", "sheets"]],
      ["hair-algae", ["colour_green", "texture_hair", "on_rock"], ["feathery"]],
      ["feather-algae", ["colour_green", "texture_hair", "feathery"]],
      ["turf-algae", ["colour_red", "texture_turf", "on_rock"]],
      ["coralline", ["colour_pink", "texture_crust"]],
      ["bacterial-film", ["colour_pale", "texture_slime", "in_shade"]],
      ["sponge", ["colour_pale", "texture_sponge", "in_shade"]],
      ["settled-dirt", ["colour_brown", "texture_dust", "low_flow", "in_shade"], ["on_glass"]],
      [
        "golden-algae",
        ["colour_brown", "texture_strings", "microscope_specks"],
        ["gas_bubbles", "gone_by_night"],
      ],
    ]),
  )("$thing", ({ thing, yes, no }) => {
    expect(first(diagnosis.growths, yes, no)).toBe(thing);
  });

  test("a microscope settles diatoms against dinoflagellates on the sand", () => {
    const dust = ["colour_brown", "texture_dust", "on_sand"];
    expect(first(diagnosis.growths, [...dust, "microscope_glass"], [])).toBe("diatoms");
    expect(first(diagnosis.growths, [...dust, "microscope_swimmers"], [])).toBe("sand-dinoflagellates");
  });
});

describe("strangers by what is seen", () => {
  test.each(
    seenRows([
      ["copepods", ["shape_dots", "size_speck", "moves_hops", "on_glass"]],
      ["snail-eggs", ["shape_eggs", "jelly", "moves_still", "on_glass"]],
      ["vase-sponge", ["shape_lump", "size_small", "vase"]],
      ["white-spots-on-fish", ["shape_dots", "size_speck", "on_fish"]],
      ["bristle-worm", ["shape_worm", "bristles", "night_only"], ["white_tufts"]],
      ["spaghetti-worm", ["long_threads", "withdraws"]],
      ["feather-duster", ["shape_tube", "feather_crown"]],
      ["ball-tipped-anemone", ["shape_polyp", "ball_tips"], ["clear_pointed"]],
      ["hairy-crab", ["shape_crab", "hairy", "dark_claws"]],
      ["mantis-shrimp", ["snaps", "eyes_turn", "withdraws"]],
      ["pistol-shrimp", ["shape_shrimp", "snaps", "one_big_claw"]],
      ["limpet", ["shape_snail", "cap_shell"]],
      ["micro-brittle-star", ["shape_star", "thin_arms"]],
      ["coral-eating-slug", ["shape_slug", "frills", "on_coral", "harm_seen"]],
      ["tiny-jellies", ["pulses", "size_speck"]],
      ["hunting-snail", ["shape_snail", "snout", "harm_seen"]],
    ]),
  )("$thing", ({ thing, yes, no }) => {
    expect(first(diagnosis.hitchhikers, yes, no)).toBe(thing);
  });
});

/** Answers every question as is usual for one thing, and counts those asked until it is named for good. */
function questionsUntilNamed<Thing extends KeyThing>(key: TraitKey<Thing>, thing: Thing): number {
  const traits: Record<string, boolean> = {};
  for (let asked = 1; asked <= 15; asked += 1) {
    const next = nextQuestion(key, traits);
    if (next === null) return Number.POSITIVE_INFINITY;
    const [only, ...others] = next.question.options;
    if (only === undefined) throw new Error("a question without options");
    if (others.length === 0) traits[only.id] = (thing.chances[only.id] ?? 0) >= 0.5;
    else {
      const chance = (id: string) => thing.chances[id] ?? 0;
      traits[[only, ...others].reduce((a, b) => (chance(b.id) > chance(a.id) ? b : a)).id] = true;
    }
    const [top] = weigh(key, traits as Traits);
    if (top?.thing === thing && top.chance >= 0.65) return asked;
  }
  return Number.POSITIVE_INFINITY;
}

test.each([
  ["growths", diagnosis.growths as TraitKey],
  ["strangers", diagnosis.hitchhikers as TraitKey],
])(
  "each of the %s is named by its usual answers, half of them within three questions, all within nine",
  (_, key) => {
    const counts = key.things.map((thing) => questionsUntilNamed(key, thing)).sort((a, b) => a - b);
    expect(counts[Math.floor(counts.length / 2)]).toBeLessThanOrEqual(3);
    expect(counts.at(-1)).toBeLessThanOrEqual(9);
  },
);

type Case = readonly [
  cause: string,
  effect: Effect,
  what: string,
  bent: Bent,
  answers?: Readonly<Record<string, boolean>>,
  animal?: string,
];
const caseRows = (rows: readonly Case[]) =>
  rows.map(([cause, effect, what, bent, answers = {}, animal]) => ({
    ...{ cause, effect, what, bent, answers },
    animal: animal ?? null,
  }));
const days = (count: number) =>
  ({ low: count, central: count, high: count, origin: "stated", how: "typed" }) as const;
const tap = { value: "tap", origin: "stated" } as const;
const NO3 = "no3_mg_n_per_l";
const PO4 = "po4_mg_p_per_l";

describe("causes by what is known", () => {
  test.each(
    caseRows([
      ["young-tank", "diatoms", "three weeks old", { facts: { ageDays: days(21) } }],
      ["source-water", "diatoms", "a year old, tap water", { facts: { sourceWater: tap } }],
      ["source-water", "diatoms", "a year old, the purifier lets through", {}, { cartridge_spent: true }],
      [
        "bottomed-out",
        "dinoflagellates",
        "both tests show nothing after sorbent",
        {
          observations: [
            reading(NO3, 0.1, "2026-06-12", { censored: "below" }),
            reading(PO4, 0.003, "2026-06-12", { censored: "below" }),
          ],
          happenings: [{ kind: "chore", chore: "sorbent_renewed", share: null, on: "2026-05-20" }],
        },
      ],
      [
        "low-flow",
        "cyanobacteria",
        "still water and waste",
        { observations: [growth("detritus_sand", 3)] },
        { low_flow: true },
      ],
      [
        "nutrients-in",
        "hair_algae",
        "much food, leftovers, high tests",
        {
          facts: {
            feedGPerDay: days(2),
            present: [
              { id: "mexican-turbo-snail", count: 4, on: null },
              { id: "emerald-crab", count: 3, on: null },
            ],
          },
          observations: [
            growth("leftovers", 3),
            reading(NO3, 8, "2026-06-12"),
            reading(PO4, 0.1, "2026-06-12"),
          ],
        },
      ],
      ["few-mouths", "film_glass", "nobody eats film", { facts: { present: [] } }],
      ["new-rock", "bubble_algae", "new rock", {}, { new_rock: true }],
      [
        "more-light",
        "film_rock",
        "a longer day",
        {
          facts: { present: [{ id: "trochus-snail", count: 12, on: null }], lightHours: days(12) },
          happenings: [{ kind: "changed", what: "light_strength", to: 1.5, on: "2026-05-30" }],
        },
      ],
      [
        "arrival",
        "snail_loss",
        "two days after arrival",
        {
          happenings: [
            {
              ...{ kind: "added", animal: "trochus-snail", count: 3, on: "2026-06-13" },
              ...{ condition: "usual", bodyRemoved: null, wave: null },
            },
          ],
        },
        {},
        "trochus-snail",
      ],
      [
        "starving",
        "snail_loss",
        "bare glass and rock",
        {
          observations: [
            growth("film_glass", 0, "2026-06-05"),
            growth("film_glass", 0),
            growth("film_rock", 1),
          ],
        },
        {},
        "trochus-snail",
      ],
      [
        "salinity",
        "snail_loss",
        "salinity fell by four",
        {
          observations: [
            reading("salinity_psu", 35, "2026-06-01"),
            reading("salinity_psu", 31, "2026-06-14"),
          ],
        },
        {},
        "trochus-snail",
      ],
      [
        "ammonia",
        "ill_animals",
        "ammonia and nitrite show",
        {
          observations: [
            reading("tan_mg_n_per_l", 1, "2026-06-14"),
            reading("no2_mg_n_per_l", 0.4, "2026-06-14"),
          ],
        },
      ],
      [
        "treatment",
        "ill_animals",
        "the day after a treatment",
        {
          happenings: [{ kind: "treated", substance: "flatworm killer", step: "started", on: "2026-06-14" }],
        },
      ],
      ["fell", "fallen_snails", "an astraea", {}, {}, "astraea-snail"],
      [
        "predator",
        "empty_shells",
        "a puffer and broken rims",
        {
          facts: {
            present: [
              { id: "trochus-snail", count: 3, on: null },
              { id: "pufferfish", count: 1, on: null },
            ],
          },
        },
        { shells_drilled: true },
      ],
      [
        "shell-shortage",
        "empty_shells",
        "hermits without spare shells",
        {
          facts: {
            present: [
              { id: "trochus-snail", count: 3, on: null },
              { id: "blue-leg-hermit", count: 6, on: null },
            ],
          },
        },
        { spare_shells_few: true, shells_drilled: false },
      ],
      [
        "moult",
        "hiding",
        "a shrimp and a cast shell",
        {
          observations: [sign("cast_shell", { animal: "skunk-cleaner-shrimp", count: 1, on: "2026-06-12" })],
        },
        {},
        "skunk-cleaner-shrimp",
      ],
      [
        "stirred",
        "cloudy_water",
        "the day after the sand was stirred",
        { happenings: [{ kind: "chore", chore: "sand_stirred", share: null, on: "2026-06-14" }] },
      ],
      ["bacteria-bloom", "cloudy_water", "carbon is dosed", {}, { carbon_dosed: true }],
      [
        "low-oxygen",
        "waterline_snails",
        "several kinds, still surface",
        {},
        { surface_still: true, several_kinds: true },
      ],
      [
        "habit",
        "waterline_snails",
        "one nerite at night",
        {},
        { night_look: true, several_kinds: false },
        "nerite-snail",
      ],
      [
        "toxic-growth",
        "snail_loss",
        "dinoflagellates about",
        { observations: [growth("dinoflagellates", 2)] },
      ],
      ["wrong-kind", "snail_loss", "a cool-water snail", {}, {}, "margarita-snail"],
    ]),
  )("$cause behind $effect: $what", ({ cause, effect, bent, answers, animal }) => {
    const ranked = rankCauses(diagnosisScene(bent), subjectOf(effect, { animal }), answers);
    expect(ranked.slice(0, 3).map((one) => `${one.cause.id} ${one.chance.toFixed(2)}`)[0]).toMatch(
      new RegExp(`^${cause} `),
    );
  });
});
