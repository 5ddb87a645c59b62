/**
 * Bodies that nobody would send, to every operation and every form: no crash, no answer of 500, each refusal in words,
 * nothing kept by halves. GRAZEWELL_FUZZ_SEED repeats a run, GRAZEWELL_FUZZ_BODIES asks for more.
 * The engine's answers are one tank's, given for every tank: what is tried here is what reads and keeps.
 */
import { beforeAll, expect, test } from "vitest";
import { whatIf } from "../../src/answers/what-if.ts";
import { findAnimal } from "../../src/catalogue/index.ts";
import { entryOfRow } from "../../src/contract/daybook/kinds.ts";
import { EXAMPLE, EXAMPLE_FACTS } from "../../src/contract/http/examples.ts";
import { API_ROOT } from "../../src/contract/http/openapi.ts";
import { OPERATIONS } from "../../src/contract/http/operations.ts";
import { readTankFile } from "../../src/contract/tank-file/read.ts";
import { Answers } from "../../src/server/answers.ts";
import { loadTank } from "../../src/server/load-tank.ts";
import type { AnswerSource } from "../../src/server/route.ts";
import { Chance } from "../kit/chance.ts";
import { appUnderTest, ask, TODAY, type Under } from "./kit/app.ts";
import { fillWithExamples } from "./kit/example-store.ts";
import { broken, garbled, nastyText } from "./kit/nasty.ts";

const SEED = Number(process.env["GRAZEWELL_FUZZ_SEED"] ?? 20_260_615);
const BODIES = Number(process.env["GRAZEWELL_FUZZ_BODIES"] ?? 8_000);
const TEN_MINUTES_MS = 600_000;

interface Sent {
  readonly method: string;
  readonly path: string;
  readonly body: string;
  readonly headers: Readonly<Record<string, string>>;
}

/** On each store; a store that holds thousands of tanks would only be slow. */
const BODIES_A_STORE = 1000;
const ROUNDS = Math.ceil(BODIES / BODIES_A_STORE);

let answers: AnswerSource;
const ended = new Map<number, number>();
/** Entries that were kept, by kind. */
const entries = new Map<string, number>();
beforeAll(async () => {
  console.log(`fuzz: ${BODIES} bodies, seed ${SEED}`);
  answers = await oneAnswer();
});

test.each(Array.from({ length: ROUNDS }, (_, round) => round))(
  `round %i of seed ${SEED}`,
  async (round) => {
    const under = await appUnderTest(answers);
    await fillWithExamples(under.store);
    const chance = new Chance(SEED, round);
    const forms = await formsOf(under);
    expect(forms.length).toBeGreaterThan(8);
    for (let i = 0; i < BODIES_A_STORE; i += 1) {
      under.wait(1);
      const sent = chance.is(0.65)
        ? await apiRequest(under, chance)
        : await formRequest(under, forms, chance);
      const answer = await ask(under.app, sent.method, sent.path, sent);
      const place = `body ${i} of round ${round}, seed ${SEED}: ${sent.method} ${sent.path} ${sent.body.slice(0, 1000)}`;
      expect(answer.statusCode, `${place}\n${under.told.join("\n")}`).toBeLessThan(500);
      if (answer.statusCode >= 400 && sent.path.startsWith(API_ROOT)) {
        const problem = answer.json();
        expect(problem.status, place).toBe(answer.statusCode);
        expect(problem.detail, place).toMatch(/\S/);
      }
      ended.set(answer.statusCode, (ended.get(answer.statusCode) ?? 0) + 1);
    }
    expect(under.told).toEqual([]);
    for (const { id } of await under.store.tanks()) {
      expect(await loadTank(under.store, id, TODAY), id).not.toBeNull();
      // What was kept can be told again: no entry is lost to a shape that the next start does not know.
      for (const row of await under.store.entries(id, { limit: 40_000, withRemoved: true })) {
        expect(entryOfRow(row), JSON.stringify(row)).not.toBeNull();
        entries.set(row.kind, (entries.get(row.kind) ?? 0) + 1);
      }
    }
    for (const address of ["/", `/tanks/${EXAMPLE.tank}`, `/tanks/${EXAMPLE.tank}/readings`]) {
      expect((await ask(under.app, "GET", address)).statusCode, address).toBeLessThan(500);
    }
  },
  TEN_MINUTES_MS,
);

test("they came through the door too, and did not try the door alone", () => {
  console.log(
    `fuzz: ended ${[...ended]
      .sort()
      .map(([status, count]) => `${status}: ${count}`)
      .join(", ")}`,
  );
  for (const status of [200, 201, 303, 400, 422])
    expect(ended.get(status) ?? 0, String(status)).toBeGreaterThan(0);
  console.log(`fuzz: kept ${[...entries].map(([kind, count]) => `${kind}: ${count}`).join(", ")}`);
  for (const kind of ["growth", "addition", "chore"]) expect(entries.get(kind) ?? 0, kind).toBeGreaterThan(0);
});

/** One tank's answers, for every question that can be read. */
async function oneAnswer(): Promise<AnswerSource> {
  const read = readTankFile(JSON.stringify(EXAMPLE_FACTS), { today: TODAY, findAnimal });
  if (!read.ok) throw new Error(read.findings[0]?.message.text);
  const engine = new Answers();
  const told = await engine.of(read.facts, { members: 20, seed: 1 });
  await engine.close();
  return {
    of: async (facts, _, change) => {
      if (change !== undefined) whatIf(change, facts);
      return told;
    },
    ready: () => told,
  };
}

const withBody = OPERATIONS.filter(({ body }) => body !== undefined);

async function apiRequest({ store }: Under, chance: Chance): Promise<Sent> {
  const operation = chance.pick(withBody);
  const example = chance.pick(operation.examples);
  const path = operation.path.replaceAll(/\{(\w+)\}/g, (_, name: string) =>
    chance.is(0.03)
      ? encodeURIComponent(wellFormed(nastyText(chance).slice(0, 50)))
      : (example.params?.[name] ?? ""),
  );
  const good = JSON.stringify(broken(example.body, chance)) ?? "null";
  const body = chance.is(0.15) ? garbled(good, chance) : good;
  const row = path.includes("readings/")
    ? await store.entry(EXAMPLE.reading)
    : path.includes("entries/")
      ? await store.entry(EXAMPLE.entry)
      : await store.tank(EXAMPLE.tank);
  const version = chance.is(0.9)
    ? `"${row?.version ?? 1}"`
    : chance.pick(['"1"', "*", "W/1", '"x"', '"-1"', ""]);
  return {
    method: operation.method,
    path: `${API_ROOT}${path}`,
    body,
    headers: {
      "content-type": chance.is(0.97)
        ? "application/json"
        : chance.pick(["text/plain", "", "application/json; charset=x"]),
      ...(operation.asks === "version" ? { "if-match": version } : {}),
      ...(operation.asks === "once" && chance.is(0.3)
        ? { "idempotency-key": `k${chance.whole(1, 500)}` }
        : {}),
    },
  };
}

/** A browser sends no halves of characters. */
const wellFormed = (text: string): string => text.replaceAll(/\p{Cs}/gu, "\ufffd");

interface Form {
  readonly action: string;
  readonly fields: readonly (readonly [name: string, value: string])[];
}

/** The forms of the pages, with what stands in them. */
async function formsOf({ app }: Under): Promise<Form[]> {
  const tank = `/tanks/${EXAMPLE.tank}`;
  const questions = Array.from({ length: 8 }, (_, i) => `${tank}/questions/${i + 1}`);
  const pages = [
    ...["/new", `${tank}/form`, `${tank}/readings`, `${tank}/readings/${EXAMPLE.reading}`],
    ...[`${tank}/units`, `${tank}/history`, ...questions],
  ];
  const forms: Form[] = [];
  for (const page of pages) {
    const html = (await ask(app, "GET", page)).body;
    for (const [, attributes = "", inside = ""] of html.matchAll(/<form([^>]*)>([\s\S]*?)<\/form>/g)) {
      if (!/method="post"/i.test(attributes)) continue;
      const action = /action="([^"]*)"/.exec(attributes)?.[1] ?? page;
      const fields = [...inside.matchAll(/<(?:input|select|textarea|button)([^>]*)/g)].flatMap(
        ([, field = ""]) => {
          const name = /name="([^"]*)"/.exec(field)?.[1];
          return name === undefined ? [] : [[name, /value="([^"]*)"/.exec(field)?.[1] ?? ""] as const];
        },
      );
      forms.push({ action: action.replaceAll("&amp;", "&"), fields });
    }
  }
  return forms;
}

async function formRequest({ store }: Under, forms: readonly Form[], chance: Chance): Promise<Sent> {
  const { action, fields } = chance.pick(forms);
  const sent = new URLSearchParams();
  const row = action.includes("/readings/")
    ? await store.entry(EXAMPLE.reading)
    : await store.tank(EXAMPLE.tank);
  for (const [name, value] of fields) {
    if (name === "version" && chance.is(0.9)) {
      sent.append(name, String(row?.version));
      continue;
    }
    if (chance.is(0.1)) continue;
    const typed = chance.is(0.7) ? value : wellFormed(nastyText(chance));
    sent.append(name, typed);
    if (chance.is(0.02)) sent.append(name, wellFormed(nastyText(chance)));
  }
  if (chance.is(0.1)) sent.append(nastyText(chance).slice(0, 50), "1");
  const text = String(sent);
  return {
    method: "POST",
    path: action,
    body: chance.is(0.05) ? garbled(text, chance) : text,
    headers: { "content-type": "application/x-www-form-urlencoded" },
  };
}
