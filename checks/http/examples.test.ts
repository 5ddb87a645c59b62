/**
 * Every example of the API's description is run, in order, on a store of the examples' data, and every answer is judged
 * by the schema that the description gives. So the documents can't promise what the server does not do.
 */
import { expect, test } from "vitest";
import { API_ROOT, openApi } from "../../src/contract/http/openapi.ts";
import { OPERATIONS } from "../../src/contract/http/operations.ts";
import { problem } from "../../src/contract/http/parts.ts";
import { appUnderTest, ask } from "./kit/app.ts";
import { fillWithExamples } from "./kit/example-store.ts";

test("every example does as its description says", async () => {
  const { app, store, told } = await appUnderTest();
  await fillWithExamples(store);
  for (const operation of OPERATIONS) {
    for (const example of operation.examples) {
      const place = `${operation.id}, ${example.name}`;
      const path = operation.path.replaceAll(/\{(\w+)\}/g, (_, name: string) => example.params?.[name] ?? "");
      const answer = await ask(app, operation.method, `${API_ROOT}${path}`, example);
      expect(answer.statusCode, `${place}: ${answer.body.slice(0, 500)}`).toBe(example.status);
      const schema = operation.replies[example.status];
      const known = schema !== undefined || operation.problems.includes(example.status);
      expect(known, `${place}: ${example.status} is not described`).toBe(true);
      const read = (schema ?? problem).safeParse(answer.json());
      expect(read.error?.issues ?? [], place).toEqual([]);
    }
  }
  expect(told).toEqual([]);
});

test("every operation has an example, and an id of its own", () => {
  for (const { id, examples } of OPERATIONS) expect(examples.length, id).toBeGreaterThan(0);
  expect(new Set(OPERATIONS.map(({ id }) => id)).size).toBe(OPERATIONS.length);
});

test("the description is served, is OpenAPI 3.1, and points to nothing that is not there", async () => {
  const { app } = await appUnderTest();
  const answer = await ask(app, "GET", `${API_ROOT}/openapi.json`);
  const served = answer.json();
  expect(served).toEqual(JSON.parse(JSON.stringify(openApi(served.info.version))));
  expect(served.openapi).toMatch(/^3\.1\./);
  const schemas = served.components.schemas as Record<string, unknown>;
  const pointed = [...answer.body.matchAll(/"#\/components\/schemas\/([^"]+)"/g)].map(
    ([, name]) => name ?? "",
  );
  expect(pointed.length).toBeGreaterThan(20);
  for (const name of pointed) expect(schemas).toHaveProperty(name);
});
