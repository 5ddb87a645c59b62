import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { ENVIRONMENT, grazewell, LAUNCHER, ROOT, shell } from "./command.ts";

const EXAMPLE = "examples/first-reef.yaml";
const ESCAPE = "\u001b";

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "journey-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

describe("help", () => {
  test.each([[[]], [["--help"]], [["help"]]])("grazewell %j shows examples, then the commands", (words) => {
    const { status, stdout, stderr } = grazewell(words);
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(stdout).toMatch(/^Examples:\n {2}grazewell /);
    expect(stdout).toMatch(/^Figures? are estimates|estimates/m);
    for (const command of ["ask", "check", "water"])
      expect(stdout).toMatch(new RegExp(`^  ${command} `, "m"));
  });

  // Loads every command there is: one that can't be loaded fails here.
  const commands = [...grazewell([]).stdout.matchAll(/^ {2}([a-z]+) (?!\[command\])/gm)].map(
    ([, name]) => name ?? "",
  );
  test.each(commands.filter((name) => name !== "grazewell"))(
    "grazewell help %s says how to use it",
    (name) => {
      const { status, stdout, stderr } = grazewell(["help", name]);
      expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
      expect(stdout).toContain("Examples:\n");
      expect(stdout).toContain(`Usage: grazewell ${name}`);
      expect(grazewell([name, "--help"]).stdout).toBe(stdout);
    },
  );

  test("--version names the package, the engine and the runtime", () => {
    const { version } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
    const { status, stdout } = grazewell(["--version"]);
    expect(status).toBe(0);
    expect(stdout).toBe(`grazewell ${version}, engine ${version}, Node ${process.versions.node}\n`);
  });
});

describe("called wrongly: exit code 2, nothing on standard output, the likely word", () => {
  test.each([
    ["an unknown command", ["chekc"], "(Did you mean check?)"],
    ["help on an unknown command", ["help", "watr"], "(Did you mean water?)"],
    ["an unknown option", ["--verson"], "(Did you mean --version?)"],
    ["an unknown option of a command", ["water", "--salinty", "35"], "(Did you mean --salinity?)"],
    ["a missing argument", ["check"], "Name a tank file"],
    ["an argument too many", ["check", EXAMPLE, EXAMPLE], "too many arguments"],
    ["nothing to work with", ["ask", "--no-input"], ""],
  ])("%s", (_, words, said) => {
    const { status, stdout, stderr } = grazewell(words);
    expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
    expect(stderr).toContain(said);
  });

  test("a day that is none", () => {
    const { status, stderr } = shell(`GRAZEWELL_TODAY=2026-02-31 grazewell check ${EXAMPLE}`);
    expect({ status, stderr }).toEqual({
      status: 2,
      stderr: 'GRAZEWELL_TODAY "2026-02-31": must be a date such as 2026-06-15\n',
    });
  });
});

describe("exit codes", () => {
  test.each([
    [0, `grazewell check ${EXAMPLE}`],
    [0, `cat ${EXAMPLE} | grazewell check - --json`],
    [65, "echo 'water_l: 55 gal' | grazewell check -"],
    [65, "grazewell water --salinity 35 --temperature 99"],
    [65, "grazewell larder examples/first-reef.yaml --feed lots"],
    [66, "grazewell check no-such-file.yaml"],
    [66, "grazewell check examples"],
    [73, "grazewell ask --no-input --water 113 -o no-such-folder/tank.yaml"],
    [73, `grazewell check ${EXAMPLE} > /dev/full`],
  ])("%i: %s", (code, line) => {
    const { status, stderr } = shell(line);
    expect(status).toBe(code);
    expect(stderr).not.toContain("fault in Grazewell");
  });
});

describe("streams", () => {
  test("no colour without a terminal", () => {
    const { stdout, stderr } = grazewell(["check", EXAMPLE]);
    expect(stdout + stderr).not.toContain(ESCAPE);
  });

  // `script` gives the command a terminal; its own words are left out by -q.
  const onTerminal = (words: string) =>
    spawnSync("script", ["-qec", `${LAUNCHER} ${words}`, "/dev/null"], {
      cwd: ROOT,
      env: ENVIRONMENT,
      encoding: "utf8",
      input: "",
    });

  test("colour on a terminal, unless NO_COLOR is set", () => {
    expect(onTerminal(`check ${EXAMPLE}`).stdout).toContain(`${ESCAPE}[1m`);
    const { stdout } = spawnSync("script", ["-qec", `${LAUNCHER} check ${EXAMPLE}`, "/dev/null"], {
      cwd: ROOT,
      env: { ...ENVIRONMENT, NO_COLOR: "1" },
      encoding: "utf8",
      input: "",
    });
    expect(stdout).toContain("nothing to mend");
    expect(stdout).not.toContain(ESCAPE);
  });

  test("a reader that stops early is no failure", () => {
    const { stdout, stderr } = shell(`grazewell check ${EXAMPLE} | head -c 1; echo " \${PIPESTATUS[0]}"`);
    expect(stdout).toMatch(/^. 0\n$/);
    expect(stderr).not.toContain("EPIPE");
  });

  test.each([[">&-"], ["2>&-"], ["<&-"]])("works with a stream closed: %s", (redirection) => {
    expect(shell(`grazewell check ${EXAMPLE} ${redirection}`).status).toBe(0);
  });

  test.each([
    ["a file", `(sleep 0.3; cat ${EXAMPLE}) | grazewell check -`, "nothing to mend"],
    ["answers", "(sleep 0.3; echo 113; echo) | grazewell ask", 'water_l: "113"'],
  ])("waits for a slow pipe with %s", (_, line, printed) => {
    const { status, stdout } = shell(line);
    expect(status).toBe(0);
    expect(stdout).toContain(printed);
  });

  test("with --json, standard output is JSON and nothing else", () => {
    expect(JSON.parse(grazewell(["check", EXAMPLE, "--json"]).stdout)).toMatchObject({ ok: true });
  });
});

describe("Ctrl-C", () => {
  test("ends a command that waits, at once and by the signal itself", async () => {
    const child = spawn(LAUNCHER, ["check", "-"], {
      cwd: ROOT,
      env: ENVIRONMENT,
      stdio: ["pipe", "ignore", "ignore"],
    });
    const ended = once(child, "exit");
    await new Promise((resolve) => setTimeout(resolve, 500));
    child.kill("SIGINT");
    const [, signal] = await ended;
    expect(signal).toBe("SIGINT");
  });

  test("during the questions: 130, and no file", async () => {
    const file = join(folder, "tank.yaml");
    const child = spawn("script", ["-qec", `${LAUNCHER} ask -o ${file}`, "/dev/null"], {
      cwd: ROOT,
      env: ENVIRONMENT,
      stdio: ["pipe", "pipe", "ignore"],
    });
    await once(child.stdout, "data");
    // The first words may come in pieces; the question is up once they are through.
    await new Promise((resolve) => setTimeout(resolve, 500));
    const ended = once(child, "exit");
    child.stdin.write("113\n\u0003");
    const [code] = await ended;
    expect(code).toBe(130);
    expect(existsSync(file)).toBe(false);
  });
});

describe("the launcher", () => {
  test("works from another folder, through a link, with a file beside the caller", () => {
    const link = join(folder, "gw");
    symlinkSync(LAUNCHER, link);
    const { status, stdout } = spawnSync(link, ["ask", "--no-input", "--water", "113", "-o", "mine.yaml"], {
      cwd: folder,
      env: ENVIRONMENT,
      encoding: "utf8",
    });
    expect({ status, stdout }).toEqual({ status: 0, stdout: "" });
    expect(existsSync(join(folder, "mine.yaml"))).toBe(true);
  });
});
