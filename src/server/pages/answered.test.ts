/** A tank's page answers at once; a part, or a reader who waits, gets the answers; a file of numbers waits for them. */
import { beforeAll, describe, expect, test } from "vitest";
import { type Example, exampleTank, TODAY } from "../../../checks/kit/example-answers.ts";
import { renderPart } from "../../web/part.tsx";
import type { AnswerSource, LoadedTank, PageContext, PageReply } from "../route.ts";
import { AHEAD_ROUTES } from "./ahead.ts";
import { ANIMALS_ROUTES } from "./animals.ts";
import { CHARTS_ROUTES } from "./charts.ts";
import { LARDER_ROUTES } from "./larder.ts";
import { WORKING_ROUTES } from "./working.ts";

/** A tank planned and forecast on a busy machine. */
const PLENTY_MS = 600_000;
let example: Example;
beforeAll(async () => {
  example = await exampleTank("first-reef.yaml");
}, PLENTY_MS);

const ROUTES = [...LARDER_ROUTES, ...AHEAD_ROUTES, ...ANIMALS_ROUTES, ...WORKING_ROUTES, ...CHARTS_ROUTES];

async function ask(path: string, address: Record<string, string>, worked: boolean): Promise<PageReply> {
  const route = ROUTES.find((one) => one.path === path)!;
  const { tank = "example", query = "", ...params } = address;
  const answers: AnswerSource = {
    ready: () => (worked ? example.answers : null),
    of: async () => example.answers,
  };
  const loaded = {
    row: { id: "example", version: 1 },
    ...{ head: example.head, facts: example.facts, document: {} },
    record: { observations: [], happenings: [], declined: [], asOf: TODAY },
    ...{ zone: null, today: TODAY },
  };
  const context = {
    answers,
    today: TODAY,
    loadTank: async (id: string) => (id === "example" ? (loaded as unknown as LoadedTank) : null),
  };
  return await route.answer(
    { params: { tank, ...params }, query: Object.fromEntries(new URLSearchParams(query)), form: null },
    context as unknown as PageContext,
  );
}

const htmlOf = (reply: PageReply): string => (reply.kind === "page" ? renderPart(reply.page) : reply.kind);

describe("while the answers are being worked out", () => {
  test("the page comes at once, with a slot that keeps the query and a link that waits", async () => {
    const html = htmlOf(await ask("/tanks/:tank/ahead", { query: "week=4&of=po4" }, false));
    expect(html).toContain('data-src="/tanks/example/ahead?of=po4&amp;week=4&amp;part=1"');
    expect(html).toContain('href="/tanks/example/ahead?of=po4&amp;week=4&amp;wait=1"');
  });

  test.each(["part=1", "wait=1"])("with %s it waits", async (query) => {
    const html = htmlOf(await ask("/tanks/:tank/larder", { query }, false));
    expect(html).not.toContain("data-await");
    expect(html).toContain("rations a day");
  });

  test("a file of numbers waits", async () => {
    const reply = await ask("/tanks/:tank/charts/:chart", { chart: "larder-wedge.csv" }, false);
    expect(reply).toMatchObject({ kind: "file", type: "text/csv; charset=utf-8" });
  });
});

describe("not found, in words", () => {
  test.each([
    ["/tanks/:tank/larder", { tank: "other" }],
    ["/tanks/:tank/animals/:animal", { animal: "unicorn" }],
    ["/tanks/:tank/working/:figure", { figure: "larder.nothing.supply" }],
    ["/tanks/:tank/charts/:chart", { chart: "nothing.csv" }],
    ["/tanks/:tank/charts/:chart", { chart: "larder-wedge" }],
  ])("%s with %j", async (path, address) => {
    expect((await ask(path, address, true)).kind).toBe("not_found");
  });
});

test("the day and the quantity asked for are those that are counted and drawn", async () => {
  const html = htmlOf(await ask("/tanks/:tank/ahead", { query: "week=4&of=po4" }, true));
  expect(html).toContain("Twenty runs, counted on 13 Jul 2026");
  expect([...html.matchAll(/data-chart="([^"]*)"/g)].map(([, id]) => id)).toEqual(["ahead-po4"]);
});

test("each drawing has a file of its numbers", async () => {
  const html = htmlOf(await ask("/tanks/:tank/ahead", { query: "of=all" }, true));
  const files = [...html.matchAll(/href="\/tanks\/example\/charts\/([^"]*)"/g)].map(([, chart]) => chart!);
  expect(files).toHaveLength(6);
  for (const chart of files)
    expect((await ask("/tanks/:tank/charts/:chart", { chart }, true)).kind).toBe("file");
});
