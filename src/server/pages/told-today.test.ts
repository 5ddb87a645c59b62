/** Questions show a tank as its daybook has it, and an answer is given over that: nothing logged is lost by answering. */
import { expect, test } from "vitest";
import { appUnderTest, ask } from "../../../checks/http/kit/app.ts";
import { fillWithExamples } from "../../../checks/http/kit/example-store.ts";
import { EXAMPLE } from "../../contract/http/examples.ts";
import { API_ROOT } from "../../contract/http/openapi.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import { loadTank } from "../load-tank.ts";

const tank = `/tanks/${EXAMPLE.tank}`;

async function withAnAddition() {
  const under = await appUnderTest();
  await fillWithExamples(under.store);
  const body = { kind: "addition", animal: "trochus-snail", count: 4, observed: "2026-06-14" };
  expect((await ask(under.app, "POST", `${API_ROOT}${tank}/entries`, { body })).statusCode).toBe(201);
  const heads = async () => {
    const loaded = await loadTank(under.store, EXAMPLE.tank, EXAMPLE.today);
    return Object.fromEntries(loaded!.facts.present.map(({ id, count }) => [id, count]));
  };
  const form = async (path: string, fields: Readonly<Record<string, string>>) =>
    (
      await ask(under.app, "POST", path, {
        body: new URLSearchParams(fields).toString(),
        headers: { "content-type": "application/x-www-form-urlencoded" },
      })
    ).statusCode;
  const facts = async () => (await under.store.tank(EXAMPLE.tank))!.facts as unknown as TankFile;
  return { ...under, heads, form, facts };
}

test("question 4 shows what was added, and another line leaves it there", async () => {
  const { app, heads, form, facts } = await withAnAddition();
  const page = await ask(app, "GET", `${tank}/questions/4`);
  expect(page.body).toContain("4 trochus-snail");
  expect(page.body).toContain("2 clownfish");
  const lines = {
    animal_1: "4 trochus-snail",
    animal_2: "2 clownfish",
    animal_3: "3 nassarius snail",
    version: "1",
  };
  expect(await form(`${tank}/questions/4`, lines)).toBe(303);
  expect(await heads()).toMatchObject({ "trochus-snail": 4, "nassarius-snail": 3, clownfish: 2 });
  expect((await facts()).animals_present).toHaveLength(2);
});

test("answered as it is shown, nothing is written", async () => {
  const { form, facts, heads } = await withAnAddition();
  const before = await facts();
  expect(
    await form(`${tank}/questions/4`, { animal_1: "4 trochus-snail", animal_2: "2 clownfish", version: "1" }),
  ).toBe(303);
  expect(await facts()).toEqual(before);
  expect(await heads()).toMatchObject({ "trochus-snail": 4 });
});

test("another question leaves the animals to the daybook", async () => {
  const { form, facts, heads } = await withAnAddition();
  expect(await form(`${tank}/questions/1`, { water: "180", water_unit: "L", version: "1" })).toBe(303);
  expect((await facts()).water_l).toBe("180 L");
  expect((await facts()).animals_present).toBeUndefined();
  expect(await heads()).toMatchObject({ "trochus-snail": 4 });
});
