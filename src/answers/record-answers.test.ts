import { expect, test } from "vitest";
import { temporaryStore } from "../../checks/kit/store.ts";
import { addDemonstration } from "../server/demonstration/add.ts";
import { loadTank } from "../server/load-tank.ts";
import { recordAnswersInSteps, recordAnswersOf } from "./record-answers.ts";
import { plain, type Sentence } from "./sentence.ts";
import { shownIn } from "./units-shown.ts";

const TODAY = "2026-06-15";

test("of every demonstration daybook: advice once each, its figures and those of the answers with a working", async () => {
  const store = await temporaryStore();
  await addDemonstration(store, TODAY, `${TODAY}T09:00:00.000Z`);
  for (const { id } of await store.tanks()) {
    const loaded = await loadTank(store, id, TODAY);
    const { facts, record, document } = loaded!;
    const { advice, workings } = recordAnswersOf(
      { facts, record, today: TODAY },
      shownIn(document.preferences),
    );
    expect(new Set(advice.map((one) => one.id)).size).toBe(advice.length);
    for (const one of advice) {
      expect(plain(one.do).split(/\s+/).length, plain(one.do)).toBeLessThanOrEqual(20);
      const told = ([one.do, ...one.why, one.byWhen, one.wouldChange] as Sentence[]).flat();
      for (const part of told) if (typeof part !== "string") expect(workings).toHaveProperty([part.figure]);
    }
  }
});

test("in steps it is the same, with a turn for each quantity; made once, it is there at once", async () => {
  const store = await temporaryStore();
  await addDemonstration(store, TODAY, `${TODAY}T09:00:00.000Z`);
  const [row] = await store.tanks();
  const { facts, record, document } = (await loadTank(store, row!.id, TODAY))!;
  const scene = { facts, record, today: TODAY };
  const shown = shownIn(document.preferences);
  const steps = recordAnswersInSteps(scene, shown);
  let turns = 0;
  let step = steps.next();
  for (; step.done !== true; step = steps.next()) turns += 1;
  const { trends } = step.value;
  expect(turns).toBeGreaterThanOrEqual(trends.quantities.length + trends.unread.length);
  expect(recordAnswersOf(scene, shown)).toBe(step.value);
  expect(recordAnswersOf({ ...scene, record: { ...record } }, shown)).toEqual(step.value);
  expect(recordAnswersInSteps(scene, shown).next()).toEqual({ done: true, value: step.value });
});

test("a growth that the crew is the answer to asks for hands, not for a wave that the plan may not have", async () => {
  const store = await temporaryStore();
  await addDemonstration(store, TODAY, `${TODAY}T09:00:00.000Z`);
  const desk = (await store.tanks()).find(({ facts }) => facts["name"] === "Desk ten (invented)");
  const { facts, record, document } = (await loadTank(store, desk!.id, TODAY))!;
  const { growths, advice } = recordAnswersOf({ facts, record, today: TODAY }, shownIn(document.preferences));
  expect(growths.growths.find(({ growth }) => growth === "hair_algae")?.causes[0]?.id).toBe("few-mouths");
  expect(plain(advice.find(({ id }) => id === "growth.hair_algae")!.do)).toMatch(/^Pull the long tufts/);
});

test("long tufts are pulled first, whatever they come from", async () => {
  const store = await temporaryStore();
  await addDemonstration(store, TODAY, `${TODAY}T09:00:00.000Z`);
  const reef = (await store.tanks()).find(({ facts }) => facts["name"] === "Hallway reef (invented)");
  const { facts, record, document } = (await loadTank(store, reef!.id, TODAY))!;
  const { growths, advice } = recordAnswersOf({ facts, record, today: TODAY }, shownIn(document.preferences));
  expect(growths.growths.find(({ growth }) => growth === "hair_algae")?.causes[0]?.id).toBe("nutrients-in");
  expect(plain(advice.find(({ id }) => id === "growth.hair_algae")!.do)).toMatch(/^Pull the long tufts/);
});
