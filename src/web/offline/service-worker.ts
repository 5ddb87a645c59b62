/**
 * Opening offline: built files, the crisis page and each of its lists are fetched ahead, pages are kept as they are seen. Connected, every
 * page comes fresh; not connected, the kept copy comes with a line that says when it was seen.
 * Of every tank that was looked at its wet hand is kept too, and what its outbox holds is sent when the line is back.
 * Limits: what was never seen can't be shown; only entries of the daybook are written offline, by the page
 * (client/outbox.ts). By hand, without a library.
 */
import { CRISIS_IDS } from "../../answers/wrong/list-ids.ts";
import { OUTBOX_NEWS, sendWaiting } from "../client/outbox-send.ts";
import { to } from "../page.ts";
import { NOT_SEEN_POLICY, notSeenPage, withSeenLine } from "./seen.ts";

/** The parts of a service worker's scope that are used: the DOM's types know a window alone. */
interface Lasting extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Lasting {
  readonly request: Request;
  respondWith(response: Promise<Response>): void;
}
/** The line is back, and this was asked for while it was gone. */
interface Syncing extends Lasting {
  readonly tag: string;
}
interface Scope {
  readonly clients: {
    claim(): Promise<void>;
    matchAll(which: {
      type: "window";
      includeUncontrolled: true;
    }): Promise<readonly { readonly url: string }[]>;
  };
  skipWaiting(): Promise<void>;
  addEventListener(kind: "install" | "activate", heard: (event: Lasting) => void): void;
  addEventListener(kind: "fetch", heard: (event: Fetching) => void): void;
  addEventListener(kind: "sync", heard: (event: Syncing) => void): void;
}
const scope = globalThis as unknown as Scope;

const BUILT = "grazewell-built";
const PAGES = "grazewell-pages";
/** Parts of pages, such as workings: many, so they must not drive out the pages themselves. */
const PARTS = "grazewell-parts";
/** Kept at most: the oldest go first. */
const MOST_BUILT = 150;
const MOST_PAGES = 60;
const CRISIS = to.wrong();
const CRISIS_PAGES = [CRISIS, ...CRISIS_IDS.map((id) => to.wrongList(id))];
const CRISIS_WAIT_MS = 2000;
/** The engine is large, and offline nothing new is worked out in this piece. */
const NOT_AHEAD = /engine-worker|\.wasm$|service-worker/;

scope.addEventListener("install", (event) => {
  event.waitUntil(fetchAhead().then(() => scope.skipWaiting()));
});

scope.addEventListener("activate", (event) => {
  event.waitUntil(scope.clients.claim().then(keepOpenPages));
});

scope.addEventListener("sync", (event) => {
  if (event.tag === OUTBOX_NEWS) event.waitUntil(sendOrAskAgain());
});

/** Failing asks the browser to try again later. */
async function sendOrAskAgain(): Promise<void> {
  if (!(await sendWaiting())) throw new Error("Grazewell can't be reached yet");
}

scope.addEventListener("fetch", (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== "GET" || origin !== location.origin) return;
  if (pathname === "/assets/manifest.json" || pathname.startsWith("/api/")) return;
  if (pathname.startsWith("/assets/")) event.respondWith(builtFile(request));
  else event.respondWith(page(event));
});

async function fetchAhead(): Promise<void> {
  const built = await caches.open(BUILT);
  const addresses: unknown = await (await fetch("/assets/manifest.json")).json();
  const wanted = Object.values(addresses as Record<string, string>).filter((one) => !NOT_AHEAD.test(one));
  await built.addAll(wanted);
  await Promise.all(CRISIS_PAGES.map(keep));
}

/** The pages that were open before this worker was: the first bench among them. */
async function keepOpenPages(): Promise<void> {
  const open = await scope.clients.matchAll({ type: "window", includeUncontrolled: true });
  await Promise.all(open.map(({ url }) => keep(url).catch(() => undefined)));
}

async function keep(address: string): Promise<void> {
  await keepPage(new Request(address), await fetch(address));
}

async function builtFile(request: Request): Promise<Response> {
  const built = await caches.open(BUILT);
  const kept = await built.match(request, { ignoreVary: true });
  if (kept !== undefined) return kept;
  const fresh = await fetch(request);
  if (fresh.ok) {
    await built.put(request, fresh.clone());
    await trim(built, MOST_BUILT);
  }
  return fresh;
}

async function page(event: Fetching): Promise<Response> {
  const { request } = event;
  const isCrisis = CRISIS_PAGES.includes(new URL(request.url).pathname);
  try {
    const fresh = await (isCrisis ? Promise.race([fetch(request), tooLate()]) : fetch(request));
    event.waitUntil(keepPage(request, fresh.clone()));
    return fresh;
  } catch (error) {
    // A crisis list is the same for every tank: the way back alone is lost.
    const kept = await (await cacheOf(request)).match(request, { ignoreVary: true, ignoreSearch: isCrisis });
    if (request.mode !== "navigate") {
      if (kept === undefined) throw error;
      return kept;
    }
    if (kept === undefined) return notSeen();
    return withSeenLine(kept, isCrisis ? "last" : "first");
  }
}

/** Nobody waits for a line that hangs to be told what to do first. */
async function tooLate(): Promise<never> {
  await new Promise((wake) => setTimeout(wake, CRISIS_WAIT_MS));
  throw new Error("Grazewell took too long to answer");
}

/** Whole pages and their parts; a failure or a file is not kept. */
async function keepPage(request: Request, response: Response): Promise<void> {
  if (!response.ok || response.redirected) return;
  if (!(response.headers.get("content-type") ?? "").startsWith("text/html")) return;
  const pages = await cacheOf(request);
  // Put anew, so that the page seen last is the last to go.
  await pages.delete(request, { ignoreVary: true });
  await pages.put(request, response);
  await trim(pages, MOST_PAGES);
  await keepWetHand(new URL(request.url).pathname, pages);
}

const OF_TANK = /^\/tanks\/([^/]+)(?:\/|$)/;

/** What is logged beside the tank is logged with the network gone: it is there before anybody asks for it. */
async function keepWetHand(path: string, pages: Cache): Promise<void> {
  const tank = OF_TANK.exec(path)?.[1];
  if (tank === undefined) return;
  const address = to.wetHand(tank);
  if (path === address || isOfToday(await pages.match(address))) return;
  await keep(address).catch(() => undefined);
}

const cacheOf = ({ url }: Request): Promise<Cache> =>
  caches.open(new URL(url).searchParams.has("part") ? PARTS : PAGES);

/** What was logged last stands first on it: after a day it is fetched anew. */
function isOfToday(kept: Response | undefined): boolean {
  const at = Date.parse(kept?.headers.get("date") ?? "");
  return Date.now() - at < 24 * 60 * 60_000;
}

async function notSeen(): Promise<Response> {
  const [sheet] = (await (await caches.open(BUILT)).keys()).filter(({ url }) => url.endsWith(".css"));
  const headers = { "content-type": "text/html; charset=utf-8", "content-security-policy": NOT_SEEN_POLICY };
  return new Response(notSeenPage(sheet?.url ?? null, CRISIS), { status: 503, headers });
}

/** Crisis pages and wet hands stay; a crisis page with a way back to a tank is one of many. */
const stays = ({ pathname, search }: URL): boolean =>
  pathname.endsWith("/wet-hand") || (search === "" && CRISIS_PAGES.includes(pathname));

async function trim(cache: Cache, most: number): Promise<void> {
  const keys = (await cache.keys()).filter(({ url }) => !stays(new URL(url)));
  await Promise.all(keys.slice(0, Math.max(0, keys.length - most)).map((key) => cache.delete(key)));
}
