/**
 * A newcomer with a keyboard alone: from the first page through the eight questions to a full plan, in at most 60
 * presses besides typed digits (U1). A plan is there from the first answer on. Each stop is looked at: the focus can
 * be seen, nothing lies over it, and it goes on in reading order.
 */
import { afterAll, beforeAll, expect, test } from "vitest";
import { open, settled, type Watched, watched } from "./kit/browser.ts";
import { Keyboard } from "./kit/keys.ts";

const MOST = 60;

let seen: Watched;
beforeAll(async () => {
  seen = await watched();
});
afterAll(() => seen.close());

const BENCH = /\/tanks\/[^/?]+(\?|$)/;
const question = (number: number) => new RegExp(`/questions/${number}(\\?|$)`);

/** From the first page to the first question. */
async function begin(): Promise<Keyboard> {
  await open(seen.page, "/");
  const keys = new Keyboard(seen.page);
  await keys.tabTo(/New tank/);
  await keys.enter(/\/new$/);
  return keys;
}

/** The bench is there, with a plan, and nothing went wrong on the way. */
async function arrived(keys: Keyboard): Promise<void> {
  await settled(seen.page);
  console.log(`${keys.presses} presses besides typed digits`);
  expect(await seen.page.locator(".advice-do").count()).toBeGreaterThan(0);
  expect(keys.presses).toBeLessThanOrEqual(MOST);
  expect([...keys.faults, ...seen.faults]).toEqual([]);
}

test(`eight answers in at most ${MOST} presses`, async () => {
  const keys = await begin();
  // 1: how much water. The field has the focus, here and on every page.
  await keys.type("113");
  await keys.enter(question(2));
  // 2: since when.
  await keys.type("6 weeks ago");
  await keys.enter(question(3));
  // 3: what grows: patches of film on the glass, the third from "not looked".
  for (let i = 0; i < 3; i += 1) await keys.press("ArrowRight");
  await keys.enter(question(4));
  // 4: who lives in it.
  await keys.type("2 clownfish");
  await keys.enter(question(5));
  // 5: the floor is the first of those named: the arrow goes round from "I don't know".
  await keys.press("ArrowDown");
  await keys.enter(question(6));
  // 6: pellets, in grams.
  await keys.type("0.2");
  await keys.enter(question(7));
  // 7: temperature.
  await keys.type("25");
  await keys.enter(question(8));
  // 8: nothing is wrong.
  await keys.press("Space");
  await keys.enter(BENCH);
  await arrived(keys);
});

test("nothing known beyond the water: every question is left as it stands, and the plan is there", async () => {
  const keys = await begin();
  await keys.type("113");
  for (const number of [2, 3, 4, 5, 6, 7, 8]) await keys.enter(question(number));
  await keys.enter(BENCH);
  await arrived(keys);
});

test("I'm not sure is a stop of every question", async () => {
  const keys = await begin();
  for (const number of [2, 3, 4, 5, 6, 7, 8]) {
    await keys.tabTo(/I'm not sure/);
    await keys.enter(question(number));
  }
  await keys.tabTo(/I'm not sure/);
  await keys.enter(BENCH);
  expect([...keys.faults, ...seen.faults]).toEqual([]);
});
