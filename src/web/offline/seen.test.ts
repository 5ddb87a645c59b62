import { expect, test } from "vitest";
import { notSeenPage, seenOn, seenWords, withSeenLine } from "./seen.ts";

const PAGE = '<!doctype html><body><main id="main" tabindex="-1"><h1>Bench</h1></main></body>';

test("the line stands first in the main part, once", () => {
  const html = seenOn(PAGE, "15 Jun 2026, 09:30");
  expect(html).toContain(
    '<main id="main" tabindex="-1"><p class="seen-line" role="status">Seen on 15 Jun 2026, 09:30; not connected now.</p><h1>',
  );
  expect(html.match(/seen-line/g)).toHaveLength(1);
});

test("where something is to be done first, the line stands last", () => {
  expect(seenOn(PAGE, "15 Jun 2026, 09:30", "last")).toMatch(
    /<\/h1><p class="seen-line"[^>]*>[^<]*<\/p><\/main>/,
  );
});

test("a kept answer keeps its content policy and loses what was of its packing", async () => {
  const kept = new Response(PAGE, {
    headers: {
      "content-security-policy": "default-src 'none'",
      "content-encoding": "br",
      "content-type": "text/html; charset=utf-8",
      date: "Mon, 15 Jun 2026 09:30:00 GMT",
    },
  });
  const shown = await withSeenLine(kept);
  expect(shown.headers.get("content-security-policy")).toBe("default-src 'none'");
  expect(shown.headers.has("content-encoding")).toBe(false);
  expect(await shown.text()).toMatch(/Seen on 15 Jun 2026, \d\d:\d\d; not connected now/);
});

test("a date that can't be read is no reason to say nothing", () => {
  expect(seenWords(null)).toBe("an earlier day");
  expect(seenWords("soon")).toBe("an earlier day");
});

test("a page never seen leads to the crisis page, with style or without", () => {
  expect(notSeenPage(null, "/something-is-wrong")).toContain('href="/something-is-wrong"');
  expect(notSeenPage("http://localhost:1/assets/main-1.css", "/x")).toContain('href="/assets/main-1.css"');
});
