/**
 * `npm run trace -- FILE [--id NAME]`: runs a scenario file, the form of checks/recorded/model-traces.json, and
 * prints daily pools as JSON. For comparing the balance with other implementations of docs/model/balance.md.
 */
import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { outsideFlows } from "../engine/balance/ledger.ts";
import { readScenario, ScenarioError } from "../engine/balance/read-scenario.ts";
import { type Scenario, traceScenario } from "../engine/balance/trace.ts";
import { CliError, EXIT, processIo } from "./io.ts";

const USAGE = "Usage: npm run trace -- FILE [--id NAME]";

function readArguments(argv: readonly string[]): { file: string; id: string | undefined } {
  try {
    const options = { id: { type: "string" } } as const;
    const { values, positionals } = parseArgs({ args: [...argv], options, allowPositionals: true });
    const [file, ...rest] = positionals;
    if (file !== undefined && rest.length === 0) return { file, id: values.id };
  } catch (error) {
    throw new CliError(EXIT.usage, [error instanceof Error ? error.message : String(error), USAGE]);
  }
  throw new CliError(EXIT.usage, [USAGE]);
}

function readJson(file: string): unknown {
  let text: string;
  try {
    text = readFileSync(file, "utf8");
  } catch {
    throw new CliError(EXIT.inputMissing, [`Cannot read ${file}: no such file, or not readable`]);
  }
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new CliError(EXIT.badData, [
      `${file} is not JSON: ${error instanceof Error ? error.message : error}`,
    ]);
  }
}

/** The scenarios asked for, and whether the file was a list of them. */
function scenariosIn(json: unknown, id: string | undefined): { scenarios: Scenario[]; isList: boolean } {
  const list = typeof json === "object" && json !== null && "scenarios" in json ? json.scenarios : undefined;
  if (list !== undefined && !Array.isArray(list))
    throw new ScenarioError("scenarios", "must be a list", list);
  const isList = list !== undefined && id === undefined;
  const named = (list ?? [json]).map((value: unknown, i: number) => ({
    value,
    at: list === undefined ? "scenario" : `scenarios[${i}]`,
  }));
  const wanted = named.filter(
    ({ value }) => id === undefined || (value as { id?: unknown } | null)?.id === id,
  );
  if (wanted.length === 0 && id !== undefined) {
    throw new ScenarioError("id", "must name a scenario of the file", id);
  }
  return { scenarios: wanted.map(({ value, at }) => readScenario(value, at)), isList };
}

function traced(scenario: Scenario) {
  const { daily, ledger, stepDays, lastHalvingChanged, guarded } = traceScenario(scenario);
  return {
    id: scenario.id,
    daily,
    outsideAtEnd: outsideFlows(ledger),
    step_days: stepDays,
    last_halving_changed: lastHalvingChanged,
    guarded,
  };
}

const io = processIo();
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  process.exit(error.code === "EPIPE" ? EXIT.done : EXIT.cannotWrite);
});
try {
  const { file, id } = readArguments(process.argv.slice(2));
  const { scenarios, isList } = scenariosIn(readJson(file), id);
  const traces = scenarios.map(traced);
  io.out(JSON.stringify(isList ? { scenarios: traces } : traces[0]));
} catch (error) {
  if (error instanceof CliError) {
    for (const line of error.lines) io.talk(line);
    process.exitCode = error.exitCode;
  } else if (error instanceof ScenarioError || error instanceof RangeError) {
    io.talk(error.message);
    process.exitCode = EXIT.badData;
  } else {
    throw error;
  }
}
