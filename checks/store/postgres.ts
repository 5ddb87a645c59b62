/**
 * A PostgreSQL of one's own for the checks: a cluster in a temporary folder, on a socket there and no port, with the
 * durable settings that a real one has. Run by a user that is not root, as the server asks.
 */
import { execFileSync, spawn } from "node:child_process";
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const HOME = "/usr/lib/postgresql";

export interface Cluster {
  readonly url: string;
  /** As a power cut would leave it, but for the page cache; started again at once. */
  readonly crash: () => void;
  readonly stop: () => void;
}

/** Folder of the server's programs, the newest; null where there is none. */
function programs(): string | null {
  const versions = existsSync(HOME) ? readdirSync(HOME).map(Number).filter(Number.isFinite) : [];
  const newest = Math.max(...versions);
  const folder = join(HOME, String(newest), "bin");
  return existsSync(join(folder, "initdb")) ? folder : null;
}

/** Ends what hangs; a machine with more to do reaches no other limit. */
const PATIENCE_S = 250;

export function startCluster(): Cluster {
  const bin = programs();
  if (bin === null) throw new Error("No PostgreSQL on this machine: run tools/prepare.sh");
  const folder = mkdtempSync(join(tmpdir(), "gw-pg-"));
  const asRoot = process.getuid?.() === 0;
  if (asRoot) chownSync(folder, numberOf("-u"), numberOf("-g"));
  const data = join(folder, "data");
  const user = asRoot ? ["setpriv", "--reuid=postgres", "--regid=postgres", "--clear-groups"] : [];
  const run = (program: string, ...words: string[]) => {
    const [first = "", ...rest] = [...user, join(bin, program), ...words];
    execFileSync(first, rest, {
      cwd: folder,
      stdio: ["ignore", "ignore", "pipe"],
      timeout: PATIENCE_S * 1000,
    });
  };
  const options = `-k ${folder} -c listen_addresses='' -c max_connections=200 -c shared_buffers=64MB`;
  const start = () =>
    run(
      "pg_ctl",
      "-D",
      data,
      "-w",
      "-t",
      String(PATIENCE_S),
      "-l",
      join(folder, "log"),
      "-o",
      options,
      "start",
    );
  const words = ["-U", "keeper", "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8", "--no-sync"];
  // Sorts as people do, not by bytes: what leans on the server's own order is found.
  run("initdb", "-D", data, ...words, "--locale-provider=icu", "--icu-locale=en");
  start();
  stopWithUs(user, join(bin, "pg_ctl"), data, folder);
  return {
    url: `postgres://keeper@/postgres?host=${encodeURIComponent(folder)}`,
    crash: () => {
      run("pg_ctl", "-D", data, "-w", "-m", "immediate", "stop");
      start();
    },
    stop: () => {
      run("pg_ctl", "-D", data, "-w", "-m", "immediate", "stop");
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

const numberOf = (flag: "-u" | "-g") =>
  Number(execFileSync("id", [flag, "postgres"], { encoding: "utf8" }).trim());

/** The server is nobody's child: one that waits for our end, whatever it is, takes it down after us. */
function stopWithUs(user: readonly string[], pgCtl: string, data: string, folder: string): void {
  const script = 'cat >/dev/null; "$0" -D "$1" -m immediate stop; rm -rf "$2"';
  const [first = "", ...rest] = [...user, "sh", "-c", script, pgCtl, data, folder];
  const guard = spawn(first, rest, { cwd: "/", stdio: ["pipe", "ignore", "ignore"], detached: true });
  guard.unref();
  if ("unref" in guard.stdin && typeof guard.stdin.unref === "function") guard.stdin.unref();
}
