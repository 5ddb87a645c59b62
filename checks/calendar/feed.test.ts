/**
 * Calendar file and feed as a calendar program meets them: the same bytes while nothing changed, five times anew after
 * changes of the daybook, an address that is told once, found by its hash, limited, and gone when it is taken back. The
 * invented tanks, the real engine with few runs.
 */
import { writeFileSync } from "node:fs";
import { expect, onTestFinished, test } from "vitest";
import type { TankAnswers } from "../../src/answers/tank-answers.ts";
import { Answers } from "../../src/server/answers.ts";
import { addDemonstration } from "../../src/server/demonstration/add.ts";
import { LIMITS } from "../../src/server/limits.ts";
import { nameOf } from "../../src/server/name-of.ts";
import type { AnswerSource } from "../../src/server/route.ts";
import { to } from "../../src/web/page.ts";
import { appUnderTest, HOST, TODAY, type Under } from "../http/kit/app.ts";
import { byIcalJs, byTsIcs, faultsOf, type ParsedEvent } from "./kit/parsers.ts";

const NOW = `${TODAY}T12:00:00.000Z`;

const get = ({ app }: Under, url: string, headers: Record<string, string> = {}) =>
  app.inject({ method: "GET", url, headers: { host: HOST, ...headers } });
const post = ({ app }: Under, url: string, fields: Record<string, string>) =>
  app.inject({
    method: "POST",
    url,
    headers: { host: HOST, origin: `http://${HOST}`, "content-type": "application/x-www-form-urlencoded" },
    payload: new URLSearchParams(fields).toString(),
  });

async function withTanks(source: AnswerSource): Promise<Under> {
  const under = await appUnderTest(source);
  await addDemonstration(under.store, TODAY, NOW);
  return under;
}

/** A plan of few runs: what the daybook and the clock move is what these checks are about. */
const FEW = { members: 12, seed: 1 };

/** @param once the plan of the first asking stands */
function fewRuns(once = false): AnswerSource {
  const engine = new Answers();
  onTestFinished(() => engine.close());
  let first: Promise<TankAnswers> | null = null;
  const of: AnswerSource["of"] = (facts, _, change, daybook) => {
    if (once && first !== null) return first;
    first = engine.of(facts, FEW, change, daybook);
    return first;
  };
  return { of, ready: () => null };
}

/** Takes files as a calendar does: the higher number, cancelled ones out. */
function taken(held: Map<string, ParsedEvent>, text: string): void {
  for (const event of byIcalJs(text)) {
    if ((held.get(event.uid)?.sequence ?? -1) > event.sequence) continue;
    if (event.cancelled) held.delete(event.uid);
    else held.set(event.uid, event);
  }
}

test("every invented tank's almanac is drawn, and its file is read by both parsers", {
  timeout: 600_000,
}, async () => {
  const under = await withTanks(fewRuns());
  for (const row of await under.store.tanks()) {
    const page = await get(under, `${to.tank(row.id, "almanac")}?wait=1`);
    expect(page.statusCode).toBe(200);
    const file = await get(under, to.calendarFile(row.id));
    expect(file.headers["content-type"]).toBe("text/calendar; charset=utf-8");
    expect(faultsOf(file.body)).toEqual([]);
    const read = byIcalJs(file.body);
    expect(read.length).toBeGreaterThan(2);
    expect(byTsIcs(file.body).map(({ uid, summary }) => [uid, summary])).toEqual(
      read.map(({ uid, summary }) => [uid, summary]),
    );
    // Nothing of the tank but its duties: neither its name nor who keeps it.
    expect(file.body).not.toContain(row.id);
    expect(file.body).not.toContain(nameOf(row));
    // A wave is never a bare date.
    for (const { summary, description } of read)
      if (/\bwave\b/.test(summary)) expect(description).toMatch(/^Only if /);
    const folder = process.env["ALMANAC_OUT"];
    if (folder !== undefined) {
      writeFileSync(`${folder}/${row.id}.ics`, file.body);
      writeFileSync(`${folder}/${row.id}.html`, page.body);
    }
  }
});

/** Somebody's calendar through changes: after each, both parsers agree, and it holds what stands and nothing else. */
async function followed(under: Under, tank: string, changes: readonly (() => Promise<unknown>)[]) {
  const file = () => get(under, to.calendarFile(tank));
  const held = new Map<string, ParsedEvent>();
  const given = await file();
  expect(given.statusCode).toBe(200);
  taken(held, given.body);
  let moved = 0;
  const after: ParsedEvent[][] = [];
  for (const change of changes) {
    await change();
    const text = (await file()).body;
    expect(faultsOf(text)).toEqual([]);
    const read = byIcalJs(text);
    const told = ({ uid, sequence, summary }: Pick<ParsedEvent, "uid" | "sequence" | "summary">) =>
      JSON.stringify([uid, sequence, summary]);
    expect(byTsIcs(text).map(told)).toEqual(read.map(told));
    moved += read.filter(({ uid, sequence }) => (held.get(uid)?.sequence ?? 0) < sequence).length;
    expect(new Set(read.map(({ uid }) => uid)).size).toBe(read.length);
    taken(held, text);
    const standing = read.filter(({ cancelled }) => !cancelled).map(({ uid }) => uid);
    expect([...held.keys()].sort()).toEqual(standing.sort());
    expect((await file()).body).toBe(text);
    after.push([...held.values()]);
  }
  return { moved, after };
}

test("five times anew after changes: none twice, none orphaned; unchanged, the same bytes", {
  timeout: 600_000,
}, async () => {
  const under = await withTanks(fewRuns(true));
  const [row] = await under.store.tanks();
  const tank = row!.id;
  const log = async (kind: "chore" | "reading", fields: Record<string, string>) => {
    const logged = await post(under, to.newEntry(tank, kind), { ...fields, observed: "today" });
    expect(logged.statusCode, logged.body).toBeLessThan(400);
  };
  const { moved } = await followed(under, tank, [
    () => log("chore", { chore: "glass_wiped", film_days: "2" }),
    () => log("reading", { quantity: "no3_mg_per_l", text: "48 mg/L as NO3" }),
    () => log("chore", { chore: "water_change", amount: "20 %" }),
    () => log("reading", { quantity: "alkalinity_dkh", text: "8 dKH" }),
    () => log("chore", { chore: "filter_changed" }),
  ]);
  expect(moved).toBeGreaterThan(0);
});

test("a time away: kept, put off, made longer, a second one, and both called off", {
  timeout: 600_000,
}, async () => {
  const under = await withTanks(fewRuns(true));
  const [row] = await under.store.tanks();
  const tank = row!.id;
  const away = async (from: string, to_: string) => {
    const fields = { from, to: to_, every: "2", fed_by: "sitter", once: `${from}${to_}`.padEnd(22, "k") };
    const kept = await post(under, to.holiday(tank), fields);
    expect(kept.statusCode, kept.body).toBe(303);
  };
  const callOff = async () => {
    const stamp = { at: NOW, by: "Tester" };
    for (const { id, version, on, body } of await under.store.entries(tank, { kind: "absence", limit: 9 }))
      await under.store.correctEntry(id, version, { on, body, kept: false }, stamp);
  };
  const { moved, after } = await followed(under, tank, [
    () => away("2026-07-01", "2026-07-10"),
    () => away("2026-07-03", "2026-07-12"),
    () => away("2026-07-03", "2026-07-16"),
    () => away("2026-08-10", "2026-08-20"),
    callOff,
  ]);
  const visits = after.map((events) => events.filter(({ summary }) => /sitter/i.test(summary)).length);
  expect(visits[0]).toBeGreaterThan(0);
  expect(visits[3]).toBeGreaterThan(visits[0]!);
  expect(visits.at(-1)).toBe(0);
  expect(moved).toBeGreaterThan(0);
});

test("a feed: told once, kept as a hash, the same tag, limited, gone when taken back", {
  timeout: 600_000,
}, async () => {
  const under = await withTanks(fewRuns(true));
  const [row] = await under.store.tanks();
  const tank = row!.id;
  const made = await post(under, to.calendarFeeds(tank), { make: "1" });
  expect(made.statusCode).toBe(200);
  const address = /http:\/\/[^<\s]+(\/calendar\/([\w-]+)\.ics)/.exec(made.body);
  const [, path = "", token = ""] = address ?? [];
  expect(token).toHaveLength(22);
  expect((await get(under, to.calendarFeeds(tank))).body).not.toContain(token);
  const [feed] = await under.store.feeds(tank);
  expect(JSON.stringify(feed)).not.toContain(token);

  const first = await get(under, path);
  expect(first.statusCode).toBe(200);
  expect(faultsOf(first.body)).toEqual([]);
  expect(first.body).toContain("REFRESH-INTERVAL;VALUE=DURATION:PT6H\r\n");
  const tag = String(first.headers["etag"]);
  const again = await get(under, path, { "if-none-match": tag });
  expect([again.statusCode, again.body]).toEqual([304, ""]);
  // Read-only: nothing else answers there.
  expect((await post(under, path, { make: "1" })).statusCode).toBe(405);
  expect((await get(under, `/calendar/${"a".repeat(22)}.ics`)).statusCode).toBe(404);
  expect((await get(under, "/calendar/short.ics")).statusCode).toBe(404);

  let answered = 2;
  for (; answered <= LIMITS.feedsPerMinute + 2; answered++)
    if ((await get(under, path)).statusCode === 429) break;
  expect(answered).toBe(LIMITS.feedsPerMinute);
  under.wait(61);

  const back = await post(under, to.calendarFeeds(tank), { take_back: feed!.id });
  expect(back.statusCode).toBe(303);
  expect((await get(under, path)).statusCode).toBe(404);
  expect((await get(under, to.calendarFeeds(tank))).body).toContain("taken back");
  // Of another tank nothing is taken back.
  const [, other] = await under.store.tanks();
  await post(under, to.calendarFeeds(tank), { make: "1" });
  const stands = (await under.store.feeds(tank)).at(-1)!;
  await post(under, to.calendarFeeds(other!.id), { take_back: stands.id });
  expect((await under.store.feeds(tank)).at(-1)?.takenBack).toBeNull();
});
