/**
 * Draws every part and chart in Chromium, narrow and wide, light and dark, grey and on paper, and asks axe of each.
 * For the eye: open the pictures. `node tools/specimen.ts FOLDER` writes them there; exits 1 when axe finds anything,
 * a policy is broken, or the page scrolls sideways.
 */
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { basename, extname, join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import axe from "axe-core";
import { type Browser, chromium, type Page as Tab } from "playwright-core";
import { build } from "rolldown";
import { EXECUTABLE } from "../checks/browser/kit/executable.ts";
import { joinStyles } from "./styles.ts";

const root = resolve(import.meta.dirname, "..");
const POLICY =
  "default-src 'none'; style-src 'self'; font-src 'self'; img-src 'self'; script-src 'self'; manifest-src 'self'";

/** The page as HTML, by the same layout as the program's. */
async function specimenHtml(folder: string): Promise<string> {
  const file = join(folder, "specimen.mjs");
  const entry = `export { specimenPage } from ${JSON.stringify(join(root, "src/web/specimen.tsx"))};
export { renderDocument } from ${JSON.stringify(join(root, "src/web/layout.tsx"))};`;
  writeFileSync(join(folder, "entry.ts"), entry);
  await build({
    input: join(folder, "entry.ts"),
    platform: "node",
    resolve: { modules: [join(root, "node_modules")] },
    output: { file, format: "esm" },
  });
  const { specimenPage, renderDocument } = (await import(pathToFileURL(file).href)) as Pick<
    typeof import("../src/web/specimen.tsx") & typeof import("../src/web/layout.tsx"),
    "specimenPage" | "renderDocument"
  >;
  return renderDocument(
    specimenPage(),
    {
      css: "/style.css",
      scripts: {},
      icon: "/icon.svg",
      touchIcon: "/touch-icon.png",
      manifest: "/grazewell.webmanifest",
    },
    { address: "http://localhost/tanks/kitchen", today: "2026-06-15" },
  );
}

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".woff2": "font/woff2",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".webmanifest": "application/manifest+json",
};

async function served(html: string): Promise<{ address: string; close: () => void }> {
  const styles = joinStyles((font) => `/${basename(font)}`);
  const found = (path: string): string | Buffer | null => {
    if (path === "/") return html;
    if (path === "/style.css") return styles.css;
    const font = styles.files.find((file) => `/${basename(file)}` === path);
    if (font !== undefined) return readFileSync(font);
    try {
      return readFileSync(join(root, "src/web/offline", basename(path)));
    } catch {
      return null;
    }
  };
  const server = createServer((request, reply) => {
    const path = request.url ?? "/";
    const body = found(path);
    const type = TYPES[path === "/" ? ".html" : extname(path)] ?? "text/plain";
    reply.writeHead(body === null ? 404 : 200, { "content-type": type, "content-security-policy": POLICY });
    reply.end(body ?? "");
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close: () => server.close(),
  };
}

const faults: string[] = [];

async function look(
  browser: Browser,
  address: string,
  folder: string,
  width: number,
  scheme: "light" | "dark",
) {
  const name = `${width}-${scheme}`;
  const context = await browser.newContext({
    viewport: { width, height: 900 },
    colorScheme: scheme,
    bypassCSP: false,
  });
  const tab = await context.newPage();
  tab.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) faults.push(`${name}: console: ${message.text()}`);
  });
  await tab.goto(address, { waitUntil: "networkidle" });
  await tab
    .locator("details.chart-table")
    .first()
    .evaluate((one: HTMLDetailsElement) => {
      one.open = true;
    });
  await axeOf(tab, name);
  const sideways = await tab.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  if (sideways > 0) faults.push(`${name}: scrolls sideways by ${sideways} px`);
  await tab.screenshot({ path: join(folder, `${name}.png`), fullPage: true });
  await context.close();
}

/** Evaluated through the protocol, which the page's own policy does not bind. */
async function axeOf(tab: Tab, name: string) {
  await tab.evaluate(axe.source);
  const { violations, incomplete } = await tab.evaluate(() =>
    (globalThis as unknown as { axe: typeof axe }).axe.run(document, {
      resultTypes: ["violations", "incomplete"],
    }),
  );
  for (const [kind, found] of [
    ["violation", violations],
    ["incomplete", incomplete],
  ] as const) {
    for (const { id, nodes } of found) {
      faults.push(
        `${name}: axe ${kind} ${id}: ${nodes.length} places, first ${nodes[0]?.html.slice(0, 160)} ${nodes[0]?.failureSummary ?? ""}`,
      );
    }
  }
}

async function paper(browser: Browser, address: string, folder: string) {
  const tab = await browser.newPage({ viewport: { width: 1280, height: 900 }, colorScheme: "dark" });
  await tab.goto(address, { waitUntil: "networkidle" });
  await tab.pdf({ path: join(folder, "paper.pdf"), format: "A4", preferCSSPageSize: false });
  await tab.emulateMedia({ colorScheme: "light" });
  const session = await tab.context().newCDPSession(tab);
  await session.send("Emulation.setEmulatedVisionDeficiency", { type: "achromatopsia" });
  await tab.screenshot({ path: join(folder, "1280-grey.png"), fullPage: true });
  await tab.setViewportSize({ width: 320, height: 640 });
  const sideways = await tab.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  if (sideways > 0) faults.push(`320: scrolls sideways by ${sideways} px`);
  await tab.close();
}

const [given] = process.argv.slice(2);
if (given === undefined) throw new Error("Cannot draw: name the folder to write to");
const folder = resolve(given);
mkdirSync(folder, { recursive: true });
const html = await specimenHtml(folder);
writeFileSync(join(folder, "specimen.html"), html);
const server = await served(html);
const browser = await chromium.launch({ executablePath: EXECUTABLE, args: ["--no-sandbox"] });
try {
  for (const width of [360, 1280]) {
    for (const scheme of ["light", "dark"] as const)
      await look(browser, server.address, folder, width, scheme);
  }
  await paper(browser, server.address, folder);
} finally {
  await browser.close();
  server.close();
}
for (const fault of faults) console.error(fault);
console.log(`specimen: ${faults.length} faults; pictures in ${folder}`);
if (faults.length > 0) process.exitCode = 1;
