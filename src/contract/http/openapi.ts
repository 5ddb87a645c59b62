/** The API described in OpenAPI 3.1, from the very schemas the server judges by. */
import { z } from "zod";
import { aheadOutput } from "../output/ahead.ts";
import { animalsOutput } from "../output/animals.ts";
import { checkOutput } from "../output/check.ts";
import { larderOutput } from "../output/larder.ts";
import { wavesOutput } from "../output/waves.ts";
import { workingFigure, workingOutput } from "../output/working.ts";
import { wrongListOutput } from "../output/wrong.ts";
import { tankFileSchema } from "../tank-file/schema.ts";
import { entryView, newEntry } from "./entries.ts";
import type { Operation } from "./operation.ts";
import { OPERATIONS } from "./operations.ts";
import { facts, problem } from "./parts.ts";
import { readingView } from "./readings.ts";
import { tankView } from "./tanks.ts";

export const API_ROOT = "/api/v1";

type Json = Readonly<Record<string, unknown>>;

/** Described once, pointed to from everywhere. */
const NAMED: Readonly<Record<string, z.ZodType>> = {
  TankFile: tankFileSchema,
  Tank: tankView,
  Reading: readingView,
  NewEntry: newEntry,
  Entry: entryView,
  Larder: larderOutput,
  Waves: wavesOutput,
  Ahead: aheadOutput,
  Animals: animalsOutput,
  Working: workingOutput,
  Figure: workingFigure,
  Check: checkOutput,
  WrongList: wrongListOutput,
  Problem: problem,
};

const nameOf = (schema: unknown): string | undefined =>
  Object.is(schema, facts) ? "TankFile" : Object.entries(NAMED).find(([, named]) => named === schema)?.[0];

function described(schema: z.ZodType, whole = false): Json {
  const { $schema, ...json } = z.toJSONSchema(schema, {
    override: ({ zodSchema, jsonSchema }) => {
      const name = whole && Object.is(zodSchema, schema) ? undefined : nameOf(zodSchema);
      if (name === undefined) return;
      for (const key of Object.keys(jsonSchema)) delete jsonSchema[key];
      jsonSchema.$ref = `#/components/schemas/${name}`;
    },
  });
  return json;
}

const REASONS: Readonly<Record<number, string>> = {
  200: "Done",
  201: "Added",
  400: "Can't be taken as it was sent: errors names each place",
  404: "There is nothing at this address",
  409: "The same Idempotency-Key came with another request",
  412: "Another version came first: current is what is kept now",
  422: "Read, but not kept: errors names each place, what is allowed and likely fixes",
  428: "If-Match must name the version this was made from",
  429: "Too many changes in a minute: Retry-After says how long to wait",
  503: "Not worked out yet: Retry-After says when to ask again",
};

export function openApi(version: string): Json {
  const paths: Record<string, Record<string, Json>> = {};
  for (const operation of OPERATIONS) {
    const path = `${API_ROOT}${operation.path}`;
    paths[path] = { ...paths[path], [operation.method.toLowerCase()]: operationJson(operation) };
  }
  return {
    openapi: "3.1.0",
    info: {
      title: "Grazewell",
      version,
      description:
        "Tanks, their daybooks and what the engine says of them, on the keeper's own machine. Unknown fields are refused; errors are problem details (RFC 9457). Bounds: docs/limits.md.",
      license: { name: "MIT", identifier: "MIT" },
    },
    servers: [{ url: "/" }],
    security: [],
    paths,
    components: {
      schemas: Object.fromEntries(
        Object.entries(NAMED).map(([name, schema]) => [name, described(schema, true)]),
      ),
    },
  };
}

function operationJson(operation: Operation): Json {
  const { id, summary, body, asks, query, path, replies, problems, examples } = operation;
  const parameters = [
    ...[...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => ({
      name,
      in: "path",
      required: true,
      schema: { type: "string" },
    })),
    ...(query === undefined ? [] : queryParameters(query)),
    ...(asks === undefined ? [] : [HEADERS[asks]]),
  ];
  const sent = examples.filter((example) => example.body !== undefined);
  return {
    operationId: id,
    summary,
    ...(parameters.length === 0 ? {} : { parameters }),
    ...(body === undefined
      ? {}
      : {
          requestBody: {
            required: true,
            content: {
              "application/json": {
                schema: described(body),
                ...(sent.length === 0
                  ? {}
                  : {
                      examples: Object.fromEntries(
                        sent.map((example) => [example.name, { value: example.body }]),
                      ),
                    }),
              },
            },
          },
        }),
    responses: {
      ...Object.fromEntries(
        Object.entries(replies).map(([status, schema]) => [
          status,
          {
            description: REASONS[Number(status)],
            content: { "application/json": { schema: described(schema) } },
          },
        ]),
      ),
      ...Object.fromEntries(
        problems.map((status) => [
          status,
          {
            description: REASONS[status],
            content: { "application/problem+json": { schema: { $ref: "#/components/schemas/Problem" } } },
          },
        ]),
      ),
    },
  };
}

function queryParameters(query: z.ZodObject): Json[] {
  const { properties = {}, required = [] } = described(query) as {
    readonly properties?: Readonly<Record<string, Json>>;
    readonly required?: readonly string[];
  };
  return Object.entries(properties).map(([name, { description, ...schema }]) => ({
    name,
    in: "query",
    required: required.includes(name),
    ...(description === undefined ? {} : { description }),
    schema,
  }));
}

const HEADERS = {
  version: {
    name: "If-Match",
    in: "header",
    required: true,
    description: "the version this was made from, as ETag gave it",
    schema: { type: "string" },
    example: '"1"',
  },
  once: {
    name: "Idempotency-Key",
    in: "header",
    required: false,
    description:
      "your own name for this request: sent again with it, it gets the first answer and adds nothing",
    schema: { type: "string", maxLength: 200 },
  },
} as const;
