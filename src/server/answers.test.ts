import { expect, onTestFinished, test } from "vitest";
import { Refusal } from "../answers/refusal.ts";
import { findAnimal } from "../catalogue/index.ts";
import { readTankFile } from "../contract/tank-file/read.ts";
import type { TankFacts } from "../engine/types/tank.ts";
import { Answers, NoAnswer } from "./answers.ts";
import { LIMITS } from "./limits.ts";
import { Recent } from "./recent.ts";

function factsOf(litres: number): TankFacts {
  const read = readTankFile(`{"grazewell_tank":1,"water_l":${litres}}`, { today: "2026-06-15", findAnimal });
  if (!read.ok) throw new Error(read.findings[0]?.message.text);
  return read.facts;
}

/** A stand-in for the engine: `body` is what it does with a job. */
function standIn(body: string, timeLimitMs = 60_000): Answers {
  const code = `import { parentPort } from "node:worker_threads";
    let count = 0;
    parentPort.on("message", (job) => { count += 1; const say = (more) => parentPort.postMessage({ id: job.id, ...more }); ${body} });`;
  const worker = new URL(`data:text/javascript,${encodeURIComponent(code)}`);
  const answers = new Answers({ worker, timeLimitMs });
  onTestFinished(() => answers.close());
  return answers;
}
const COUNTING = `say({ kind: "answers", answers: { count, litres: job.facts.waterL.central } });`;
const counted = async (promise: Promise<unknown>) => (await promise) as { count: number; litres: number };

test("the same facts asked for at once, and later, are worked out once", async () => {
  const answers = standIn(COUNTING);
  const [a, b] = await Promise.all([counted(answers.of(factsOf(100))), counted(answers.of(factsOf(100)))]);
  const c = await counted(answers.of(factsOf(100)));
  expect([a.count, b.count, c.count]).toEqual([1, 1, 1]);
  expect((await counted(answers.of(factsOf(101)))).count).toBe(2);
});

test("another choice and another change are other questions", async () => {
  const answers = standIn(COUNTING);
  const facts = factsOf(100);
  const each = [
    await counted(answers.of(facts)),
    await counted(answers.of(facts, { members: 20, seed: 1 })),
    await counted(answers.of(facts, { members: 20, seed: 2 })),
    await counted(answers.of(facts, { members: 20, seed: 1 }, { feed: "x2" })),
  ];
  expect(each.map(({ count }) => count)).toEqual([1, 2, 3, 4]);
});

test("asked without waiting, it is worked out behind, and known afterwards", async () => {
  const answers = standIn(COUNTING);
  expect(answers.ready(factsOf(100))).toBeNull();
  await answers.of(factsOf(100));
  expect(answers.ready(factsOf(100))).toMatchObject({ count: 1 });
});

test("whom somebody waits for goes first", async () => {
  const answers = standIn(`setTimeout(() => { ${COUNTING} }, 20);`);
  const first = counted(answers.of(factsOf(1)));
  answers.ready(factsOf(2));
  answers.ready(factsOf(3));
  const waited = await counted(answers.of(factsOf(4)));
  expect([(await first).count, waited.count]).toEqual([1, 2]);
});

test("a change that can't be read is told in its lines", async () => {
  const answers = standIn(`say({ kind: "refused", lines: ["--feed: no"] });`);
  await expect(answers.of(factsOf(100), undefined, { feed: "?" })).rejects.toThrow(Refusal);
});

/** Long enough for a thread to start and answer on a busy machine: the second question must not be late as well. */
const LATE_MS = 5000;

test("a tank that takes too long is given up, and the next gets a new thread", async () => {
  const answers = standIn(`if (job.facts.waterL.central === 1) for (;;); ${COUNTING}`, LATE_MS);
  const stuck = answers.of(factsOf(1));
  const next = counted(answers.of(factsOf(2)));
  await expect(stuck).rejects.toMatchObject({ reason: "late" });
  // A new thread counts from one again.
  expect(await next).toEqual({ count: 1, litres: 2 });
});

test("a thread that breaks ends its own question alone", async () => {
  const answers = standIn(`if (job.facts.waterL.central === 1) throw new Error("broken"); ${COUNTING}`);
  const broken = answers.of(factsOf(1));
  const next = counted(answers.of(factsOf(2)));
  await expect(broken).rejects.toThrow("broken");
  expect((await next).litres).toBe(2);
});

test("so many may wait; one more is told to come again", async () => {
  const answers = standIn("");
  for (let i = 1; i <= LIMITS.answersWaiting; i += 1) answers.of(factsOf(i)).catch(() => {});
  await expect(answers.of(factsOf(5000))).rejects.toMatchObject({ reason: "busy" });
});

test("ending tells those who wait", async () => {
  const answers = standIn("");
  const waiting = answers.of(factsOf(1));
  const ended = expect(waiting).rejects.toThrow(NoAnswer);
  await answers.close();
  await ended;
});

test("the latest are kept, at most so many, and asking keeps one", () => {
  const recent = new Recent<number>(3);
  for (const n of [1, 2, 3]) recent.set(String(n), n);
  expect(recent.get("1")).toBe(1);
  recent.set("4", 4);
  expect(["1", "2", "3", "4"].map((key) => recent.has(key))).toEqual([true, false, true, true]);
});

test("the real thread answers as the command line does", async () => {
  const answers = new Answers();
  onTestFinished(() => answers.close());
  const told = await answers.of(factsOf(113), { members: 20, seed: 1 });
  expect(told.larder.schema).toBe("grazewell.larder/1");
  expect(Object.keys(told.workings).length).toBeGreaterThan(10);
  await expect(answers.of(factsOf(113), { members: 20, seed: 1 }, { feed: "plenty" })).rejects.toThrow(
    Refusal,
  );
});

test("a daybook goes with the question as far as it teaches, and makes another question of it", async () => {
  const answers = standIn(
    `say({ kind: "answers", answers: { count, litres: 0, taughtBy: job.record?.observations.length ?? 0 } });`,
  );
  const facts = factsOf(100);
  const film = (on: string) =>
    ({ kind: "growth", entry: on, on, growth: "film_glass", score: 2, traits: {} }) as const;
  const sign = {
    kind: "sign",
    entry: "s",
    on: "2026-06-14",
    sign: "hiding",
    animal: null,
    count: null,
  } as const;
  const daybook = {
    observations: [
      film("2020-01-01"),
      film("2026-06-10"),
      { ...sign, kindsSeen: null, hoursFromLightsOut: null, traits: {} },
    ],
    ...{ happenings: [], declined: [], asOf: "2026-06-15" },
  };
  const asked = (record?: typeof daybook) => answers.of(facts, undefined, undefined, record);
  expect(await asked()).toMatchObject({ count: 1, taughtBy: 0 });
  expect(await asked(daybook)).toMatchObject({ count: 2, taughtBy: 1 });
  expect(await asked({ ...daybook, observations: daybook.observations.slice(1) })).toMatchObject({
    count: 2,
  });
  expect(await asked({ ...daybook, observations: [] })).toMatchObject({ count: 1 });
});
