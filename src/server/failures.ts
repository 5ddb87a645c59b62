/**
 * Whatever goes wrong, told in words: a page for a browser, problem details (RFC 9457) for the API. A fault of ours says
 * so, with a mark by which its line on standard error is found, and nothing of how the program is made.
 */
import type { Socket } from "node:net";
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { Refusal } from "../answers/refusal.ts";
import { StoreError } from "../store/store.ts";
import type { Assets } from "../web/layout.tsx";
import { messagePage, notFoundPage } from "../web/pages/message.tsx";
import { NoAnswer } from "./answers.ts";
import { notFound } from "./api/call.ts";
import { type Problem, ProblemError, sendProblem } from "./api/problem.ts";
import { LIMITS } from "./limits.ts";
import { TankUnread } from "./load-tank.ts";
import { RefusedRequest, TooMany } from "./refused.ts";
import { sendPage } from "./reply.ts";
import { SECURITY_HEADERS } from "./security.ts";

export interface Failures {
  readonly assets: Assets;
  readonly today: () => string;
  readonly tell: (line: string) => void;
  /** Methods that an address answers. */
  readonly methodsOf: (path: string) => readonly string[];
}

const MIB = 1024 * 1024;

const isApi = (request: FastifyRequest) => request.url.startsWith("/api/");

export function addFailures(app: FastifyInstance, failures: Failures): void {
  app.setErrorHandler((error: FastifyError, request, reply) => tellFailure(error, request, reply, failures));
  app.setNotFoundHandler(async (request, reply) => {
    const path = request.url.split("?", 1)[0] ?? "/";
    const methods = failures.methodsOf(path);
    if (methods.length > 0) {
      reply.header("allow", methods.join(", "));
      const detail = `This address answers ${methods.join(", ")} alone.`;
      return await tellProblem({ status: 405, title: "Not done this way", detail }, request, reply, failures);
    }
    if (isApi(request)) {
      return await tellProblem(notFound().problem, request, reply, failures);
    }
    return await sendPage(notFoundPage("page"), 404, request, reply, rendering(failures));
  });
}

export async function tellFailure(
  error: FastifyError,
  request: FastifyRequest,
  reply: FastifyReply,
  failures: Failures,
): Promise<FastifyReply> {
  reply.headers(SECURITY_HEADERS).header("cache-control", "no-store");
  const problem = problemOf(error);
  if (problem.mark !== undefined) {
    const route = request.routeOptions.url ?? "no route";
    failures.tell(`grazewell ${problem.mark}: ${request.method} ${route}: ${error.stack ?? error.message}`);
  }
  return await tellProblem(problem, request, reply, failures);
}

const BROKEN: Readonly<Record<string, readonly [status: string, words: string]>> = {
  HPE_HEADER_OVERFLOW: [
    "431 Request Header Fields Too Large",
    `The head of a request must be ${LIMITS.headerBytes / 1024} KiB or less.`,
  ],
  ERR_HTTP_REQUEST_TIMEOUT: [
    "408 Request Timeout",
    `A request must be here whole within ${LIMITS.requestMs / 1000} seconds.`,
  ],
};
const NOT_HTTP = ["400 Bad Request", "This can't be read as HTTP."] as const;

/** Bytes that never became a request: answered with the same headers, and the connection ended. */
export function answerBroken(error: NodeJS.ErrnoException, socket: Socket): void {
  if (error.code === "ECONNRESET" || !socket.writable) {
    socket.destroy();
    return;
  }
  const [status, words] = BROKEN[error.code ?? ""] ?? NOT_HTTP;
  const headers = Object.entries({
    ...SECURITY_HEADERS,
    "cache-control": "no-store",
    "content-type": "text/plain; charset=utf-8",
    "content-length": String(Buffer.byteLength(words)),
    connection: "close",
  });
  const lines = [`HTTP/1.1 ${status}`, ...headers.map(([name, value]) => `${name}: ${value}`)];
  socket.end(`${lines.join("\r\n")}\r\n\r\n${words}`);
}

const rendering = ({ assets, today }: Failures) => ({ assets, today: today() });

async function tellProblem(
  problem: Problem,
  request: FastifyRequest,
  reply: FastifyReply,
  failures: Failures,
): Promise<FastifyReply> {
  if (problem.retryAfterSeconds !== undefined) reply.header("retry-after", String(problem.retryAfterSeconds));
  if (isApi(request)) return await sendProblem(reply, problem);
  const lines = [problem.detail, ...(problem.fix === undefined ? [] : [problem.fix])];
  return await sendPage(
    messagePage({ heading: problem.title, lines }),
    problem.status,
    request,
    reply,
    rendering(failures),
  );
}

function problemOf(error: FastifyError): Problem & { readonly mark?: string } {
  if (error instanceof ProblemError) return error.problem;
  if (error instanceof RefusedRequest) {
    return { status: error.status, title: "Not answered", detail: error.message };
  }
  if (error instanceof TooMany) {
    return {
      status: 429,
      title: "Wait a little",
      kind: "RATE",
      detail: error.message,
      retryAfterSeconds: error.waitSeconds,
    };
  }
  if (error instanceof Refusal) {
    return { status: 422, title: "Can't be read as it is", kind: "FORMAT", detail: error.lines.join("\n") };
  }
  if (error instanceof NoAnswer) {
    return { status: 503, title: "Not worked out yet", detail: error.message, retryAfterSeconds: 60 };
  }
  if (error instanceof StoreError) {
    const busy = error.reason === "busy" || error.reason === "unreachable";
    return {
      status: 503,
      title: "The store can't be used just now",
      detail: error.message,
      fix: error.fix,
      ...(busy ? { retryAfterSeconds: 10 } : {}),
    };
  }
  if (error instanceof TankUnread) {
    const detail = error.findings.map(({ message }) => message.text).join("\n");
    return { status: 422, title: "This tank's facts need mending", kind: "FORMAT", detail };
  }
  return byCode(error);
}

function byCode(error: FastifyError): Problem & { readonly mark?: string } {
  switch (error.code) {
    case "FST_ERR_CTP_BODY_TOO_LARGE":
      return {
        status: 413,
        title: "Too big",
        kind: "TOOBIG",
        detail: `What is sent at once must be ${LIMITS.bodyBytes / MIB} MiB or less; a file that is brought in, or a picture, 10 MiB.`,
      };
    case "FST_ERR_CTP_INVALID_MEDIA_TYPE":
    case "FST_ERR_CTP_EMPTY_TYPE":
      return {
        status: 415,
        title: "Of another kind",
        kind: "FORMAT",
        detail: "The API takes application/json; forms send application/x-www-form-urlencoded.",
      };
    case "FST_ERR_CTP_INVALID_CONTENT_LENGTH":
      return {
        status: 400,
        title: "Cut short",
        kind: "FORMAT",
        detail: "The body is not as long as it was said to be.",
      };
    case "FST_ERR_BAD_URL":
      return { status: 400, title: "Not an address", kind: "FORMAT", detail: "This address can't be read." };
    case "FST_ERR_MAX_PARAM_LENGTH":
      return {
        status: 414,
        title: "Too long",
        kind: "TOOBIG",
        detail: "A part of this address is too long.",
      };
    default: {
      const mark = crypto.randomUUID().slice(0, 8);
      return {
        status: 500,
        title: "A fault in Grazewell",
        detail: `This is a fault in Grazewell, not in what you did (mark ${mark}). What was kept before is kept still.`,
        mark,
      };
    }
  }
}
