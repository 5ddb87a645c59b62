import { expect, test } from "vitest";
import { type Assets, renderDocument } from "./layout.tsx";
import { type Page, TANK_PAGES, to } from "./page.ts";

const ASSETS: Assets = {
  css: "/assets/main.css",
  scripts: { "what-if": "/assets/what-if.js" },
  icon: "/assets/icon.svg",
  touchIcon: "/assets/icon.png",
  manifest: "/assets/app.webmanifest",
};
const page = (over: Partial<Page> = {}): Page => ({
  title: "Film is short",
  tank: { id: "t1", name: "Kitchen <tank>", keeper: "B.", demonstration: true },
  here: "larder",
  body: <h1>Film is short</h1>,
  ...over,
});

test("a document has its title, one style sheet and nothing before it, the wanted script and no other", () => {
  const html = renderDocument(page({ scripts: ["what-if"] }), ASSETS);
  expect(html.startsWith('<!doctype html><html lang="en">')).toBe(true);
  expect(html).toContain("<title>Film is short – Grazewell</title>");
  expect(html.match(/rel="stylesheet"/g)).toHaveLength(1);
  expect(html).not.toContain("preload");
  expect(html.match(/<script/g)).toEqual(["<script"]);
  expect(html).toContain('<script type="module" src="/assets/what-if.js">');
  expect(html).not.toMatch(/\sstyle=/);
});

test("every page leads to the crisis page, past the navigation, and names the open page", () => {
  const html = renderDocument(page(), ASSETS);
  expect(html).toContain(`href="${to.wrong("t1")}"`);
  expect(renderDocument(page({ tank: null }), ASSETS)).toContain(`href="${to.wrong()}"`);
  expect(html.indexOf('href="#main"')).toBeLessThan(html.indexOf("<header"));
  // Told twice: folded for narrow pages, in a line for wide ones.
  for (const name of TANK_PAGES)
    expect(html.match(new RegExp(`href="${to.tank("t1", name)}"`, "g"))!.length).toBeGreaterThanOrEqual(2);
  expect(html.match(/aria-current="page"/g)).toHaveLength(2);
  expect(html).toContain("Kitchen &lt;tank>");
  expect(html).toContain("kept by B. · an invented tank");
});

test("paper says when and where; pages of no tank have no navigation of one", () => {
  expect(renderDocument(page(), ASSETS, { address: "http://localhost/x", today: "2026-06-15" })).toContain(
    '<p class="printed">15 Jun 2026. http://localhost/x</p>',
  );
  expect(renderDocument(page({ tank: null, here: null }), ASSETS)).not.toContain("<nav");
});

test("a script that the build does not have is refused", () => {
  expect(() => renderDocument(page({ scripts: ["nothing"] }), ASSETS)).toThrow(
    '"Film is short": no client module nothing',
  );
});
