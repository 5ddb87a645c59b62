/** The measures themselves: each finds a planted fault, and finds nothing where nothing is wrong. */
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { axeFaults } from "./kit/axe.ts";
import { type Watched, watched } from "./kit/browser.ts";
import { faultsInEveryForm } from "./kit/every-form.ts";
import { bonesFaults, cutFaults, drawingFaults, sidewaysFaults, targetFaults } from "./kit/geometry.ts";
import { Keyboard } from "./kit/keys.ts";
import { bareNumbers, wordsOf } from "./kit/page-text.ts";
import { paperFaults, printed } from "./kit/paper.ts";
import { rememberShown, shownSince } from "./kit/shown.ts";

let seen: Watched;
beforeAll(async () => {
  seen = await watched();
});
beforeEach(() => seen.page.setViewportSize({ width: 360, height: 640 }));
afterAll(() => seen.close());

const show = (body: string, head = "") =>
  seen.page.setContent(
    `<!doctype html><html lang="en"><head><title>A page – Grazewell</title>${head}</head>
     <body><header>Top</header><main>${body}</main><footer>Foot</footer></body></html>`,
  );

test("a plain page in order", async () => {
  await show(
    `<h1>Larder</h1><p>Grows <a href="#w" data-figure="a">3 rations</a> a day since 3 May 2026.</p>`,
  );
  expect([
    ...(await axeFaults(seen.page)),
    ...(await sidewaysFaults(seen.page)),
    ...(await targetFaults(seen.page)),
    ...(await bonesFaults(seen.page)),
    ...(await cutFaults(seen.page)),
    ...(await bareNumbers(seen.page)),
  ]).toEqual([]);
});

test("what is shown wide alone, and what unfolding hides", async () => {
  await show(
    `<h1>A</h1><p class="wide">wide</p><details><summary>more</summary><p>more</p></details><p class="closed">x</p>`,
    `<style>@media (max-width: 40rem) { .wide { display: none } } details[open] + .closed { display: none }</style>`,
  );
  await rememberShown(seen.page);
  expect(await shownSince(seen.page)).toMatchObject({ more: 0, shapes: [], fewer: 0 });
  await seen.page.setViewportSize({ width: 1280, height: 800 });
  expect(await shownSince(seen.page)).toMatchObject({ more: 1, shapes: [`<p class="wide"></p>`], fewer: 0 });
  await seen.page.setViewportSize({ width: 360, height: 640 });
  await wordsOf(seen.page);
  expect(await shownSince(seen.page)).toMatchObject({ more: 1, fewer: 1 });
});

test.each([
  ["a button on paper", `<h1>A</h1><button>x</button>`, /^printed: <button/],
  ["pale words on paper", `<h1>A</h1><p style="color:#999">x</p>`, /^too light for paper: rgb\(153/],
  [
    "words of a dark screen",
    `<style>@media (prefers-color-scheme: dark) { h1 { color: #eee } }</style><h1>A</h1>`,
    /^too light for paper: rgb\(238/,
  ],
])("%s is found", async (_, body, fault) => {
  await show(body);
  expect(await paperFaults(seen.page)).toEqual([expect.stringMatching(fault)]);
});

test.each([
  ["pale text", `<h1>A</h1><p style="color:#bbb">pale</p>`, axeFaults, /^color-contrast: p/],
  ["no label", `<h1>A</h1><input type="text">`, axeFaults, /^label: input/],
  [
    "pale text over a gradient",
    `<h1>A</h1><p style="background:linear-gradient(#fff,#eee)">x</p>`,
    axeFaults,
    /worked out/,
  ],
  [
    "too wide",
    `<h1>A</h1><pre>${"word ".repeat(99)}</pre>`,
    sidewaysFaults,
    /^scrolls sideways: \d+ px in 360/,
  ],
  ["a small button", `<h1>A</h1><button>x</button>`, targetFaults, /^control of .*button "x"/],
  [
    "links on top of each other",
    `<h1>A</h1><a href="#a">a</a><br><a href="#b">b</a>`,
    targetFaults,
    /^target of /,
  ],
  ["two h1", `<h1>A</h1><h1>B</h1>`, bonesFaults, /^2 h1/],
  ["a level left out", `<h1>A</h1><h3>B</h3>`, bonesFaults, /^h1 is followed by h3/],
  ["an id twice", `<h1 id="a">A</h1><p id="a">B</p>`, bonesFaults, /^id twice: a/],
  [
    "text cut off",
    `<h1>A</h1><p style="width:40px;overflow:hidden">Wordwordword</p>`,
    cutFaults,
    /^cut off: p/,
  ],
  [
    "a word out of its drawing",
    `<h1>A</h1><svg viewBox="0 0 50 20" width="50"><text x="40" y="15">word</text></svg>`,
    drawingFaults,
    /^sticks out .*"word"/,
  ],
  [
    "a page's own label out of its drawing",
    `<h1>A</h1><svg viewBox="0 0 50 20" width="50"><foreignObject x="20" y="0" width="90" height="20"><div class="words"><span>label of a line</span></div></foreignObject></svg>`,
    drawingFaults,
    /^sticks out .*"label of a line"/,
  ],
  ["a figure without working", `<h1>A</h1><p>Grows 3.2 rations.</p>`, bareNumbers, /^Grows 3\.2 rations/],
] as const)("%s is found", async (_, body, measure, fault) => {
  await show(body);
  expect((await measure(seen.page)).join("\n")).toMatch(fault);
});

const IN_THE_DARK = "@media (prefers-color-scheme: dark)";
const WIDE_ALONE = ".wide { display: none } @media (min-width: 48rem) { .wide { display: block } }";
const FOLDED_ALONE = "details[open] + .closed { display: none }";
const FOLDS = "<details><summary>more of this</summary><p>more</p></details>";
const PALE = "color: #bbb; background: #fff";

/** Faults that show in one form of a page alone. */
test.each([
  [
    "in the dark",
    `${IN_THE_DARK} { p { ${PALE} } }`,
    "<p>pale</p>",
    /^360 unfolded dark axe: color-contrast: p/m,
  ],
  [
    "folded away",
    "",
    `<details><summary>more of this</summary><input></details>`,
    /^360 unfolded axe: label/m,
  ],
  [
    "folded away, in the dark",
    `${IN_THE_DARK} { em { ${PALE} } }`,
    `<details><summary>more of this</summary><em>pale</em></details>`,
    /^360 unfolded dark axe: color-contrast: em/m,
  ],
  ["wide alone", WIDE_ALONE, `<p class="wide"><input></p>`, /^1280 axe: label/m],
  [
    "wide alone, in the dark",
    `${WIDE_ALONE} ${IN_THE_DARK} { .wide { ${PALE} } }`,
    `<p class="wide">pale</p>`,
    /^1280 dark axe: color-contrast: p/m,
  ],
  ["folded alone", FOLDED_ALONE, `${FOLDS}<p class="closed"><input></p>`, /^360 folded axe: label/m],
  [
    "folded alone, in the dark",
    `${FOLDED_ALONE} ${IN_THE_DARK} { .closed { ${PALE} } }`,
    `${FOLDS}<p class="closed">pale</p>`,
    /^360 folded dark axe: color-contrast: \.closed/m,
  ],
  [
    "wide, too small to be hit",
    `a { display: inline-block; width: 60px; height: 60px } @media (min-width: 48rem) { a { width: 9px; height: 9px; overflow: hidden } }`,
    `<ul><li><a href="#a">a</a><a href="#b">b</a></li></ul>`,
    /^1280( axe)?: target/m,
  ],
])("a fault %s is found", async (_, style, body, fault) => {
  const reopen = () => show(`<h1>A</h1>${body}`, `<style>body { background: #fff } ${style}</style>`);
  await reopen();
  const asked = { reopen, judged: new Set<string>(), picture: async () => {} };
  expect((await faultsInEveryForm(seen.page, asked)).join("\n")).toMatch(fault);
});

test("what is shown wide alone is judged once for its shape, whatever its words and addresses", async () => {
  const page = (words: string) =>
    show(
      `<h1>A</h1><p class="wide"><input value="${words}"><a href="#${words}">${words}</a></p>`,
      `<style>${WIDE_ALONE}</style>`,
    );
  const judged = new Set<string>();
  const asked = { reopen: async () => {}, judged, picture: async () => {} };
  const found: string[] = [];
  for (const words of ["1", "22"]) {
    await page(words);
    found.push(
      ...(await faultsInEveryForm(seen.page, asked)).filter((fault) => fault.startsWith("1280 axe: label")),
    );
  }
  expect(found).toHaveLength(1);
});

test("words that are folded away or told instead of a drawing are read too", async () => {
  await show(
    `<h1>A</h1><details><summary>More</summary>inside</details><svg role="img" aria-label="drawn"></svg>`,
  );
  expect(await wordsOf(seen.page)).toMatch(/inside[\s\S]*drawn/);
});

test("a request to another host and an error in the console are told", async () => {
  const { page, faults, close } = await watched();
  await page.setContent(`<img src="http://example.invalid/x.png"><script>console.error("planted")</script>`);
  await page.evaluate(() =>
    setTimeout(() => {
      throw new Error("thrown");
    }, 0),
  );
  await expect
    .poll(() => faults.join("\n"))
    .toMatch(/leaves the machine[\s\S]*planted|planted[\s\S]*leaves the machine/);
  await expect.poll(() => faults.join("\n")).toMatch(/uncaught: thrown/);
  await close();
});

test("presses are counted, digits not; a focus that can't be seen is told", async () => {
  await show(`<h1>A</h1><a href="#a" style="outline:none">one</a><input id="b" style="outline:3px solid">`);
  const keys = new Keyboard(seen.page);
  await keys.tabTo(/input b/);
  await keys.type("12 L");
  expect(keys.presses).toBe(2 + 2);
  expect(keys.faults).toEqual([expect.stringMatching(/can't be seen: a one/)]);
});

test("paper: pages are counted, text is read back, ink is there", async () => {
  await show(`<h1>First</h1><p style="break-before:page">Second</p>`);
  const { pages, text, grey } = await printed(seen.page, "A4");
  expect(pages).toBe(2);
  expect(text).toMatch(/First[\s\S]*Second/);
  expect(grey.reduce((least, pixel) => Math.min(least, pixel), 255)).toBeLessThan(60);
});
