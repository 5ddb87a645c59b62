/** A fallow time by press alone: the form that its page fills in, and what the other pages say until it has ended. */
import { renderToString } from "preact-render-to-string";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type FormApp, formApp } from "../../../checks/kit/form-app.ts";
import { to } from "../../web/page.ts";
import { FallowNotice } from "../../web/pages/fallow-notice.tsx";

const NOW = "2026-06-15T12:00:00.000Z";
const HOST = "127.0.0.1:8420";
const TANK = "tank-1";

let app: FormApp["app"];
let close: FormApp["close"];

beforeAll(async () => {
  const form = await formApp(() => NOW);
  ({ app, close } = form);
  const stamp = { at: NOW, by: "Tester" };
  const keeper = await form.store.keeperNamed("Tester", "keeper-tester", stamp);
  const facts = { grazewell_tank: 1, name: "Kitchen", water_l: "200 L", first_seawater_on: "2025-01-10" };
  await form.store.addTank({ id: TANK, keeperId: keeper.id, demonstration: false, facts }, stamp);
});
afterAll(() => close());

const shown = async (url: string) => (await app.inject({ method: "GET", url, headers: { host: HOST } })).body;

/** The form behind a link of the arrivals page, sent as it is filled in. */
async function press(words: string): Promise<void> {
  const page = await shown(to.tank(TANK, "arrivals"));
  const link = new RegExp(`href="([^"]*)"[^>]*>\\s*${words}`).exec(page)?.[1] ?? "";
  const form = await shown(link.replaceAll("&amp;", "&"));
  const inputs = [...form.matchAll(/<input\b[^>]*>/g)].map(([input]) => input);
  const filledIn = (name: string) => {
    const named = inputs.filter((input) => input.includes(`name="${name}"`));
    const filled = named.find((input) => input.includes('type="text"') || input.includes(" checked")) ?? "";
    return /value="([^"]*)"/.exec(filled)?.[1] ?? "";
  };
  const reply = await app.inject({
    ...{ method: "POST", url: to.newEntry(TANK, "change") },
    headers: { host: HOST, origin: `http://${HOST}`, "content-type": "application/x-www-form-urlencoded" },
    payload: new URLSearchParams(
      ["changed", "to", "observed"].map((name) => [name, filledIn(name)]),
    ).toString(),
  });
  expect(reply.statusCode).toBe(303);
}

test("begun and ended by the forms that the page fills in", async () => {
  expect(await shown(to.tank(TANK, "arrivals"))).not.toContain("the tank lies fallow");
  await press("Log its first day");
  expect(await shown(to.tank(TANK, "arrivals"))).toContain("No fish until 30 Aug 2026: the tank lies fallow");
  await press("It has ended");
  expect(await shown(to.tank(TANK, "arrivals"))).not.toContain("the tank lies fallow");
});

test("larder, waves and weeks ahead tell that they have the tank with its fish, and lead to the other", () => {
  const notice = renderToString(FallowNotice({ tank: TANK, until: "2026-08-30" })!);
  expect(notice).toContain("lies fallow until 30 Aug 2026");
  expect(notice).toContain(`${to.tank(TANK, "arrivals")}?fallow=1#fallow`);
  expect(FallowNotice({ tank: TANK, until: null })).toBeNull();
});
