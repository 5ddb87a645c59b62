/** The look's promises that a program can hold: contrast of every pair in use, no ornament, one joined sheet. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { joinStyles } from "../../../tools/styles.ts";

const { css, files } = joinStyles((file) => `/assets/${file.split("/").at(-1)}`);

/** Light, then dark; print's own follow. */
const schemes = [
  ...readFileSync(join(import.meta.dirname, "tokens.css"), "utf8").matchAll(/:root \{([^}]*)\}/g),
]
  .slice(0, 2)
  .map(([, body]) =>
    Object.fromEntries([...body!.matchAll(/--([\w-]+): (#\w+);/g)].map(([, name, hex]) => [name!, hex!])),
  );

/** WCAG 2: relative luminance and contrast. */
function luminance(hex: string): number {
  const full = hex.length === 4 ? hex.replaceAll(/[^#]/g, "$&$&") : hex;
  const [r, g, b] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(full.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}
function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

test("the formula gives its known ends and a printed pair", () => {
  expect(contrast("#000", "#fff")).toBeCloseTo(21, 9);
  // experience.md: text on the page's ground, light.
  expect(contrast("#1d2730", "#f7f4ec")).toBeCloseTo(13.79, 2);
});

const TEXT = ["text", "second", "kelp", "damson", "brine", "madder", "ochre", "fern"];
const MARKS = ["rule", "run", "focus"];

test.each([0, 1])("scheme %i: words at 4.5 to 1 on both grounds, marks at 3 to 1", (scheme) => {
  const colours = schemes[scheme]!;
  for (const ground of ["page", "sheet"]) {
    for (const name of TEXT)
      expect(contrast(colours[name]!, colours[ground]!), `${name} on ${ground}`).toBeGreaterThanOrEqual(4.5);
    for (const name of MARKS)
      expect(contrast(colours[name]!, colours[ground]!), `${name} on ${ground}`).toBeGreaterThanOrEqual(3);
  }
  expect(contrast(colours["on-brine"]!, colours["brine"]!)).toBeGreaterThanOrEqual(4.5);
  // A fill is told from its outline.
  expect(contrast(colours["kelp"]!, colours["kelp-fill"]!)).toBeGreaterThanOrEqual(scheme === 0 ? 3 : 2);
  expect(contrast(colours["damson"]!, colours["damson-fill"]!)).toBeGreaterThanOrEqual(2);
});

test("square and flat: no shadow, no round corner, no picture behind words, no sheet from elsewhere", () => {
  expect(css).not.toMatch(/box-shadow|text-shadow|gradient\(|@import/);
  expect(
    [...css.matchAll(/border-radius:([^;}]+)/g)]
      .map(([, radius]) => radius!.trim())
      .filter((radius) => radius !== "0"),
  ).toEqual([]);
  expect(
    [...css.matchAll(/url\(([^)]*)\)/g)]
      .map(([, address]) => address)
      .every((address) => address!.startsWith('"/assets/')),
  ).toBe(true);
});

test("every sheet of the folder is joined, and both fonts are there", () => {
  const index = readFileSync(join(import.meta.dirname, "index.css"), "utf8");
  const sheets = readdirSync(import.meta.dirname).filter(
    (name) => name.endsWith(".css") && name !== "index.css",
  );
  for (const sheet of sheets) expect(index).toContain(`@import "./${sheet}"`);
  expect(files).toHaveLength(2);
  for (const file of files) expect(readFileSync(file).subarray(0, 4).toString()).toBe("wOF2");
});

/** What stands in the blocks of a sheet's media conditions that match. */
function within(sheet: string, condition: RegExp): string[] {
  return [...sheet.matchAll(/@media([^{]*)\{/g)].flatMap((match) => {
    if (!condition.test(match[1]!)) return [];
    const from = match.index + match[0].length;
    let open = 1;
    let to = from;
    for (; open > 0; to += 1) open += sheet[to] === "{" ? 1 : sheet[to] === "}" ? -1 : 0;
    return [sheet.slice(from, to - 1)];
  });
}

test("wide pages have no colours of their own: those of narrow ones are looked at (checks/browser/kit/every-form.ts)", () => {
  const COLOUR = /(?:^|[;{ ])(?:color|background(?:-color)?|opacity|fill|stroke|border-color|filter):/;
  const WIDER = /(?:min-width|width\s*>)/;
  expect(within("@media (min-width: 1rem){a{color:red}}@media print{a{color:blue}}", WIDER)).toEqual([
    "a{color:red}",
  ]);
  const wide = within(css, WIDER);
  expect(wide.length).toBeGreaterThan(9);
  expect(wide.filter((block) => COLOUR.test(block))).toEqual([]);
});
