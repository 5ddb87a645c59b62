/**
 * A wave accepted: its animals become additions of the daybook, all or none. The form carries a key of the record it was
 * made from, so a wave accepted twice, by a double tap or from two windows, is one wave; a gate that is not met asks.
 */
import { judgeGate } from "../../answers/bench/gate.ts";
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import type { NewEntry } from "../../store/store.ts";
import { to } from "../../web/page.ts";
import { benchWavePage, countField, type WaveView } from "../../web/pages/bench-wave.tsx";
import { waitingPage } from "../../web/pages/waiting.tsx";
import { knownTank } from "../round/known-tank.ts";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { readSentEntry } from "./entry-of.ts";
import { answersFor, ofTank } from "./of-tank.ts";
import { stateKey } from "./once.ts";
import { sentValues } from "./sent.ts";

export const BENCH_WAVE_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: "/tanks/:tank/waves/:wave", answer: ofTank(show) },
  { method: "POST", path: "/tanks/:tank/waves/:wave", answer: ofTank(accept) },
];

const NO_WAVE: PageReply = { kind: "not_found", what: "wave of that address" };

type Asked = Pick<WaveView, "wave" | "gate" | "once">;

/** The first wave of the plan alone: a later one is judged once those before it have come. */
function askedIn(
  tank: LoadedTank,
  { params }: PageRequest,
  answers: Awaited<ReturnType<typeof answersFor>>,
  today: string,
): Asked | null {
  const wave = answers?.waves.waves[0];
  if (answers === null || wave === undefined || String(wave.number) !== params["wave"]) return null;
  const came = tank.record.happenings.filter(({ kind }) => kind === "added").map(({ entry }) => entry);
  const once = stateKey(tank.row.id, "wave", wave.number, came);
  return { wave, gate: judgeGate(wave, answers.waves, knownTank(tank, today)), once };
}

async function show(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const answers = await answersFor(tank, request, context);
  if (answers === null) {
    const address = to.acceptWave(tank.row.id, Number(request.params["wave"]) || 1);
    return {
      kind: "page",
      page: waitingPage({ head: tank.head, here: "waves", what: "The wave", address }),
    };
  }
  const asked = askedIn(tank, request, answers, context.today);
  return asked === null ? NO_WAVE : drawn(tank, asked, {}, []);
}

const drawn = (
  { head }: LoadedTank,
  asked: Asked,
  values: Values,
  doubts: readonly FieldDoubt[],
): PageReply => ({
  kind: "page",
  page: benchWavePage({ head, ...asked, values, doubts }),
  status: doubts.length > 0 ? 422 : 200,
});

async function accept(tank: LoadedTank, request: PageRequest, context: PageContext): Promise<PageReply> {
  const sent = sentValues(request.form);
  const key = /^[\w-]{22}$/.test(sent["once"] ?? "") ? (sent["once"] ?? "") : null;
  const done: PageReply = { kind: "redirect", to: to.tank(tank.row.id, "daybook") };
  const answers = await answersFor(tank, { ...request, query: { ...request.query, wait: "1" } }, context);
  const asked = askedIn(tank, request, answers, context.today);
  // The plan has moved on since that form: what was sent with it may have been kept already.
  const stale = asked === null || key !== asked.once;
  if (stale && (key === null || !(await wasKept(key, tank, context)))) {
    return asked === null ? NO_WAVE : drawn(tank, asked, sent, [CHANGED]);
  }
  if (asked === null || stale) return done;
  const read = await entriesOf(asked, sent, tank, context);
  if (read.doubts.length > 0) return drawn(tank, asked, sent, read.doubts);
  const stamp = { at: context.now, by: tank.row.keeper.name };
  await context.store.once(nameOf(asked.once, tank), "wave", stamp, async (desk) => {
    const rows = read.entries.map((entry) => ({ ...entry, id: context.newId() }));
    await desk.addEntries(tank.row.id, rows, stamp);
    return { status: 303, body: { ids: rows.map(({ id }) => id) } };
  });
  return done;
}

const nameOf = (key: string, { row }: LoadedTank): string => `wave:${row.id}:${key}`;

const CHANGED: FieldDoubt = {
  field: "observed",
  text: "Changed since this page was drawn: the plan or the daybook has moved on. Look at the wave again, then log it",
  choices: [],
};

/** Asking with work that gives up tells whether the key's work was done, and does nothing. */
async function wasKept(key: string, tank: LoadedTank, { store, now }: PageContext): Promise<boolean> {
  const stamp = { at: now, by: tank.row.keeper.name };
  try {
    await store.once(nameOf(key, tank), "wave", stamp, () => Promise.reject(new NotKept()));
    return true;
  } catch (error) {
    if (error instanceof NotKept) return false;
    throw error;
  }
}
class NotKept extends Error {}

interface Read {
  readonly entries: readonly Omit<NewEntry, "id">[];
  readonly doubts: readonly FieldDoubt[];
}

async function entriesOf(
  { wave, gate }: Asked,
  sent: Values,
  tank: LoadedTank,
  context: PageContext,
): Promise<Read> {
  const entries: Omit<NewEntry, "id">[] = [];
  const doubts: FieldDoubt[] = [];
  const reason = (sent["despite_gate"] ?? "").trim();
  if (gate.state !== "met" && reason === "") doubts.push(despiteDoubt(gate));
  for (const { id, name, count } of wave.animals) {
    const typed = (sent[countField(id)] ?? String(count)).trim();
    if (typed === "0") continue;
    const read = await readSentEntry(
      "addition",
      {
        ...{ animal: name, count: typed, wave: String(wave.number), observed: sent["observed"] ?? "" },
        ...{ note: sent["note"] ?? "", despite_gate: gate.state === "met" ? "" : reason },
      },
      tank,
      context,
    );
    if (read.ok) entries.push({ kind: "addition", on: read.on, body: read.body });
    else
      doubts.push(
        ...read.doubts.map((one) => (one.field === "count" ? { ...one, field: countField(id) } : one)),
      );
  }
  if (entries.length === 0 && doubts.length === 0) {
    const [first] = wave.animals;
    doubts.push({
      field: countField(first?.id ?? ""),
      text: "Alive: none came of any kind. Wait, or enter how many came",
      choices: [],
    });
  }
  return { entries, doubts: onceEach(doubts) };
}

/** The first condition that is not known to be met, by its own words. */
function despiteDoubt({ onlyIf, stopIf }: Asked["gate"]): FieldDoubt {
  const first = stopIf.state === "met" ? stopIf : onlyIf.find(({ state }) => state !== "met");
  const what =
    stopIf.state === "met"
      ? `stop: ${stopIf.because}`
      : `gate '${first?.text ?? ""}' ${first?.state === "not_met" ? "not met" : "not logged"}.`;
  return {
    field: "despite_gate",
    text: `Why add them all the same: ${what} Wait, or say why you add them anyway`,
    choices: [],
  };
}

/** When, note and reason are read with each kind: told once is enough. */
const onceEach = (doubts: readonly FieldDoubt[]): readonly FieldDoubt[] => [
  ...new Map(doubts.map((one) => [one.field, one])).values(),
];
