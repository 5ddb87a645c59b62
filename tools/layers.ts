/**
 * The walls between the layers: which folder may import which, and a check that reads every import.
 * Run by `npm run check`; exits 1 and names each import that goes the wrong way.
 */
import { readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, relative, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";

/** The engine's folders, lowest first. */
const ENGINE = [
  ...["units", "types", "numeric", "seawater", "balance", "larder", "ahead", "stocking"],
  ...["trends", "heads", "calibration", "care"],
].map((folder) => `engine/${folder}`);
const engineUpTo = (top: string): readonly string[] => ENGINE.slice(0, ENGINE.indexOf(top) + 1);
const engineBelow = (folder: string): readonly string[] => ENGINE.slice(0, ENGINE.indexOf(folder));

/** Layer → layers it may import. Any other import between layers fails. Packages: see `packagesAllowed`. */
export const mayImport: Readonly<Record<string, readonly string[]>> = {
  ...Object.fromEntries(ENGINE.map((folder) => [folder, engineBelow(folder)])),
  // Quantities of sea water are worked out without a tank.
  "engine/seawater": ["engine/units", "engine/numeric"],
  catalogue: engineUpTo("engine/types"),
  contract: [...engineUpTo("engine/types"), "engine/seawater"],
  solver: ["engine/stocking"],
  // What a command, a page or a worker asks of the engine: facts in, answers as plain data out.
  answers: ["catalogue", "contract", ...ENGINE],
  store: ["contract"],
  web: ["answers", "solver", "catalogue", "contract", ...ENGINE],
  server: ["web", "store", "answers", "solver", "catalogue", "contract", ...engineUpTo("engine/types")],
  cli: ["server", "store", "answers", "solver", "catalogue", "contract", ...ENGINE],
};

/** Packages a layer may import by name. The engine is pure: nothing from Node, one random-stream library. */
export const packagesAllowed: Readonly<Record<string, readonly RegExp[]>> = {
  "engine/numeric": [/^pure-rand\//],
  contract: [/^zod$/, /^yaml$/],
  solver: [/^highs$/],
  store: [/^node:/, /^kysely$/, /^better-sqlite3$/, /^pg$/],
  web: [/^preact(\/|$)/, /^preact-render-to-string$/, /^d3-(scale|shape)$/],
  server: [/^node:/, /^fastify$/, /^zod$/],
  cli: [/^node:/, /^commander$/, /^yaml$/],
};

export interface WrongImport {
  readonly file: string;
  readonly imported: string;
  readonly why: string;
}

/** Import and re-export statements at the start of a line, bare imports, and dynamic ones anywhere. */
const IMPORT =
  /^\s*(?:import|export)\b[^"'`;]*\bfrom\s*["']([^"'\n]+)["']|^\s*import\s+["']([^"'\n]+)["']|\bimport\s*\(\s*["']([^"'\n]+)["']/gm;

/** Layer of a path below src, e.g. `engine/balance/step.ts` → `engine/balance`; undefined when in none. */
export function layerOf(pathBelowSrc: string): string | undefined {
  const parts = pathBelowSrc.split(sep);
  const layer = parts[0] === "engine" ? parts.slice(0, 2).join("/") : parts[0];
  return layer !== undefined && layer in mayImport ? layer : undefined;
}

/** Every import of `source` (at `pathBelowSrc`) that its layer may not make. */
export function wrongImports(pathBelowSrc: string, source: string): WrongImport[] {
  const layer = layerOf(pathBelowSrc);
  if (layer === undefined) {
    return [{ file: pathBelowSrc, imported: "-", why: "the file lies in no known layer (tools/layers.ts)" }];
  }
  // A test is not shipped: it may bring real facts and a real solver to the layer it tests.
  if (/\.test\.tsx?$/.test(pathBelowSrc)) return [];
  const found: WrongImport[] = [];
  for (const match of source.matchAll(IMPORT)) {
    const imported = match[1] ?? match[2] ?? match[3] ?? "";
    if (imported.startsWith(".")) {
      const target = layerOf(relative("/src", resolve("/src", dirname(pathBelowSrc), imported)));
      if (target === undefined) {
        found.push({ file: pathBelowSrc, imported, why: "leaves src" });
      } else if (target !== layer && !(mayImport[layer] ?? []).includes(target)) {
        found.push({ file: pathBelowSrc, imported, why: `${layer} may not import ${target}` });
      }
    } else if (!(packagesAllowed[layer] ?? []).some((pattern) => pattern.test(imported))) {
      found.push({ file: pathBelowSrc, imported, why: `${layer} may not import the package ${imported}` });
    }
  }
  return found;
}

function filesBelow(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return filesBelow(path);
    return /\.tsx?$/.test(path) ? [path] : [];
  });
}

/** Checks every file below src; returns what is wrong. */
export function checkTree(src: string): WrongImport[] {
  return filesBelow(src).flatMap((path) => wrongImports(relative(src, path), readFileSync(path, "utf8")));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const wrong = checkTree(resolve(import.meta.dirname, "../src"));
  for (const { file, imported, why } of wrong) console.error(`src/${file}: ${why} (import of ${imported})`);
  if (wrong.length > 0) process.exit(1);
  console.log("layers: every import goes the right way");
}
