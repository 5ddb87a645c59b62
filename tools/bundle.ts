/**
 * Puts the program together into few files: for the command line one to start with, one for each command, one for the
 * thread of the engine; for the browser one for each client module, the style sheet, fonts and the solver, under names
 * that change with their content.
 * Hundreds of small modules take longer to find than to run: joined, `grazewell check` starts in half the time.
 * Run by tools/setup.sh; the one argument is the folder to write to.
 */
import { join } from "node:path";
import { build, type InputOptions } from "rolldown";
import { bundleWeb } from "./bundle-web.ts";

const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error("Cannot bundle: name the folder to write to");

const src = join(import.meta.dirname, "../src");

/** A warning is a fault: an import that can't be found would otherwise wait for a keeper to call it. */
const onLog: NonNullable<InputOptions["onLog"]> = (_, log) => {
  throw new Error(log.message);
};

await build({
  input: { main: join(src, "cli/main.ts"), "answers-worker": join(src, "server/answers-worker.ts") },
  platform: "node",
  // Files of their own beside them (WebAssembly, a compiled library), or modules found while they run.
  external: ["highs", "better-sqlite3", "pg", "fastify"],
  onLog,
  output: { dir: join(folder, "cli"), format: "esm", comments: { legal: true } },
});
await bundleWeb(src, join(folder, "web"), onLog);
