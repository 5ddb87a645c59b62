/**
 * A script planted in every text that can be kept, by API and by form, and in every address: each page shows it as text.
 * The same in Chromium, where nothing of it may run, is checks/browser.
 */
import { expect, test } from "vitest";
import { findAnimal } from "../../src/catalogue/index.ts";
import { EXAMPLE, EXAMPLE_FACTS } from "../../src/contract/http/examples.ts";
import { readTankFile } from "../../src/contract/tank-file/read.ts";
import { Answers } from "../../src/server/answers.ts";
import type { AnswerSource } from "../../src/server/route.ts";
import { appUnderTest, ask, TODAY } from "./kit/app.ts";
import { fillWithExamples } from "./kit/example-store.ts";
import { PLANTED } from "./kit/nasty.ts";

/** Real answers to real facts, from few runs. */
function fewRuns(): AnswerSource & { close(): Promise<void> } {
  const engine = new Answers();
  const few = { members: 20, seed: 1 };
  return {
    of: (facts, _, change) => engine.of(facts, few, change),
    ready: (facts) => engine.ready(facts, few),
    close: () => engine.close(),
  };
}

const planted = {
  ...EXAMPLE_FACTS,
  name: `Kitchen ${PLANTED}`,
  note: PLANTED,
  animals_present: [{ animal: PLANTED, count: 1 }],
  fish: [{ animal: `${PLANTED} fish`, count: 1 }],
  medicines: [PLANTED],
  trouble: PLANTED,
  stock_list: [PLANTED],
  wishes: [PLANTED],
  exclusions: [PLANTED],
};

/** Markup of the plant that a browser would act on: outside of attributes and text it is escaped. */
const LIVE = /<img src=x|<script>planted|<b data-planted/;

test("kept texts, typed texts and addresses are shown as text", async () => {
  const read = readTankFile(JSON.stringify(planted), { today: TODAY, findAnimal });
  expect(read.ok ? [] : read.findings).toEqual([]);
  const source = fewRuns();
  const { app, store, told } = await appUnderTest(source);
  await fillWithExamples(store);
  const tank = `/tanks/${EXAMPLE.tank}`;
  const kept = await ask(app, "PUT", `/api/v1${tank}`, {
    body: { facts: planted },
    headers: { "if-match": '"1"' },
  });
  expect(kept.statusCode, kept.body).toBe(200);
  const noted = await ask(app, "POST", `/api/v1${tank}/readings`, {
    body: { quantity: "ph", value: 8.1, note: PLANTED },
  });
  expect(noted.statusCode, noted.body).toBe(201);
  const own = await ask(app, "POST", "/api/v1/tanks", { body: { keeper: PLANTED, facts: planted } });
  expect(own.statusCode, own.body).toBe(201);

  let shown = 0;
  const judge = async (answer: ReturnType<typeof ask>, place: string) => {
    const { body, headers, statusCode } = await answer;
    expect(statusCode, `${place}\n${told.join("\n")}`).toBeLessThan(500);
    const type = String(headers["content-type"] ?? "");
    if (type.startsWith("text/html")) expect(LIVE.exec(body)?.[0], place).toBeUndefined();
    // A download, and JSON, are not markup: the type says so, and nosniff holds the browser to it.
    else if (body !== "") expect(type, place).not.toContain("html");
    if (body.includes("planted()")) shown += 1;
  };
  const typed = encodeURIComponent(PLANTED);
  for (const pattern of app.routeTable.keys()) {
    const there = pattern
      .replace(":tank", EXAMPLE.tank)
      .replace(":entry", noted.json().reading.id)
      .replace(":reading", noted.json().reading.id)
      .replace(":number", "4")
      .replace(":animal", "trochus-snail")
      .replace(":figure", "larder.film_glass.supply")
      .replace(/:\w+/g, "1");
    await judge(ask(app, "GET", `${there}?wait=1`), there);
    await judge(
      ask(
        app,
        "GET",
        `${there}?wait=1&search=${typed}&feed=${typed}&crew=${typed}&read=${typed}&next=${typed}`,
      ),
      there,
    );
    const cut = pattern.replace(/:\w+/g, encodeURIComponent(PLANTED.slice(2, 40)));
    await judge(ask(app, "GET", cut), cut);
    const form = String(
      new URLSearchParams({
        name: PLANTED,
        keeper: PLANTED,
        water: PLANTED,
        text: PLANTED,
        quantity: PLANTED,
        animals: PLANTED,
        note: PLANTED,
        version: "2",
        next: PLANTED,
        go: PLANTED,
      }),
    );
    const headers = { "content-type": "application/x-www-form-urlencoded" };
    await judge(ask(app, "POST", there, { body: form, headers }), `POST ${there}`);
  }
  // It was there to be seen, or nothing was tried.
  expect(shown).toBeGreaterThan(15);
  await source.close();
});
