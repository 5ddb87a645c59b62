/**
 * What published descriptions say is seen, answered into the trait keys: the thing described must come first. Each row
 * holds only what its source says; sources and how far they were opened stand in facts/sources.yaml.
 */
import { describe, expect, test } from "vitest";
import { diagnosis, growthFacts, hitchhikerFacts } from "../../src/catalogue/diagnosis.ts";
import { sources } from "../../src/catalogue/index.ts";
import { weigh } from "../../src/engine/care/diagnosis/key.ts";

type Row = readonly [source: string, says: string, thing: string, seen: readonly string[]];

const GROWTHS: readonly Row[] = [
  [
    "ostreopsis-page",
    "a thick brownish layer of slime",
    "dinoflagellates",
    ["colour_brown", "texture_strings"],
  ],
  [
    "diatoms-magazine-1997",
    "brown, wiped off panes, in the first weeks of about every tank, from silicate of the water",
    "diatoms",
    ["colour_brown", "wipes_off", "young_tank", "unpurified_water"],
  ],
  [
    "diatoms-magazine-2012",
    "a short golden-brown bloom of a new tank",
    "diatoms",
    ["colour_brown", "young_tank"],
  ],
  [
    "spirulina-mat-2014",
    "large red mats of threads on sediment",
    "cyanobacteria",
    ["colour_red", "on_sand", "microscope_thin"],
  ],
  [
    "valonia-pages",
    "a shiny green ball, one cell, on coral rubble",
    "bubble-algae",
    ["colour_green", "texture_balls", "on_rock"],
  ],
];
const ANIMALS: readonly Row[] = [
  [
    "clam-book-passage",
    "like small grains of rice, two to four millimetres, on clams, by night",
    "pyramid-snail",
    ["shape_snail", "size_small", "pointed_shell", "on_shell", "night_only"],
  ],
  [
    "spirorbid-pages",
    "white chalk coils of two to five millimetres, many, stuck to glass",
    "coiled-tube-worm",
    ["coil", "size_small", "many", "on_glass"],
  ],
  [
    "fireworm-pages",
    "white bristles flared beside red gills, feeds on coral",
    "bearded-fireworm",
    ["shape_worm", "white_tufts", "on_coral"],
  ],
  [
    "shima-2010",
    "a snail in a tube that casts slime nets; corals beside it suffer",
    "worm-snail",
    ["shape_tube", "slime_net", "harm_seen"],
  ],
  [
    "glass-anemone-pages",
    "translucent, long stinging tentacles, draws into holes, many",
    "glass-anemone",
    ["shape_polyp", "clear_pointed", "withdraws", "many"],
  ],
  [
    "asterina-pages",
    "a small grey star with arms of unequal length, often on the glass, many",
    "asterina-star",
    ["shape_star", "uneven_arms", "on_glass", "many"],
  ],
  [
    "acoel-pages",
    "tiny rust-coloured flatworms, many, on corals",
    "rust-flatworm",
    ["shape_flat", "size_small", "rust_red", "many", "on_coral"],
  ],
];

const first = (key: typeof diagnosis.growths | typeof diagnosis.hitchhikers, seen: readonly string[]) =>
  weigh<{ id: string; prior: number; chances: Readonly<Record<string, number>> }>(
    key,
    Object.fromEntries(seen.map((trait) => [trait, true])),
  )[0]?.thing?.id;

describe("growths", () => {
  test.each(GROWTHS)("%s: %s", (source, _, thing, seen) => {
    expect(sources.has(source)).toBe(true);
    expect(first(diagnosis.growths, seen)).toBe(thing);
    expect(seen.some((trait) => growthFacts.get(thing)?.read[trait]?.includes(source))).toBe(true);
  });
});

describe("hitchhikers", () => {
  test.each(ANIMALS)("%s: %s", (source, _, thing, seen) => {
    expect(sources.has(source)).toBe(true);
    expect(first(diagnosis.hitchhikers, seen)).toBe(thing);
    expect(seen.some((trait) => hitchhikerFacts.get(thing)?.read[trait]?.includes(source))).toBe(true);
  });
});

test("grazers: an urchin fared badly under a bloom, and most were put off by mats: no crew is the answer to either", () => {
  for (const id of ["dinoflagellates", "cyanobacteria"]) expect(growthFacts.get(id)?.crew).toBe("no");
  expect(growthFacts.get("dinoflagellates")?.closesGates).toBe(true);
});

test("every danger to people says so before it says how", () => {
  for (const { id, dangers, doLines, dont } of diagnosis.hitchhikers.things) {
    const words = [...doLines, ...dont].map(({ text }) => text).join(" ");
    if (dangers.length > 0)
      expect(words, id).toMatch(/gloves|bare-handed|by hand|hand near|doctor|Cut yourself|treat/i);
    if (dangers.includes("stings") || dangers.includes("toxin"))
      expect(words, id).toMatch(/gloves|bare-handed|doctor|poison/i);
  }
  const polyps = hitchhikerFacts.get("button-polyps");
  expect([...(polyps?.dont ?? [])].map(({ text }) => text).join(" ")).toMatch(/^Boil/);
  expect([...(polyps?.doLines ?? [])].map(({ text }) => text).join(" ")).toMatch(/doctor or the poison line/);
});

test("whatever is taken out alive or not goes neither into the wild nor down a drain", () => {
  for (const { id, verdict, dont } of diagnosis.hitchhikers.things)
    if (verdict === "remove")
      expect(dont.map(({ text }) => text).join(" "), id).toMatch(/never into the wild/);
});
