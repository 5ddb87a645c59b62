/** A page on paper: printed by the browser, read back by another program. Sizes in inches, as the printer takes them. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { parseColour, ratio } from "./contrast.ts";

const WHITE = [255, 255, 255] as const;

export interface Paper {
  readonly pages: number;
  /** As a reader meets it, line by line. */
  readonly text: string;
  /** The first page as pixels without colour, one byte each: 0 is black. */
  readonly grey: Uint8Array;
}

/** `keep`: also written there, to be looked at. */
export async function printed(
  page: Page,
  format: "A4" | "Letter",
  keep: string | null = null,
): Promise<Paper> {
  const folder = mkdtempSync(join(tmpdir(), "grazewell-paper-"));
  const file = join(folder, "page.pdf");
  try {
    const pdf = await page.pdf({ format, preferCSSPageSize: false });
    writeFileSync(file, pdf);
    if (keep !== null) writeFileSync(keep, pdf);
    const info = execFileSync("pdfinfo", [file], { encoding: "utf8" });
    const text = execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
    execFileSync("pdftoppm", [
      "-gray",
      "-r",
      "50",
      "-f",
      "1",
      "-l",
      "1",
      "-singlefile",
      file,
      join(folder, "grey"),
    ]);
    return {
      pages: Number(/^Pages:\s+(\d+)/m.exec(info)?.[1]),
      text,
      grey: pixels(join(folder, "grey.pgm")),
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/**
 * Controls that would be printed, and words too light for paper, from the page as a printer is given it; the screen is
 * dark meanwhile: paper is not. Leaves the page as on a light screen.
 */
export async function paperFaults(page: Page): Promise<string[]> {
  await page.emulateMedia({ media: "print", colorScheme: "dark" });
  const { controls, inks } = await page.evaluate(() => ({
    controls: [...document.querySelectorAll("nav, .skip, button, dialog")]
      .filter((element) => element.checkVisibility({ visibilityProperty: true }))
      .map((element) => element.outerHTML.slice(0, 80)),
    inks: [...document.querySelectorAll("main h1, main p")]
      .filter((element) => element.checkVisibility())
      .map((element) => getComputedStyle(element).color),
  }));
  await page.emulateMedia({ media: null, colorScheme: "light" });
  const faint = [...new Set(inks)].filter((ink) => {
    const colour = parseColour(ink);
    return colour === null || ratio(colour.rgb, WHITE) <= 4.5;
  });
  return [
    ...controls.map((control) => `printed: ${control}`),
    ...faint.map((ink) => `too light for paper: ${ink}`),
  ];
}

/** Pixels of a PGM file: three lines of head, then bytes. */
function pixels(path: string): Uint8Array {
  const bytes = readFileSync(path);
  let start = 0;
  for (let lines = 0; lines < 3; start += 1) if (bytes[start] === 10) lines += 1;
  return bytes.subarray(start);
}
