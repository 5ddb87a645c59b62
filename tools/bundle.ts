/**
 * Puts the command line together into a few files of JavaScript: one to start with, one for each command.
 * Hundreds of small modules take longer to find than to run: joined, `grazewell check` starts in half the time.
 * Run by tools/setup.sh; the one argument is the folder to write to.
 */
import { join } from "node:path";
import { build } from "rolldown";

const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error("Cannot bundle: name the folder to write to");

await build({
  input: join(import.meta.dirname, "../src/cli/main.ts"),
  platform: "node",
  // It looks for its WebAssembly beside itself.
  external: ["highs"],
  // A warning is a fault: an import that can't be found would otherwise wait for a keeper to call it.
  onLog: (_, log) => {
    throw new Error(log.message);
  },
  output: { dir: folder, format: "esm", comments: { legal: true } },
});
