/** Almanac of one tank, its calendar file, its feeds, and a feed itself. */
import { to } from "../../web/page.ts";
import { almanacPage } from "../../web/pages/almanac.tsx";
import { feedsPage } from "../../web/pages/almanac-feeds.tsx";
import { waitingPage } from "../../web/pages/waiting.tsx";
import { almanacFor } from "../almanac/almanac-of.ts";
import { calendarOf, placeOf } from "../almanac/calendar-of.ts";
import { countAsking, hashOf, isToken, newToken } from "../almanac/feeds.ts";
import { steadied } from "../almanac/steadied.ts";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { answersFor, ofTank } from "./of-tank.ts";
import { sentValues } from "./sent.ts";

export const ALMANAC_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: to.tank(":tank", "almanac"), answer: ofTank(show) },
  { method: "GET", path: to.calendarFile(":tank"), answer: ofTank(file) },
  { method: "GET", path: to.calendarFeeds(":tank"), answer: ofTank(feeds) },
  { method: "POST", path: to.calendarFeeds(":tank"), answer: ofTank(changeFeeds) },
  { method: "GET", path: to.calendarFeed(":token"), answer: feed },
];

async function show(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const answers = await answersFor(tank, request, context);
  const { head, row, zone } = tank;
  if (answers === null) {
    const address = to.tank(row.id, "almanac");
    return { kind: "page", page: waitingPage({ head, here: "almanac", what: "Almanac", address }) };
  }
  const almanac = almanacFor(tank, answers, context.today);
  const steady = await steadied(almanac, tank, context);
  const standing = (await context.store.feeds(row.id)).filter(({ takenBack }) => takenBack === null).length;
  return { kind: "page", page: almanacPage({ head, almanac: steady, zone, feeds: standing }) };
}

/** Waits for the answers: a calendar without its waves would call them off. */
async function calendarText(tank: LoadedTank, context: PageContext, feed: boolean): Promise<string> {
  const { facts, record } = tank;
  const answers = await context.answers.of(facts, undefined, undefined, record);
  const almanac = almanacFor(tank, answers, tank.today);
  return await calendarOf(context.store, placeOf(tank), almanac, { now: context.now, feed });
}

const TYPE = "text/calendar; charset=utf-8";

async function file(tank: LoadedTank, _: PageRequest, context: PageContext): Promise<PageReply> {
  const name = `${tank.head.name}-almanac.ics`;
  return { kind: "file", name, type: TYPE, text: await calendarText(tank, context, false) };
}

async function feed({ params }: PageRequest, context: PageContext): Promise<PageReply> {
  const { store, now } = context;
  const token = params["token"] ?? "";
  const hash = isToken(token) ? hashOf(token) : null;
  const found = hash === null ? null : await store.feedByHash(hash);
  countAsking(store, found === null ? null : hash, now);
  const tank = found === null || found.takenBack !== null ? null : await context.loadTank(found.tankId);
  if (tank === null) return { kind: "not_found", what: "calendar of that address" };
  return { kind: "file", name: "almanac.ics", type: TYPE, text: await calendarText(tank, context, true) };
}

async function feeds(tank: LoadedTank, _: PageRequest, { store }: PageContext): Promise<PageReply> {
  const all = await store.feeds(tank.row.id);
  return { kind: "page", page: feedsPage({ head: tank.head, feeds: all, made: null }) };
}

async function changeFeeds(
  tank: LoadedTank,
  { form, host = "localhost" }: PageRequest,
  { store, now, newId }: PageContext,
): Promise<PageReply> {
  const sent = sentValues(form);
  const stamp = { at: now, by: tank.row.keeper.name };
  const own = await store.feeds(tank.row.id);
  const taken = own.find(({ id }) => id === sent["take_back"]);
  if (taken !== undefined) {
    await store.takeBackFeed(taken.id, stamp);
    return { kind: "redirect", to: to.calendarFeeds(tank.row.id) };
  }
  if (sent["make"] !== "1") return { kind: "redirect", to: to.calendarFeeds(tank.row.id) };
  const token = newToken();
  await store.addFeed({ id: newId(), tankId: tank.row.id, tokenHash: hashOf(token) }, stamp);
  const all = await store.feeds(tank.row.id);
  // Told on this page alone: kept is its hash.
  const made = `http://${host}${to.calendarFeed(token)}`;
  return { kind: "page", page: feedsPage({ head: tank.head, feeds: all, made }) };
}
