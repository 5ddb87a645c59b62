/** Tanks: list, add, look at, change, take away, bring back, history. */
import type { z } from "zod";
import { pointerOf } from "../../contract/http/json.ts";
import { API_ROOT } from "../../contract/http/openapi.ts";
import type { HttpFault } from "../../contract/http/shape.ts";
import type { newTank, TankSummary, TankView, tankChange, tankSaved } from "../../contract/http/tanks.ts";
import { isKept } from "../../contract/quantity/outcome.ts";
import { shown } from "../../contract/quantity/show.ts";
import { readName } from "../../contract/quantity/text.ts";
import type { Finding } from "../../contract/tank-file/finding.ts";
import type { TankFileResult } from "../../contract/tank-file/read.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { Desk, Json, Saved, Stamp, TankRow } from "../../store/store.ts";
import { LIMITS } from "../limits.ts";
import { readDocument } from "../load-tank.ts";
import { nameOf } from "../name-of.ts";
import { type Call, fault, type Handler, mend, notFound, type Result } from "./call.ts";
import { conflict, onceOnly } from "./once.ts";
import { ProblemError } from "./problem.ts";

/** Until there are accounts, whoever sits at this machine. */
export const stampOf = ({ context }: Call): Stamp => ({ at: context.now, by: "API" });

export const listTanks: Handler = async ({ query, context }) => {
  const { keeper } = query as { readonly keeper?: string };
  const tanks = (await context.store.tanks()).filter(
    (row) => keeper === undefined || row.keeper.name === keeper,
  );
  return { status: 200, body: { tanks: tanks.map(summaryOf) } };
};

export const addTank: Handler = async (call) => {
  const { keeper, facts: sent } = call.body as z.infer<typeof newTank>;
  const facts = withoutNulls(sent);
  const name = readName(keeper, "Keeper");
  const faults: HttpFault[] = isKept(name)
    ? []
    : [{ ...fault("/keeper", name.message.kind, name.message.text), typed: keeper, choices: name.choices }];
  const read = taken(facts, call.context.today, faults);
  const id = call.context.newId();
  return onceOnly(call, async (desk) => {
    if ((await desk.tanks()).length >= LIMITS.tanks) throw tooManyTanks();
    const stamp = stampOf(call);
    const who = await desk.keeperNamed(isKept(name) ? name.value : keeper, call.context.newId(), stamp);
    const row = await desk.addTank({ id, keeperId: who.id, demonstration: false, facts }, stamp);
    return {
      status: 201,
      body: savedOf(row, read),
      version: row.version,
      location: `${API_ROOT}/tanks/${row.id}`,
    };
  });
};

export const oneTank: Handler = async (call) => of(await keptTank(call));

export const changeTank: Handler = async (call) => {
  const facts = withoutNulls((call.body as z.infer<typeof tankChange>).facts);
  await keptTank(call);
  const read = taken(facts, call.context.today, []);
  const saved = await call.context.store.saveFacts(idOf(call), call.from, facts, stampOf(call));
  const row = rowOf(saved, viewOf);
  return { status: 200, body: savedOf(row, read), version: row.version };
};

export const takeTankAway: Handler = async (call) => {
  const row = await keptTank(call);
  const { name } = call.query as { readonly name: string };
  const own = nameOf(row);
  if (name !== own) {
    const choices = [{ label: own, text: own }];
    const detail = `Name "${shown(name)}": type the name as shown, ${own}`;
    throw mend(422, [{ ...fault("/name", "FORMAT", detail), typed: name, choices }]);
  }
  return of(rowOf(await call.context.store.setKept(row.id, call.from, false, stampOf(call)), viewOf));
};

export const bringTankBack: Handler = async (call) =>
  of(rowOf(await call.context.store.setKept(idOf(call), call.from, true, stampOf(call)), viewOf));

export const tankHistory: Handler = async (call) => {
  const rows = await call.context.store.tankHistory(idOf(call));
  if (rows.length === 0) throw notFound();
  return { status: 200, body: { versions: rows.map(viewOf) } };
};

const idOf = ({ params }: Call): string => params["tank"] ?? "";
const of = (row: TankRow): Result => ({ status: 200, body: viewOf(row), version: row.version });

/** @throws ProblemError where it is not there, or was taken away */
export async function keptTank(call: Call, desk: Desk = call.context.store): Promise<TankRow> {
  const row = await desk.tank(idOf(call));
  if (row === null || !row.kept) throw notFound();
  return row;
}

function rowOf<Row>(saved: Saved<Row>, view: (row: Row) => unknown): Row {
  if (saved.kind === "saved") return saved.row;
  if (saved.kind === "not_found") throw notFound();
  throw conflict(
    "Another version came first. Look at it, and send your change again made from that.",
    view(saved.current),
  );
}

const summaryOf = (row: TankRow): TankSummary => ({
  id: row.id,
  name: nameOf(row),
  keeper: { id: row.keeper.id, name: row.keeper.name },
  demonstration: row.demonstration,
  version: row.version,
  kept: row.kept,
  changed_at: row.stamp.at,
  changed_by: row.stamp.by,
});

const viewOf = (row: TankRow): TankView => ({ ...summaryOf(row), facts: row.facts });

/** A name without a value is read as one left out, and kept so: pages know no other. */
function withoutNulls(object: Json): Json {
  const bare = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(bare);
    return typeof value === "object" && value !== null ? withoutNulls(value as Json) : value;
  };
  return Object.fromEntries(
    Object.entries(object).flatMap(([name, value]) => (value === null ? [] : [[name, bare(value)]])),
  );
}

type Read = Extract<TankFileResult, { ok: true }>;

/** @throws ProblemError with everything that is to mend, in the facts and before them */
function taken(facts: Json, today: string, before: readonly HttpFault[]): Read {
  const read = readDocument(facts as unknown as TankFile, today);
  if (read.ok && before.length === 0) return read;
  throw mend(422, [
    ...before,
    ...(read.ok ? [] : read.findings.map((finding) => faultOf(finding, "/facts"))),
  ]);
}

export const faultOf = ({ path, message, typed, choices }: Finding, root: string): HttpFault => ({
  pointer: `${root}${pointerIn(path)}`,
  kind: message.kind,
  detail: message.text,
  typed,
  allowed: [],
  choices,
});

/** `animals_present[1].count` as a pointer. */
const pointerIn = (path: string): string =>
  path === "" ? "" : pointerOf(path.split(/[.[]/).map((step) => step.replace(/\]$/, "")));

function savedOf(row: TankRow, { notices }: Read): z.infer<typeof tankSaved> {
  return {
    tank: viewOf(row),
    notices: notices.map(({ path, kind, text }) => ({
      pointer: `/facts${pointerIn(path)}`,
      kind,
      message: text,
    })),
  };
}

const tooManyTanks = (): ProblemError =>
  new ProblemError({
    status: 422,
    title: "No room for another tank",
    kind: "TOOBIG",
    detail: `A store holds at most ${LIMITS.tanks} tanks. Take one away first, or start another store.`,
  });
