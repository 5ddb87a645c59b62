/**
 * A wave ordered or come: its animals become orders or additions of the daybook, all or none. The form carries a key of the record it was
 * made from, so a wave accepted twice, by a double tap or from two windows, is one wave; a gate that is not met asks.
 */
import { judgeGate } from "../../answers/bench/gate.ts";
import { onOrder } from "../../answers/errands/on-order.ts";
import { orderingOf, straysOf } from "../../answers/errands/ordering.ts";
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import type { NewEntry } from "../../store/store.ts";
import { to } from "../../web/page.ts";
import {
  benchWavePage,
  countField,
  deadField,
  type WaveDeed,
  type WaveKind,
  type WaveView,
} from "../../web/pages/bench-wave.tsx";
import { waitingPage } from "../../web/pages/waiting.tsx";
import { knownTank } from "../round/known-tank.ts";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { readSentEntry } from "./entry-of.ts";
import { answersFor, ofTank } from "./of-tank.ts";
import { stateKey } from "./once.ts";
import { sentValues } from "./sent.ts";

export const BENCH_WAVE_ROUTES: readonly PageRoute[] = (["arrival", "order"] as const).flatMap((deed) => {
  const path = `/tanks/:tank/waves/:wave${deed === "order" ? "/order" : ""}`;
  return [
    { method: "GET", path, answer: ofTank((tank, request, context) => show(deed, tank, request, context)) },
    {
      method: "POST",
      path,
      answer: ofTank((tank, request, context) => accept(deed, tank, request, context)),
    },
  ];
});

const NO_WAVE: PageReply = { kind: "not_found", what: "wave of that address" };

type Asked = Pick<WaveView, "deed" | "wave" | "kinds" | "gate" | "once">;

/** The first wave of the plan alone: a later one is judged once those before it have come. */
function askedIn(
  deed: WaveDeed,
  tank: LoadedTank,
  { params }: PageRequest,
  answers: TankAnswers | null,
  today: string,
): Asked | null {
  const wave = answers?.waves.waves[0];
  if (answers === null || wave === undefined || String(wave.number) !== params["wave"]) return null;
  const { record } = tank;
  const since =
    deed === "order"
      ? (record.orders ?? []).map(({ entry }) => entry)
      : record.happenings.filter(({ kind }) => kind === "added").map(({ entry }) => entry);
  return {
    ...{ deed, wave, kinds: deed === "order" ? askedKinds(tank, answers) : comingKinds(tank, answers) },
    gate: judgeGate(wave, answers.waves, knownTank(tank, today)),
    once: stateKey(tank.row.id, deed === "order" ? "order" : "wave", wave.number, since),
  };
}

function askedKinds({ record, facts }: LoadedTank, answers: TankAnswers): readonly WaveKind[] {
  const lines = orderingOf(answers, record, facts.shop)?.lines ?? [];
  return lines.map(({ animal, name, planned, onOrder: asked, pack, ask }) => ({
    ...{ id: animal, name, heads: Number(ask.text) },
    hint: [
      `Planned: ${planned}.`,
      asked === 0 ? "" : `On order: ${asked}.`,
      pack === null ? "" : `Sold in packs of ${pack}.`,
    ]
      .filter((part) => part !== "")
      .join(" "),
  }));
}

/** Of the wave, and what else is on order: it may come too. */
function comingKinds({ record }: LoadedTank, answers: TankAnswers): readonly WaveKind[] {
  const open = new Map(onOrder(record).map(({ animal, heads }) => [animal, heads]));
  const planned = answers.waves.waves[0]?.animals ?? [];
  const others = straysOf(answers, record).filter(({ animal }) => planned.every(({ id }) => id !== animal));
  return [
    ...planned.map(({ id, name, count }) => {
      const asked = open.get(id);
      const hint = `Planned: ${count}.${asked === undefined ? "" : ` On order: ${asked}.`}`;
      return { id, name, heads: asked ?? count, hint };
    }),
    ...others.map(({ animal, name, heads }) => ({
      ...{ id: animal, name, heads: 0 },
      hint: `On order: ${heads}, and not in this wave: ask the shop to keep them.`,
    })),
  ];
}

async function show(
  deed: WaveDeed,
  tank: LoadedTank,
  request: PageRequest,
  context: PageContext,
): Promise<PageReply> {
  const answers = await answersFor(tank, request, context);
  if (answers === null) {
    const number = Number(request.params["wave"]) || 1;
    const address = deed === "order" ? to.orderWave(tank.row.id, number) : to.acceptWave(tank.row.id, number);
    return {
      kind: "page",
      page: waitingPage({ head: tank.head, here: "waves", what: "The wave", address }),
    };
  }
  const asked = askedIn(deed, tank, request, answers, context.today);
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

async function accept(
  deed: WaveDeed,
  tank: LoadedTank,
  request: PageRequest,
  context: PageContext,
): Promise<PageReply> {
  const sent = sentValues(request.form);
  const key = /^[\w-]{22}$/.test(sent["once"] ?? "") ? (sent["once"] ?? "") : null;
  const done: PageReply = {
    kind: "redirect",
    to: to.tank(tank.row.id, deed === "order" ? "errands" : "daybook"),
  };
  const answers = await answersFor(tank, { ...request, query: { ...request.query, wait: "1" } }, context);
  const asked = askedIn(deed, tank, request, answers, context.today);
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
  { deed, wave, kinds, gate }: Asked,
  sent: Values,
  tank: LoadedTank,
  context: PageContext,
): Promise<Read> {
  const entries: Omit<NewEntry, "id">[] = [];
  const doubts: FieldDoubt[] = [];
  const typed = (name: string): string => (sent[name] ?? "").trim();
  const reason = typed("despite_gate");
  if (gate.state !== "met" && reason === "") doubts.push(despiteDoubt(deed, gate));
  for (const { id, name, heads } of kinds) {
    const count = (sent[countField(id)] ?? String(heads)).trim();
    const dead = typed(deadField(id));
    if (count === "0" && (dead === "" || dead === "0")) continue;
    const kind = deed === "order" ? "order" : "addition";
    const read = await readSentEntry(
      kind,
      {
        ...{ animal: name, count, wave: String(wave.number), observed: typed("observed") },
        ...{ note: typed("note"), despite_gate: gate.state === "met" ? "" : reason },
        ...(deed === "order"
          ? { from: typed("from"), expected: typed("expected") }
          : { dead_on_arrival: dead }),
      },
      tank,
      context,
    );
    if (read.ok) entries.push({ kind, on: read.on, body: read.body });
    else doubts.push(...read.doubts.map((one) => ({ ...one, field: FIELDS[one.field]?.(id) ?? one.field })));
  }
  if (entries.length === 0 && doubts.length === 0) {
    const text =
      deed === "order"
        ? "Ordered: nothing of any kind. Wait, or enter how many you ask for"
        : "Alive: none came of any kind. Wait, or enter how many came";
    doubts.push({ field: countField(kinds[0]?.id ?? ""), text, choices: [] });
  }
  return { entries, doubts: onceEach(doubts) };
}

/** Fields of an entry that the form has once for each kind. */
const FIELDS: Readonly<Record<string, (animal: string) => string>> = {
  count: countField,
  dead_on_arrival: deadField,
};

/** The first condition that is not known to be met, by its own words. */
function despiteDoubt(deed: WaveDeed, { onlyIf, stopIf }: Asked["gate"]): FieldDoubt {
  const first = stopIf.state === "met" ? stopIf : onlyIf.find(({ state }) => state !== "met");
  const what =
    stopIf.state === "met"
      ? `stop: ${stopIf.because}`
      : `gate '${first?.text ?? ""}' ${first?.state === "not_met" ? "not met" : "not logged"}.`;
  return {
    field: "despite_gate",
    text:
      deed === "order"
        ? `Why order all the same: ${what} Wait, or say why you order anyway`
        : `Why add them all the same: ${what} Wait, or say why you add them anyway`,
    choices: [],
  };
}

/** When, note and reason are read with each kind: told once is enough. */
const onceEach = (doubts: readonly FieldDoubt[]): readonly FieldDoubt[] => [
  ...new Map(doubts.map((one) => [one.field, one])).values(),
];
