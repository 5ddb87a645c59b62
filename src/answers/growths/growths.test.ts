import { describe, expect, test } from "vitest";
import {
  AS_OF,
  type Bent,
  bentFacts,
  diagnosisScene as diagnosed,
  growth,
  reading,
  recordOf,
  sign,
} from "../../../checks/kit/diagnosis-scene.ts";
import { growthsOutput } from "../../contract/output/growths.ts";
import { GROWTHS } from "../../engine/types/tank.ts";
import { URGENCY_ORDER } from "../advice.ts";
import { plain } from "../sentence.ts";
import { closedGates } from "./gates.ts";
import { growthsOf } from "./growths.ts";
import { keyFound, NAMED_FROM } from "./key.ts";

const scene = (bent: Bent = {}) => ({ facts: bentFacts(bent), record: recordOf(bent), today: AS_OF });
const EVERYTHING: Bent = {
  observations: [
    ...GROWTHS.map((one) => growth(one, 4, AS_OF, one === "diatoms" ? { colour_brown: true } : {})),
    ...(["fallen_snails", "empty_shells", "hiding", "ill_animals", "cloudy_water"] as const).map((one) =>
      sign(one, { count: 2, animal: "trochus-snail" }),
    ),
    sign("waterline_snails", { kindsSeen: 3 }),
    reading("tan_mg_n_per_l", 0, "2026-05-10"),
    reading("tan_mg_n_per_l", 0, "2026-05-17"),
    reading("tan_mg_n_per_l", 0, "2026-05-24"),
    reading("tan_mg_n_per_l", 1, "2026-06-14"),
    reading("salinity_psu", 39, "2026-06-14"),
  ],
};

describe("growths and signs", () => {
  const { output, figures, advice } = growthsOf(scene(EVERYTHING));

  test("are what the contract says", () => {
    expect(growthsOutput.parse(output)).toEqual(output);
    expect(output.growths.map((one) => one.growth).sort()).toEqual([...GROWTHS].sort());
    expect(output.signs.length).toBe(6);
    expect(output.unfound_death).not.toBeNull();
  });

  test("every number has its working, told once", () => {
    const ids = figures.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const told = [
      ...[...output.growths, ...output.signs].flatMap(({ causes }) => causes.map(({ figure }) => figure)),
      ...advice.flatMap(({ do: what, why }) =>
        [what, ...why].flatMap((sentence) =>
          sentence.flatMap((part) => (typeof part === "string" ? [] : [part.figure])),
        ),
      ),
    ];
    expect(told.length).toBeGreaterThan(20);
    for (const id of told) expect(ids).toContain(id);
  });

  test("advice: ids once, one sentence of at most 20 words to do, a way to wait", () => {
    const ids = advice.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { id, do: what, why, wouldChange, urgency } of advice) {
      expect(id).toMatch(/^(growth|sign)\./);
      expect(plain(what).split(/\s+/).length, plain(what)).toBeLessThanOrEqual(20);
      expect(why.length).toBeGreaterThan(0);
      expect(plain(wouldChange).length).toBeGreaterThan(5);
      expect(URGENCY_ORDER).toContain(urgency);
    }
  });

  test("no word that promises, blames or hurries", () => {
    const words = JSON.stringify({ output, advice });
    expect(words).not.toMatch(/\b(?:oops|please|invalid|forbidden|perfect|safe|sorry|hurry)\b/i);
  });

  test("a calm tank: nothing to say, all gates as they were", () => {
    const calm = growthsOf(scene());
    expect(calm.advice).toEqual([]);
    expect(calm.output).toMatchObject({ growths: [], signs: [], tests_first: [], gates_closed: [] });
  });
});

test("film that a crew lives on is no matter of this week, however thick: it must not hold back the wave that eats it", () => {
  const { advice } = growthsOf(scene({ observations: [growth("film_rock", 4), growth("cyanobacteria", 4)] }));
  expect(advice.map(({ id, urgency }) => [id, urgency])).toEqual([
    ["growth.film_rock", "next_visit"],
    ["growth.cyanobacteria", "this_week"],
  ]);
});

describe("gates", () => {
  const closed = (bent: Bent) => closedGates(scene(bent)).map(({ growth: g, sign: s }) => g ?? s);
  const snotty = {
    ...{ colour_brown: true, texture_strings: true, gas_bubbles: true, gone_by_night: true },
  };

  test("suspected dinoflagellates close them, whatever they were logged as", () => {
    expect(closed({ observations: [growth("dinoflagellates", 1)] })).toEqual(["dinoflagellates"]);
    expect(closed({ observations: [growth("diatoms", 2, AS_OF, snotty)] })).toEqual(["diatoms"]);
    const dust = { colour_brown: true, texture_dust: true, gone_by_night: true };
    expect(closed({ observations: [growth("diatoms", 2, AS_OF, dust)] })).toEqual(["diatoms"]);
    const boxes = { ...dust, microscope_glass: true };
    expect(closed({ observations: [growth("diatoms", 2, AS_OF, boxes)] })).toEqual([]);
  });

  test("told in the questions they close them too; gone, they open", () => {
    expect(closed({ facts: { sightings: { dinoflagellates: "patches" } } })).toEqual(["dinoflagellates"]);
    const gone = [growth("dinoflagellates", 2, "2026-06-01"), growth("dinoflagellates", 0, "2026-06-14")];
    expect(closed({ observations: gone })).toEqual([]);
  });

  test("told in the questions they age like those of the daybook, and a later word of either stands", () => {
    const told = (on: string, observations: Bent["observations"] = []) => {
      const { facts, record, today } = scene({
        facts: { sightings: { hair_algae: "covered" } },
        observations,
      });
      const sightings = { on, covers: facts.sightings };
      return growthsOf({ facts, record: { ...record, told: { sightings, feed: null } }, today });
    };
    const { output, advice } = told("2026-06-01");
    expect(output.growths[0]).toMatchObject({ growth: "hair_algae", on: "2026-06-01", from: "questions" });
    expect(advice[0]!.why.map(plain).join(" ")).toContain("as the questions were told on 1 Jun 2026");
    expect(told("2026-05-01").output.growths).toEqual([]);
    const later = [growth("hair_algae", 2, "2026-06-10")];
    expect(told("2026-06-01", later).output.growths[0]).toMatchObject({ score: 2, from: "daybook" });
    const before = [growth("hair_algae", 2, "2026-05-28")];
    expect(told("2026-06-01", before).output.growths[0]).toMatchObject({ score: 4, from: "questions" });
  });

  test("several kinds at the waterline close them; one by habit does not", () => {
    expect(closed({ observations: [sign("waterline_snails", { kindsSeen: 2 })] })).toEqual([
      "waterline_snails",
    ]);
    const nerite = sign("waterline_snails", { animal: "nerite-snail", hoursFromLightsOut: 2 });
    expect(closed({ observations: [nerite] })).toEqual([]);
  });
});

describe("diatoms", () => {
  test("the source water is asked first, before any cause", () => {
    const bent: Bent = {
      facts: { sourceWater: { value: "tap", origin: "assumed" } },
      observations: [growth("diatoms", 3)],
    };
    const { output, advice } = growthsOf(scene(bent));
    expect(output.growths[0]?.asked_first[0]?.clue).toBe("source_unpurified");
    expect(plain(advice[0]?.do ?? [])).toMatch(/^Look up what the water is made from; test it for silicate/);
  });
});

describe("the key in words", () => {
  test("grains sum to 20, one always stays with something else, and nothing is named without a word said", () => {
    const nothing = keyFound("growth", {}, new Set(), null);
    expect(nothing.found.reduce((sum, { of_20 }) => sum + of_20, 0)).toBe(20);
    expect(nothing.named).toBeNull();
    const sure = keyFound(
      "growth",
      { texture_balls: true, colour_green: true, on_rock: true },
      new Set(),
      null,
    );
    expect(sure.found[0]).toMatchObject({ id: "bubble-algae", of_20: 19 });
    expect(sure.found.reduce((sum, { of_20 }) => sum + of_20, 0)).toBe(20);
    expect(sure.named?.id).toBe("bubble-algae");
  });

  test("few answers that fit several things: can't tell yet", () => {
    const { named, found, next } = keyFound("growth", { colour_brown: true }, new Set(), null);
    expect(named).toBeNull();
    expect(found[0]?.of_20).toBeLessThan(NAMED_FROM);
    expect(next).not.toBeNull();
  });

  test("the age of the tank is answered by the record", () => {
    const bent = diagnosed({ facts: { ageDays: { ...bentFacts({}).ageDays, central: 30 } } });
    expect(keyFound("growth", {}, new Set(), bent).fromRecord).toEqual({
      ...{ young_tank: true, unpurified_water: false },
    });
  });
});
