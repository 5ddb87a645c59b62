/**
 * Opening offline: built files, the crisis page and each of its lists are fetched ahead, pages are kept as they are seen. Connected, every
 * page comes fresh; not connected, the kept copy comes with a line that says when it was seen.
 * Of every tank that was looked at its wet hand is kept too, and what its outbox holds is sent when the line is back.
 * Water sums are worked out here where the network is gone, from the server's own code (sums-here.tsx); of every tank that
 * was looked at, what fills their fields is kept.
 * Limits: what else was never seen can't be shown; only entries of the daybook are written offline, by the page
 * (client/outbox.ts). By hand, without a library.
 */
import { CRISIS_IDS } from "../../answers/wrong/list-ids.ts";
import { OUTBOX_NEWS, sendWaiting } from "../client/outbox-send.ts";
import { scriptAddress } from "../client/script-address.ts";
import { to } from "../page.ts";
import {
  headersOfText,
  NOT_SEEN_POLICY,
  notSeenPage,
  seenWords,
  withSeenLine,
  workedOutHere,
} from "./seen.ts";
import {
  dayHere,
  type Known,
  questionOf,
  type SumsAddress,
  type SumsHere,
  sumsAddress,
} from "./sums-asked.ts";

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
  importScripts(address: string): void;
  addEventListener(kind: "install" | "activate", heard: (event: Lasting) => void): void;
  addEventListener(kind: "fetch", heard: (event: Fetching) => void): void;
  addEventListener(kind: "sync", heard: (event: Syncing) => void): void;
}
const scope = globalThis as unknown as Scope;

/** Addresses of all other built files by their names: the build writes them in here (tools/bundle-web.ts). */
declare const BUILT_FILES: Readonly<Record<string, string>>;

const BUILT = "grazewell-built";
const PAGES = "grazewell-pages";
/** Parts of pages, such as workings: many, so they must not drive out the pages themselves. */
const PARTS = "grazewell-parts";
/** What the sums of each tank are filled from. */
const KNOWN = "grazewell-known";
/** Kept at most: the oldest go first. */
const MOST_BUILT = 150;
const MOST_PAGES = 60;
const MOST_KNOWN = 60;
const CRISIS = to.wrong();
const CRISIS_PAGES = [CRISIS, ...CRISIS_IDS.map((id) => to.wrongList(id))];
const CRISIS_WAIT_MS = 2000;
/** The engine is large, and of it offline only sums are worked out, by a script that the browser keeps with this one. */
const NOT_AHEAD = /engine-worker|\.wasm$|service-worker|sums-here/;
/** What a tank's sums are filled from is fetched anew with a page of the tank, once so long has passed. */
const KNOWN_FOR_MS = 5 * 60_000;

scope.addEventListener("install", (event) => {
  takeInSums();
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
  if (origin !== location.origin) return;
  if (request.method !== "GET") {
    const tank = OF_TANK.exec(pathname)?.[1];
    if (tank !== undefined) changed.add(tank);
    return;
  }
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
    const sums = sumsAddress(new URL(request.url));
    const worked = sums === null ? null : await workedOut(request, sums).catch(() => null);
    if (worked !== null) return worked;
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
  const { pathname } = new URL(request.url);
  await Promise.all([keepWetHand(pathname, pages), keepKnown(pathname)]);
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

/** Tanks that something was sent to since this worker woke: what is kept of them may be old. */
const changed = new Set<string>();

/** What a tank's sums are filled from. */
async function keepKnown(path: string): Promise<void> {
  const tank = OF_TANK.exec(path)?.[1];
  if (tank === undefined) return;
  const known = await caches.open(KNOWN);
  const address = to.sumsKnown(tank);
  const kept = await known.match(address);
  if (!changed.has(tank) && ageMs(kept) < KNOWN_FOR_MS) return;
  const fresh = await fetch(address).catch(() => null);
  if (fresh === null || !fresh.ok) return;
  changed.delete(tank);
  await known.delete(address);
  await known.put(address, fresh);
  await trim(known, MOST_KNOWN);
}

/** Taken in when this worker is installed, so that the browser keeps it; later it is run from there. */
function takeInSums(): SumsHere | null {
  const there = globalThis as { grazewellSums?: SumsHere };
  const address = BUILT_FILES["offline/sums-here"];
  if (there.grazewellSums === undefined && address !== undefined) {
    try {
      scope.importScripts(scriptAddress(address));
    } catch (error) {
      // Sums are worked out by the server alone then; all else is kept as ever.
      console.info("Grazewell's sums need the network here:", error);
    }
  }
  return there.grazewellSums ?? null;
}

/** A page of sums without the server; null where this device can't, or knows nothing of that tank. */
async function workedOut(
  { url, mode }: Pick<Request, "url" | "mode">,
  sums: SumsAddress,
): Promise<Response | null> {
  const sumsHere = takeInSums();
  // Headers as the server sends them, the content policy among them: those of a page that is always kept.
  const model = await (await caches.open(PAGES)).match(CRISIS, { ignoreVary: true });
  if (sumsHere === null || model === undefined) return null;
  const kept =
    sums.tank === null ? undefined : await (await caches.open(KNOWN)).match(to.sumsKnown(sums.tank));
  if (sums.tank !== null && kept === undefined) return null;
  const known = kept === undefined ? null : ((await kept.json()) as Known);
  const now = new Date();
  const { origin, pathname, search, searchParams } = new URL(url);
  const reply = sumsHere({
    ...questionOf(sums, known, { instant: now.toISOString(), day: dayHere(now) }),
    ...{ address: `${origin}${pathname}${search}`, part: searchParams.get("part") === "1" },
    built: BUILT_FILES,
  });
  // A chosen fix: answered at once under its own address, where the server would send to the mended one.
  if (reply.kind === "redirect") {
    const mended = new URL(reply.to, origin);
    const again = sumsAddress(mended);
    return again === null ? null : await workedOut({ url: mended.href, mode }, again);
  }
  const when = kept === undefined ? null : { when: seenWords(kept.headers.get("date")) };
  const html = mode === "navigate" ? workedOutHere(reply.html, when) : reply.html;
  return new Response(html, { status: reply.status, headers: headersOfText(model) });
}

const cacheOf = ({ url }: Request): Promise<Cache> =>
  caches.open(new URL(url).searchParams.has("part") ? PARTS : PAGES);

/** What was logged last stands first on it: after a day it is fetched anew. */
const isOfToday = (kept: Response | undefined): boolean => ageMs(kept) < 24 * 60 * 60_000;

/** Endless where there is none. */
function ageMs(kept: Response | undefined): number {
  const at = Date.parse(kept?.headers.get("date") ?? "");
  return Number.isNaN(at) ? Number.POSITIVE_INFINITY : Date.now() - at;
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
