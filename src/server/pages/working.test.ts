/** Workings that are known at once: on a bad day nobody waits for the engine to hear how the water was read. */
import { afterAll, beforeAll, expect, test } from "vitest";
import { type FormApp, formApp } from "../../../checks/kit/form-app.ts";
import { to } from "../../web/page.ts";

const NOW = "2026-06-15T12:00:00.000Z";

let app: FormApp["app"];
let close: FormApp["close"];

beforeAll(async () => {
  const form = await formApp(() => NOW);
  ({ app, close } = form);
  const stamp = { at: NOW, by: "Tester" };
  const keeper = await form.store.keeperNamed("Tester", "keeper-tester", stamp);
  const facts = { grazewell_tank: 1, name: "Kitchen", water_l: "200 L", first_seawater_on: "2025-01-10" };
  await form.store.addTank({ id: "tank-1", keeperId: keeper.id, demonstration: false, facts }, stamp);
});
afterAll(() => close());

const shown = async (figure: string) => {
  const url = to.working("tank-1", figure);
  return (await app.inject({ method: "GET", url, headers: { host: "127.0.0.1:8420" } })).body;
};

test("a number of a power cut and the fact behind it are there without the engine", async () => {
  expect(await shown("care.wrong.cooling_hours")).toContain(to.working("tank-1", "tank.waterL"));
  const fact = await shown("tank.waterL");
  expect(fact).toMatch(/200\sL/);
  expect(fact).toContain("you said");
  expect(fact).not.toContain("data-await");
});

test("a number of the larder waits for it", async () => {
  expect(await shown("larder.film.supply")).toContain("data-await");
});
