/** Builds what the journeys run, before the first of them: otherwise each would wait for the launcher to do it. */
import { execFileSync } from "node:child_process";
import { ROOT } from "./command.ts";

export default function build(): void {
  execFileSync("sh", ["tools/setup.sh"], { cwd: ROOT, stdio: "inherit" });
}
