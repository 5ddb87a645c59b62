import { renderToString } from "preact-render-to-string";
import { describe, expect, test } from "vitest";
import {
  AS_OF,
  bentFacts,
  diagnosisScene,
  growth,
  recordOf,
  sign,
} from "../../../checks/kit/diagnosis-scene.ts";
import { causesTold } from "../../answers/growths/causes.ts";
import { growthsOf } from "../../answers/growths/growths.ts";
import { KEYS, type KeyName, keyFound } from "../../answers/growths/key.ts";
import { aboutNow } from "../../answers/growths/scene.ts";
import { TankId } from "../parts/tank-context.ts";
import { type GrowthsView, growthsPage } from "./growths.tsx";

const head = { id: "t1", name: "Kitchen", keeper: "Nell", demonstration: false };
const shown = (part: GrowthsView["part"]): string =>
  renderToString(<TankId.Provider value="t1">{growthsPage({ head, part }).body}</TankId.Provider>);

function keyPage(name: KeyName, params: Record<string, string>): string {
  const traits = Object.fromEntries(
    Object.entries(params).map(([id, said]) => [id.replace("trait.", ""), said === "yes"]),
  );
  return shown({
    ...{ kind: "key", name, params, causes: null },
    found: keyFound(name, traits, new Set(), null),
    answered: KEYS[name].questions.flatMap((question) => {
      const names = question.options.map(({ id }) => `trait.${id}`).filter((id) => params[id] !== undefined);
      return names.length === 0 ? [] : [{ question, names }];
    }),
  });
}

describe("the key", () => {
  test("is a plain form: one button an option, can't tell beside them, answers so far carried along", () => {
    const page = keyPage("growth", { "trait.colour_brown": "yes" });
    expect(page).toContain("Can&#39;t tell yet".replace("&#39;", "'"));
    expect(page).toMatch(/<form method="get"/);
    expect(page).toContain('<input type="hidden" name="trait.colour_brown" value="yes"');
    expect(page).toMatch(/<button type="submit" name="trait.texture_dust" value="yes">A dust or haze/);
    expect(page).toMatch(/name="skip.texture" value="1">Can't tell/);
    expect(page).not.toMatch(/<script| style=| on[a-z]+=/);
  });

  test("an answer can be taken back", () => {
    const page = keyPage("growth", { "trait.colour_brown": "yes", "trait.sheets": "no" });
    expect(page).toMatch(
      /href="\/tanks\/t1\/growths\?see=growth&amp;trait.colour_brown=yes"[^>]*>\s*Take back/,
    );
  });

  test("what was found can be kept with its traits", () => {
    const page = keyPage("growth", { "trait.colour_red": "yes", "trait.texture_slime": "yes" });
    expect(page).toContain(
      "/tanks/t1/daybook/new/growth?growth=cyanobacteria&amp;trait.colour_red=yes&amp;trait.texture_slime=yes",
    );
  });

  test("what may be dinoflagellates is a danger in plain words, named or not", () => {
    const page = keyPage("growth", { "trait.texture_strings": "yes", "trait.gas_bubbles": "yes" });
    expect(page).toMatch(/of-danger/);
    expect(page).toMatch(/Add no grazers/);
    const plain = page.match(/of-danger[\s\S]*?<\/div><\/div>/)?.[0] ?? "";
    expect(plain).not.toMatch(/larder|shelf|waves|\bgates?\b|bench/i);
  });

  test("button polyps: never boiled, the doctor and the poison line", () => {
    const page = keyPage("animal", { "trait.shape_polyp": "yes", "trait.flat_disc": "yes" });
    expect(page).toMatch(/Boil, heat, scrub/);
    expect(page).toMatch(/call a doctor or the poison line/);
  });
});

describe("what the daybook holds", () => {
  const bent = {
    observations: [
      growth("diatoms", 3),
      growth("dinoflagellates", 2),
      sign("waterline_snails", { kindsSeen: 3 }),
    ],
    facts: { sourceWater: { value: "tap", origin: "assumed" } as const },
  };
  const { output } = growthsOf({ facts: bentFacts(bent), record: recordOf(bent), today: AS_OF });
  const page = shown({ kind: "home", output, hungry: [] });

  test("dangers stand before the rest; the source water before causes", () => {
    expect(page.indexOf("No new animals for now")).toBeLessThan(page.indexOf("<h2>Dinoflagellates"));
    const diatoms = page.slice(page.indexOf('id="diatoms"'));
    expect(diatoms.indexOf("Asked first")).toBeLessThan(diatoms.indexOf("What it may come from"));
    expect(page).toContain("test oxygen, ammonia and salinity now, today");
  });

  test("each chance opens its working", () => {
    for (const { causes } of output.growths)
      for (const { figure } of causes) expect(page).toContain(`data-figure="${figure}"`);
  });
});

test("odd behaviour: workings in place, clues to answer, an entry to keep", () => {
  const scene = diagnosisScene();
  const told = causesTold(scene, aboutNow("hiding", AS_OF, { animal: "trochus-snail" }));
  const page = shown({
    ...{ kind: "odd", effect: "hiding", animal: "trochus-snail", kinds: "", hour: "", params: {}, told },
    ...{ present: [{ id: "trochus-snail", name: "trochus" }], waterline: [], testNow: false },
  });
  expect(page).toMatch(/How this number came about/);
  expect(page).toMatch(/name="clue\.[a-z_]+"/);
  expect(page).toContain("/daybook/new/sign?sign=hiding&amp;animal=trochus-snail");
  expect(page).not.toMatch(/class="quantity"/);
});
