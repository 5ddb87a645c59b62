/**
 * The application: routes of pages, built files and the API, each answer with the same headers, each failure in words.
 * Everything it needs is handed in, so that tests run it without a port. Listening is listen.ts.
 */
import { type FastifyInstance, type FastifyRequest, fastify } from "fastify";
import type { Store } from "../store/store.ts";
import { assetsOf } from "../web/assets.ts";
import { addApi } from "./api/index.ts";
import type { BuiltFiles } from "./assets.ts";
import { addBuiltFiles } from "./built-files.ts";
import { addFailures, answerBroken, type Failures, tellFailure } from "./failures.ts";
import { LIMITS } from "./limits.ts";
import { loadTank } from "./load-tank.ts";
import { boundaryIn, partsOf, SentParts } from "./multipart.ts";
import { newId as makeId } from "./new-id.ts";
import { PAGE_ROUTES } from "./pages/index.ts";
import { RefusedRequest } from "./refused.ts";
import { queryOf, sendReply } from "./reply.ts";
import type { AnswerSource, PageContext, PageRequest } from "./route.ts";
import { refusedRequest, SECURITY_HEADERS } from "./security.ts";
import { WriteLimit } from "./write-limit.ts";

declare module "fastify" {
  interface FastifyInstance {
    /** Pattern of every route → methods it answers. */
    readonly routeTable: ReadonlyMap<string, readonly string[]>;
  }
  interface FastifyContextConfig {
    /** Said where a route's method does not tell it. */
    readonly changes?: boolean;
  }
}

export interface AppParts {
  readonly store: Store;
  readonly answers: AnswerSource;
  readonly built: BuiltFiles;
  readonly now: () => Date;
  /** ISO date, in the machine's zone. */
  readonly today: () => string;
  readonly newId?: () => string;
  /** Changes a minute that one client may make; that of LIMITS where left out. */
  readonly writesPerMinute?: number;
  /** Where a fault of ours is told; nothing that a keeper typed goes there. */
  readonly tell?: (line: string) => void;
}

export interface Served extends AppParts {
  readonly newId: () => string;
  readonly tell: (line: string) => void;
  readonly contextOf: () => PageContext;
}

export function buildApp(parts: AppParts): FastifyInstance {
  const { store, answers, now, today, newId = makeId, tell = () => {} } = parts;
  const { writesPerMinute = LIMITS.writesPerMinute } = parts;
  const contextOf = (): PageContext => {
    const day = today();
    const instant = now().toISOString();
    return {
      store,
      answers,
      today: day,
      now: instant,
      loadTank: (id) => loadTank(store, id, day, instant),
      newId,
    };
  };
  const served: Served = { ...parts, newId, tell, contextOf };
  const assets = assetsOf(parts.built.addresses);
  const app = fastify({
    logger: false,
    bodyLimit: LIMITS.bodyBytes,
    requestTimeout: LIMITS.requestMs,
    keepAliveTimeout: LIMITS.keepAliveMs,
    connectionTimeout: LIMITS.silenceMs,
    http: {
      maxHeaderSize: LIMITS.headerBytes,
      headersTimeout: LIMITS.headMs,
      connectionsCheckingInterval: 1000,
    },
    routerOptions: { maxParamLength: LIMITS.addressPartLetters, ignoreTrailingSlash: true },
    forceCloseConnections: "idle",
    clientErrorHandler: answerBroken,
    frameworkErrors: (error, request, reply) => tellFailure(error, request, reply, failures),
  });
  const methods = new Map<string, string[]>();
  app.addHook("onRoute", ({ method, url }) => {
    methods.set(url, [...(methods.get(url) ?? []), ...[method].flat()]);
  });
  app.decorate("routeTable", methods);
  const failures: Failures = { assets, today, tell, methodsOf: (path) => methodsOf(path, methods) };
  addFailures(app, failures);
  const writes = new WriteLimit(writesPerMinute, () => now().getTime());
  app.addHook("onRequest", async (request, reply) => {
    reply.headers(SECURITY_HEADERS).header("cache-control", "no-store");
    const refused = refusedRequest(request.method, request.headers);
    if (refused !== null) throw new RefusedRequest(refused.status, refused.why);
    const { changes = request.method !== "GET" && request.method !== "HEAD" } = request.routeOptions.config;
    if (changes) writes.count(request.ip);
  });
  app.removeAllContentTypeParsers();
  app.addContentTypeParser(
    "application/x-www-form-urlencoded",
    { parseAs: "string" },
    async (_request: FastifyRequest, body: string) => new URLSearchParams(body),
  );
  app.addContentTypeParser(
    "multipart/form-data",
    { parseAs: "buffer" },
    async (request: FastifyRequest, body: Buffer) => {
      const boundary = boundaryIn(request.headers["content-type"] ?? "");
      const sent = boundary === null ? null : partsOf(body, boundary);
      if (sent === null)
        throw new RefusedRequest(400, "The form did not arrive whole. Nothing was added. Send it again.");
      return new SentParts(sent);
    },
  );
  addBuiltFiles(app, parts.built);
  for (const route of PAGE_ROUTES) {
    app.route({
      method: route.method,
      url: route.path,
      ...(route.takes === "file" ? { bodyLimit: LIMITS.fileBytes } : {}),
      handler: async (request, reply) => {
        const context = contextOf();
        const answered = await route.answer(requestOf(request), context);
        return await sendReply(answered, request, reply, { assets, today: context.today });
      },
    });
  }
  addApi(app, served);
  return app;
}

/** Names and values as a page takes them: of a name given twice, the last. */
function requestOf(request: FastifyRequest): PageRequest {
  return {
    params: request.params as Record<string, string>,
    query: Object.fromEntries(queryOf(request.url)),
    host: request.headers.host ?? "localhost",
    ...sentIn(request.body),
  };
}

function sentIn(body: unknown): Pick<PageRequest, "form" | "file"> {
  if (body instanceof URLSearchParams) return { form: body };
  if (!(body instanceof SentParts)) return { form: null };
  const form = new URLSearchParams();
  let file: PageRequest["file"] = null;
  for (const part of body.parts) {
    if (part.file === null) form.append(part.name, part.bytes.toString("utf8"));
    // A file that was not chosen comes as one without a name.
    else if (part.file !== "" || part.bytes.length > 0) file = { name: part.file, bytes: part.bytes };
  }
  return { form, file };
}

/** Methods of the routes whose pattern fits a path. */
function methodsOf(path: string, methods: ReadonlyMap<string, readonly string[]>): string[] {
  const parts = path.split("/");
  const fits = (pattern: string) => {
    const wanted = pattern.split("/");
    return (
      wanted.length === parts.length &&
      wanted.every((part, i) => (part.startsWith(":") ? parts[i] !== "" : part === parts[i]))
    );
  };
  return [...methods].flatMap(([pattern, answered]) => (fits(pattern) ? answered : []));
}
