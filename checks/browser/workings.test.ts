/**
 * Every figure that a page shows opens its working, and every working leads down to a source within three levels:
 * figure, the figure or parameter it comes from, the source (U2). Walks every page of three tanks by plain requests,
 * as a link is followed.
 */
import { setTimeout } from "node:timers/promises";
import { expect, inject, test } from "vitest";
import { SUMS } from "../../src/answers/sums/table.ts";
import { to } from "../../src/web/page.ts";
import { addressOf } from "./kit/browser.ts";
import { statesOf } from "./kit/states.ts";

interface Got {
  readonly status: number;
  readonly html: string;
}

const got = new Map<string, Promise<Got>>();

/** Asked again where the engine was too busy to answer, as the page's own "Ask again" does. */
async function answered(path: string): Promise<Response> {
  for (let asked = 1; ; asked += 1) {
    const answer = await fetch(addressOf(path));
    if (answer.status !== 503 || asked === 20) return answer;
    await setTimeout(3_000);
  }
}

/** A page with the parts that it loads later where they will stand. */
async function fetched(path: string): Promise<Got> {
  const answer = await answered(path);
  const html = await answer.text();
  const later = [...html.matchAll(/\bdata-(?:src|plan-part)="(\/[^"]*)"/g)].map((match) =>
    unescaped(match[1]!),
  );
  const parts = await Promise.all(later.map((part) => fetched(part)));
  return {
    status: [answer, ...parts].find(({ status }) => status !== 200)?.status ?? 200,
    html: html.replace("</main>", `${parts.map((part) => part.html).join("")}</main>`),
  };
}

function get(path: string): Promise<Got> {
  const known = got.get(path);
  if (known !== undefined) return known;
  const asked = fetched(path);
  got.set(path, asked);
  return asked;
}

const unescaped = (text: string) =>
  text.replaceAll("&amp;", "&").replaceAll("&#39;", "'").replaceAll("&quot;", '"');

/** Links within main, by a pattern of their address. */
function linksOf(html: string, pattern: RegExp): string[] {
  const main = /<main[\s\S]*<\/main>/.exec(html)?.[0] ?? "";
  const all = [...main.matchAll(/<a\b[^>]*\bhref="([^"]+)"/g)].map((match) => unescaped(match[1]!));
  return [...new Set(all.filter((href) => pattern.test(href)))];
}

const SOURCE = /^\/sources\/./;
const DOWN =
  /^\/(tanks\/[^/]+\/(working|animals)|(tanks\/[^/]+\/)?sums\/[^/]+\/working|parameters|animals)\/./;
/** A working that names the published works itself. */
const NAMES_WORKS = /<ul class="references"><li>[^<]/;
/** Every input is what the keeper said: there is nothing further down. */
const STATED_ALONE = (html: string) => linksOf(html, DOWN).length === 0 && /you said/.test(html);

/** Whether a source is met at most at the third level: this page, one below it, the source. */
async function leadsToSource(path: string, left = 2): Promise<boolean> {
  const { status, html } = await get(path);
  if (status !== 200) return false;
  if (linksOf(html, SOURCE).length > 0 || NAMES_WORKS.test(html) || STATED_ALONE(html)) return true;
  if (left === 1) return false;
  for (const next of linksOf(html, DOWN)) if (await leadsToSource(next, left - 1)) return true;
  return false;
}

/** Figures of a page: address of the working → words of the link. */
function figuresOf(html: string): Map<string, string> {
  const links = html.matchAll(/<a\b[^>]*\bdata-figure="([^"]*)"[^>]*\bhref="([^"]*)"[^>]*>([\s\S]*?)<\/a>/g);
  return new Map(
    [...links].map(([, , href, words]) => [unescaped(href!), words!.replaceAll(/<[^>]*>/g, "")]),
  );
}

async function deadEnd(path: string): Promise<string | null> {
  const { status, html } = await get(path);
  if (status !== 200) return `answers ${status}`;
  if (!/<h1>\s*\S/.test(html)) return "has no heading";
  if (!/Formula<\/h2><p>[^<]/.test(html)) return "has no formula";
  if (!/What went in<\/h2>|Parameters<\/h2>|Facts of the |Published works<\/h2>/.test(html))
    return "says nothing of what went in";
  if (!/Confidence<\/h2><p>[^<]/.test(html)) return "says no confidence";
  return (await leadsToSource(path)) ? null : "leads to no source within three levels";
}

const cast = inject("cast");
const ENGINE_PAGES = statesOf(cast).filter(({ engine }) => engine === true);

test.each([
  ["demonstration tank", cast.demo],
  ["first question alone", cast.first],
  ["dangerous reading", cast.danger],
])("%s: every figure opens a working that leads to a source", async (_, tank) => {
  const dead: string[] = [];
  let shown = 0;
  const seen = new Set<string>();
  for (const { path } of ENGINE_PAGES.filter((state) => state.path.includes(tank))) {
    for (const [href, words] of figuresOf((await get(path)).html)) {
      shown += 1;
      if (seen.has(href)) continue;
      seen.add(href);
      const why = await deadEnd(href);
      if (why !== null) dead.push(`${path}: "${words}": ${href} ${why}`);
    }
  }
  console.log(`${shown} figures shown, ${seen.size} workings opened`);
  expect(shown).toBeGreaterThan(20);
  expect(dead).toEqual([]);
});

test.each([
  ["no tank", null],
  ["demonstration tank", cast.demo],
])("sums with %s: every figure of every example opens a working that leads to a source", async (_, tank) => {
  const dead: string[] = [];
  const seen = new Set<string>();
  for (const { id, examples } of SUMS) {
    for (const example of examples) {
      const path = to.sum(tank, id, new URLSearchParams(example).toString());
      const { status, html } = await get(path);
      if (status !== 200) dead.push(`${path}: answers ${status}`);
      for (const [href, words] of figuresOf(html)) {
        if (seen.has(href)) continue;
        seen.add(href);
        const why = await deadEnd(href);
        if (why !== null) dead.push(`${path}: "${words}": ${href} ${why}`);
      }
    }
  }
  console.log(`${seen.size} workings of ${SUMS.length} sums opened`);
  expect(seen.size).toBeGreaterThan(SUMS.length);
  expect(dead).toEqual([]);
});
