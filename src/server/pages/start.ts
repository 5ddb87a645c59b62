/** The list of tanks, and a new one. */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import { readForm, unsure } from "../../answers/questions/form.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { dateWords } from "../../answers/words.ts";
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import { readingBody } from "../../contract/daybook/reading.ts";
import { daysBetween } from "../../contract/quantity/calendar.ts";
import { isKept } from "../../contract/quantity/outcome.ts";
import { readName } from "../../contract/quantity/text.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { Desk, EntryRow, Json, Store, TankRow } from "../../store/store.ts";
import { to } from "../../web/page.ts";
import { NO_KEEPER, NO_NAME, newTankPage } from "../../web/pages/new-tank.tsx";
import { startPage, type TankLine } from "../../web/pages/start.tsx";
import { LIMITS } from "../limits.ts";
import { nameOf } from "../name-of.ts";
import type { PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { makeOnce, stateKey } from "./once.ts";
import { sentValues } from "./sent.ts";

export const START_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: "/", answer: list },
  { method: "GET", path: "/new", answer: blank },
  { method: "POST", path: "/new", answer: add },
];

async function list(_: PageRequest, { store, today }: PageContext): Promise<PageReply> {
  const tanks = await store.tanks();
  const latest = new Map<string, EntryRow[]>();
  for (const entry of await store.latestReadings(tanks.map(({ id }) => id)))
    latest.set(entry.tankId, [...(latest.get(entry.tankId) ?? []), entry]);
  const lines = tanks.map((row) => ({ row, line: lineOf(row, latest.get(row.id) ?? [], today) }));
  const sorted = lines.toSorted((a, b) => Number(b.line.danger !== null) - Number(a.line.danger !== null));
  const of = (demonstration: boolean) =>
    sorted.filter(({ row }) => row.demonstration === demonstration).map(({ line }) => line);
  return { kind: "page", page: startPage({ own: of(false), invented: of(true) }) };
}

function lineOf(row: TankRow, latest: readonly EntryRow[], today: string): TankLine {
  const file = row.facts as unknown as TankFile;
  const water = file.water_l ?? file.display_sides_cm;
  const first = file.first_seawater_on;
  const last = latest
    .map(({ on }) => on)
    .sort()
    .at(-1);
  const facts = [
    water === undefined ? null : typeof water === "number" ? `${water} L` : String(water),
    first === undefined
      ? null
      : `first seawater ${/^\d{4}-\d\d-\d\d$/.test(first) ? dateWords(first) : first}`,
  ].filter((part) => part !== null);
  const aged = last === undefined ? null : Math.max(0, daysBetween(last, today));
  const read =
    aged === null
      ? "No reading kept yet."
      : `Last reading ${aged === 0 ? "today" : aged === 1 ? "yesterday" : `${aged} days ago`}.`;
  return {
    id: row.id,
    name: nameOf(row),
    keeper: row.keeper.name,
    line: `${facts.join(", ")}${facts.length > 0 ? ". " : ""}${read}`,
    danger: dangerOf(file, latest),
  };
}

/** The latest of each quantity: one that is dangerous is told however well the others are. */
function dangerOf({ trouble }: TankFile, latest: readonly EntryRow[]): string | null {
  const dangerous = latest.flatMap(({ body }) => {
    const read = readingBody.safeParse(body);
    return read.success && read.data.flag === "danger"
      ? [`${MEASURES[read.data.quantity].label} ${read.data.text}`]
      : [];
  });
  const told = trouble?.trim() ?? "";
  const all = [...dangerous, ...(told === "" ? [] : [told])];
  return all.length === 0 ? null : all.join("; ");
}

async function blank(_: PageRequest, { store }: PageContext): Promise<PageReply> {
  return { kind: "page", page: newTankPage({ values: {}, doubts: [], once: await onceOf(store) }) };
}

const onceOf = async (store: Store): Promise<string> => stateKey((await store.tanks()).map(({ id }) => id));

async function add({ form }: PageRequest, context: PageContext): Promise<PageReply> {
  const { store, newId, now, today } = context;
  const sent = sentValues(form);
  const once = sent["once"] ?? "";
  const doubts: FieldDoubt[] = [];
  const keeper = named("keeper", "Keeper's name", sent, NO_KEEPER, doubts);
  const name = named("name", "Tank name", sent, NO_NAME, doubts);
  const empty: TankFile = { grazewell_tank: 1, name };
  const read =
    sent["go"] === "not_sure" ? unsure(1, empty, { today }) : readForm([1], sent, empty, { today });
  if (!read.ok) doubts.push(...read.doubts);
  if (!read.ok || doubts.length > 0) {
    return { kind: "page", page: newTankPage({ values: sent, doubts, once }), status: 422 };
  }
  if ((await store.tanks()).length >= LIMITS.tanks)
    return { kind: "page", page: tooMany(sent, once), status: 422 };
  const stamp = { at: now, by: keeper };
  const facts = read.file as unknown as Json;
  const work = async (desk: Desk) => {
    const { id: keeperId } = await desk.keeperNamed(keeper, newId(), stamp);
    const { id } = await desk.addTank({ id: newId(), keeperId, demonstration: false, facts }, stamp);
    return id;
  };
  const id = await makeOnce(
    { key: once, of: "new-tank", content: [keeper, facts], by: keeper, work },
    context,
  );
  return { kind: "redirect", to: `${to.question(id, 2)}?read=1` };
}

/** Left empty it has its default; spaces alone are no name. */
function named(field: string, label: string, sent: Values, otherwise: string, doubts: FieldDoubt[]): string {
  const typed = sent[field] ?? "";
  if (typed === "") return otherwise;
  const outcome = readName(typed, label);
  if (isKept(outcome)) return outcome.value;
  doubts.push({ field, text: outcome.message.text, choices: [] });
  return otherwise;
}

function tooMany(values: Values, once: string) {
  const text = `Tanks: at most ${LIMITS.tanks.toLocaleString("en-GB")} are kept here. Take one away first`;
  return newTankPage({ values, doubts: [{ field: "water", text, choices: [] }], once });
}
