/** One request to an operation: judged by the operation's own schemas before a handler sees it. */
import type { FastifyRequest } from "fastify";
import { z } from "zod";
import type { Operation } from "../../contract/http/operation.ts";
import { type HttpFault, shapedAs } from "../../contract/http/shape.ts";
import { MOST_KEY_LETTERS } from "../../contract/http/sizes.ts";
import type { Served } from "../app.ts";
import { queryOf } from "../reply.ts";
import type { PageContext } from "../route.ts";
import { ProblemError } from "./problem.ts";

export interface Call {
  readonly params: Readonly<Record<string, string>>;
  /** Of the shape the operation's `query` and `body` say. */
  readonly query: unknown;
  readonly body: unknown;
  /** Version in If-Match; 0 where the operation asks for none. */
  readonly from: number;
  /** Idempotency-Key, with what tells this request from another; null where none was sent. */
  readonly once: { readonly key: string; readonly fingerprint: string } | null;
  readonly served: Served;
  readonly context: PageContext;
}

export interface Result {
  readonly status: number;
  readonly body: unknown;
  /** Version, for ETag. */
  readonly version?: number;
  /** Address of what was added. */
  readonly location?: string;
}

export type Handler = (call: Call) => Promise<Result>;

/** @throws ProblemError */
export function callOf(
  operation: Operation,
  request: FastifyRequest,
  served: Served,
  fingerprint: () => string,
): Call {
  return {
    params: request.params as Record<string, string>,
    query: judged(operation.query ?? z.strictObject({}), valuesIn(request.url, operation.query)),
    body: operation.body === undefined ? undefined : bodyOf(operation.body, request.body),
    from: operation.asks === "version" ? versionIn(request.headers["if-match"]) : 0,
    once: operation.asks === "once" ? onceIn(request.headers["idempotency-key"], fingerprint) : null,
    served,
    context: served.contextOf(),
  };
}

/** @throws ProblemError */
function bodyOf(schema: z.ZodType, body: unknown): unknown {
  if (body === undefined || body === null || body instanceof URLSearchParams) {
    throw mend(400, [fault("", "MISSING", "Body: it is empty; send JSON as application/json")]);
  }
  return judged(schema, body);
}

function judged(schema: z.ZodType, data: unknown): unknown {
  const shaped = shapedAs(schema, data);
  if (shaped.ok) return shaped.value;
  throw mend(400, shaped.faults);
}

/** Names and values of a query: lists where the operation takes a list, else one of each. */
function valuesIn(url: string, schema: z.ZodObject | undefined): Record<string, string | string[]> {
  const sent = queryOf(url);
  const query: Record<string, string | string[]> = {};
  for (const name of new Set(sent.keys())) {
    const values = sent.getAll(name);
    const wanted = schema?.shape[name];
    if (wanted instanceof z.ZodOptional && wanted.unwrap() instanceof z.ZodArray) query[name] = values;
    else if (values.length > 1)
      throw mend(400, [fault(`/${name}`, "FORMAT", `"${name}" is given twice; keep one`)]);
    else Object.defineProperty(query, name, { value: values[0], enumerable: true });
  }
  return query;
}

const MOST_VERSION_DIGITS = 15;

function versionIn(header: string | undefined): number {
  if (header === undefined) {
    throw new ProblemError({
      status: 428,
      title: "Which version?",
      kind: "MISSING",
      detail:
        'If-Match: it must name the version this was made from, such as "1"; ETag of the answer to GET gives it.',
    });
  }
  const match = /^"?(\d+)"?$/.exec(header.trim());
  if (match !== null && match[1]!.length <= MOST_VERSION_DIGITS) return Number(match[1]);
  throw mend(400, [fault("", "FORMAT", 'If-Match: must be one version in double quotes, such as "1"')]);
}

function onceIn(header: string | string[] | undefined, fingerprint: () => string): Call["once"] {
  if (header === undefined) return null;
  const key = String(header);
  if (/^[\x21-\x7e]+$/.test(key) && key.length <= MOST_KEY_LETTERS)
    return { key, fingerprint: fingerprint() };
  const words = `Idempotency-Key: must be 1 to ${MOST_KEY_LETTERS} letters, digits and signs without spaces`;
  throw mend(400, [fault("", "FORMAT", words)]);
}

export const fault = (pointer: string, kind: HttpFault["kind"], detail: string): HttpFault => ({
  ...{ pointer, kind, detail, typed: null },
  ...{ allowed: [], choices: [] },
});

/** Everything that is to mend, told at once: 400 where it can't be taken, 422 where it was read and asked about. */
export function mend(status: 400 | 422, faults: readonly HttpFault[]): ProblemError {
  const [first] = faults;
  const more = faults.length > 1 ? ` And ${faults.length - 1} more.` : "";
  return new ProblemError({
    status,
    title: faults.length === 1 ? "One thing to mend" : `${faults.length} things to mend`,
    kind: first?.kind ?? "FORMAT",
    detail: `${first?.detail ?? "It can't be taken as it was sent."}${more}`,
    errors: faults,
  });
}

export const notFound = (): ProblemError =>
  new ProblemError({
    status: 404,
    title: "Not found",
    kind: "NOTFOUND",
    detail: "There is nothing at this address.",
  });
