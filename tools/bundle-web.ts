/**
 * Builds what the browser loads, from src/web: client modules (client/, offline/), the style sheet, fonts, icons and the
 * solver's WebAssembly. Each is written once plain and, where that is shorter, packed as Brotli and gzip, under a name
 * with a hash of its content; manifest.json tells where each went: source path below src/web, without extension for
 * modules, to address.
 */
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { basename, dirname, extname, join, relative } from "node:path";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";
import { build, type InputOptions } from "rolldown";
import { joinStyles } from "./styles.ts";

type OnLog = NonNullable<InputOptions["onLog"]>;

const packages = join(import.meta.dirname, "../node_modules");
/** Packing takes seconds; what was packed before is taken again, by its content. */
const cache = join(packages, ".cache/packed");

/** Packed already. */
const AS_IT_IS: ReadonlySet<string> = new Set([".woff2", ".png"]);
/** Beyond this the best packing takes longer than it saves. */
const LARGE_BYTES = 500_000;

/** Started by the browser as one plain script, without imports; the service worker last, as it names all others. */
const ALONE = [/sums-here/, /service-worker/];

export async function bundleWeb(src: string, folder: string, onLog: OnLog): Promise<void> {
  const web = join(src, "web");
  const assets = join(folder, "assets");
  mkdirSync(assets, { recursive: true });
  const manifest: Record<string, string> = {};
  /** Writes a file under a name of its content, and gives its address. */
  const emit = (name: string, content: Uint8Array | string): string => {
    const bytes = Buffer.from(content);
    const stem = basename(name, extname(name));
    const file = `${stem}-${hashOf(bytes).slice(0, 8)}${extname(name)}`;
    writePacked(join(assets, file), bytes);
    return `/assets/${file}`;
  };
  for (const entry of filesOf(web, "offline")) {
    if (/\.(svg|png|webmanifest)$/.test(entry))
      manifest[entry] = emit(entry, staticFile(join(web, entry), manifest));
  }
  const { css, files } = joinStyles((file) => emit(basename(file), readFileSync(file)));
  manifest["style/main"] = emit("main.css", css);
  // Named too, so that they are kept ahead for pages without a connection.
  for (const font of files) manifest[`fonts/${basename(font)}`] = emit(basename(font), readFileSync(font));
  manifest["highs/highs.wasm"] = emit("highs.wasm", readFileSync(join(packages, "highs/build/highs.wasm")));
  const modules = entriesOf(web, [...filesOf(web, "client"), ...filesOf(web, "offline")]);
  Object.assign(manifest, await bundleModules(web, modules, assets, manifest, onLog));
  writeFileSync(join(folder, "manifest.json"), `${JSON.stringify(manifest, null, 1)}\n`);
}

async function bundleModules(
  web: string,
  modules: readonly string[],
  assets: string,
  /** Of files that are no modules. */
  others: Readonly<Record<string, string>>,
  onLog: OnLog,
): Promise<Record<string, string>> {
  if (modules.length === 0) return {};
  const name = (file: string) => file.replace(/\.tsx?$/, "");
  // The solver asks for it where it finds itself in Node, which a browser is not.
  const external = ["node:module"];
  const pages = modules.filter((file) => !ALONE.some((one) => one.test(file)));
  const joined = await build({
    ...{ platform: "browser", external, onLog, write: false },
    input: Object.fromEntries(pages.map((file) => [name(file), join(web, file)])),
    output: {
      ...{ format: "esm", minify: true },
      entryFileNames: ({ name: entry }: { readonly name: string }) => `${basename(entry)}-[hash].js`,
      chunkFileNames: "[name]-[hash].js",
    },
  });
  const addresses: Record<string, string> = {};
  const write = (output: typeof joined.output) => {
    for (const part of output) {
      if (part.type !== "chunk") continue;
      writePacked(join(assets, basename(part.fileName)), Buffer.from(part.code));
      if (part.isEntry) addresses[part.name] = `/assets/${basename(part.fileName)}`;
    }
  };
  write(joined.output);
  for (const file of ALONE.flatMap((one) => modules.filter((module) => one.test(module)))) {
    const alone = await build({
      ...{ platform: "browser", external, onLog, write: false },
      input: { [name(file)]: join(web, file) },
      transform: { define: { BUILT_FILES: JSON.stringify({ ...others, ...addresses }) } },
      output: { format: "iife", minify: true, entryFileNames: `${basename(name(file))}-[hash].js` },
    });
    write(alone.output);
  }
  return addresses;
}

/** Modules that no other imports: those a page or another thread starts. The rest is joined into them. */
function entriesOf(web: string, files: readonly string[]): string[] {
  const modules = files.filter((file) => /\.tsx?$/.test(file));
  const imported = modules.flatMap((file) =>
    [...readFileSync(join(web, file), "utf8").matchAll(/(?:from|import)\s*\(?\s*"(\.[^"]+)"/g)].map((match) =>
      join(dirname(file), match[1] ?? ""),
    ),
  );
  return modules.filter((file) => !imported.includes(file));
}

/** A web app's manifest names its icons by their source names: the addresses are put in. */
function staticFile(file: string, manifest: Readonly<Record<string, string>>): Uint8Array | string {
  if (!file.endsWith(".webmanifest")) return readFileSync(file);
  return Object.entries(manifest).reduce(
    (text, [name, address]) => text.replaceAll(`"${basename(name)}"`, `"${address}"`),
    readFileSync(file, "utf8"),
  );
}

/** Files of one folder of src/web, tests left out; manifests last, since they name the others. */
function filesOf(web: string, folder: string): string[] {
  const path = join(web, folder);
  if (!existsSync(path)) return [];
  return readdirSync(path)
    .filter((name) => !/\.test\.tsx?$/.test(name) && extname(name) !== "")
    .sort(
      (a, b) => Number(a.endsWith(".webmanifest")) - Number(b.endsWith(".webmanifest")) || (a < b ? -1 : 1),
    )
    .map((name) => relative(web, join(path, name)));
}

const hashOf = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

function writePacked(file: string, bytes: Buffer): void {
  writeFileSync(file, bytes);
  if (AS_IT_IS.has(extname(file))) return;
  const quality = bytes.length > LARGE_BYTES ? 9 : 11;
  const brotli = { params: { [constants.BROTLI_PARAM_QUALITY]: quality } };
  const packed = { br: () => brotliCompressSync(bytes, brotli), gz: () => gzipSync(bytes, { level: 9 }) };
  for (const [ending, pack] of Object.entries(packed)) {
    const kept = join(cache, `${hashOf(bytes)}.${quality}.${ending}`);
    if (!existsSync(kept)) {
      mkdirSync(cache, { recursive: true });
      // Under another name first: two builds at once must not read each other's halves.
      writeFileSync(`${kept}.${process.pid}`, pack());
      renameSync(`${kept}.${process.pid}`, kept);
    }
    const short = readFileSync(kept);
    if (short.length < bytes.length) writeFileSync(`${file}.${ending}`, short);
  }
}
