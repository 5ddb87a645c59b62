/**
 * Built files for the browser (dist/web): read once at start, served under names that change with their content, in
 * the encoding the browser takes. Limits: held in memory, about 3 MB.
 */
import { readdirSync, readFileSync } from "node:fs";
import { extname, join } from "node:path";
import { fileURLToPath } from "node:url";

const TYPES: Readonly<Record<string, string>> = {
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".woff2": "font/woff2",
  ".wasm": "application/wasm",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".webmanifest": "application/manifest+json",
  ".json": "application/json",
};

export type Encoding = "br" | "gzip" | "identity";

export interface BuiltFile {
  readonly type: string;
  readonly bodies: Readonly<Partial<Record<Encoding, Buffer>>> & { readonly identity: Buffer };
}

export interface BuiltFiles {
  /** Source path below src/web without extension → address, as the build wrote it. */
  readonly addresses: Readonly<Record<string, string>>;
  /** By address, such as `/assets/bench-1a2b3c4d.js`. */
  readonly files: ReadonlyMap<string, BuiltFile>;
}

/** Where the build puts them, seen from dist/cli and from src/server alike. */
const folderBuilt = fileURLToPath(
  new URL(import.meta.url.endsWith(".ts") ? "../../dist/web" : "../web", import.meta.url),
);

export function readBuiltFiles(folder: string = folderBuilt): BuiltFiles {
  const addresses = JSON.parse(readFileSync(join(folder, "manifest.json"), "utf8")) as Record<string, string>;
  const files = new Map<string, BuiltFile>();
  const names = readdirSync(join(folder, "assets"));
  const packed = new Set(names);
  for (const name of names) {
    if (/\.(br|gz)$/.test(name)) continue;
    const read = (file: string) => readFileSync(join(folder, "assets", file));
    files.set(`/assets/${name}`, {
      type: TYPES[extname(name)] ?? "application/octet-stream",
      bodies: {
        identity: read(name),
        ...(packed.has(`${name}.br`) ? { br: read(`${name}.br`) } : {}),
        ...(packed.has(`${name}.gz`) ? { gzip: read(`${name}.gz`) } : {}),
      },
    });
  }
  return { addresses, files };
}

/** The best encoding that a browser takes and that there is. */
export function encodingFor(accepted: string | undefined, there: BuiltFile["bodies"]): Encoding {
  const takes = (name: string) =>
    new RegExp(`(^|[\\s,])${name}(?!\\s*;\\s*q=0(\\.0*)?\\s*(,|$))`).test(accepted ?? "");
  if (there.br !== undefined && takes("br")) return "br";
  return there.gzip !== undefined && takes("gzip") ? "gzip" : "identity";
}
