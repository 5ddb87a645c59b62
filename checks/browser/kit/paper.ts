/** A page on paper: printed by the browser, read back by another program. Sizes in inches, as the printer takes them. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";

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

/** Pixels of a PGM file: three lines of head, then bytes. */
function pixels(path: string): Uint8Array {
  const bytes = readFileSync(path);
  let start = 0;
  for (let lines = 0; lines < 3; start += 1) if (bytes[start] === 10) lines += 1;
  return bytes.subarray(start);
}
