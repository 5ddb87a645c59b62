/** Versions of a tank's facts: listed, gone back to; the tank taken away and brought back. */
import { judged } from "../../answers/questions/form.ts";
import { shown } from "../../contract/quantity/show.ts";
import { labelOf } from "../../contract/tank-file/finding.ts";
import type { TankFile } from "../../contract/tank-file/schema.ts";
import type { TankRow } from "../../store/store.ts";
import { to } from "../../web/page.ts";
import { type HistoryView, historyPage } from "../../web/pages/history.tsx";
import { readingsOf, withReadings } from "../load-tank.ts";
import { nameOf } from "../name-of.ts";
import type { PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { instantWords } from "./instant-words.ts";
import { NO_TANK } from "./of-tank.ts";
import { questionIn } from "./questions.ts";
import { sentValues, versionOf } from "./sent.ts";

export const HISTORY_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: "/tanks/:tank/history", answer: show },
  { method: "POST", path: "/tanks/:tank/history", answer: change },
];

async function show({ params }: PageRequest, context: PageContext): Promise<PageReply> {
  const row = await context.store.tank(params["tank"] ?? "");
  return row === null ? NO_TANK : await page(row, null, "", context);
}

async function page(
  row: TankRow,
  error: HistoryView["error"],
  typedName: string,
  { store }: PageContext,
): Promise<PageReply> {
  const history = (await store.tankHistory(row.id)).toSorted((a, b) => b.version - a.version);
  const view: HistoryView = {
    head: {
      id: row.id,
      name: nameOf(row),
      keeper: row.keeper.name,
      demonstration: row.demonstration,
    },
    versions: history.map((one, i) => ({
      version: one.version,
      written: instantWords(one.stamp.at),
      by: one.stamp.by,
      changed: changedOf(one, history[i + 1]),
      kept: one.kept,
    })),
    error,
    typedName,
  };
  return { kind: "page", page: historyPage(view), status: error === null ? 200 : 422 };
}

function changedOf(row: TankRow, before: TankRow | undefined): readonly string[] {
  if (before === undefined) return [];
  if (!before.kept && row.kept) return ["brought back"];
  const names = new Set([...Object.keys(before.facts), ...Object.keys(row.facts)]);
  const changed = [...names].filter(
    (name) => JSON.stringify(before.facts[name]) !== JSON.stringify(row.facts[name]),
  );
  return changed.length === 0 ? ["nothing"] : changed.map((name) => labelOf([name]));
}

async function change(request: PageRequest, context: PageContext): Promise<PageReply> {
  const { store, now } = context;
  const row = await store.tank(request.params["tank"] ?? "");
  if (row === null) return NO_TANK;
  const sent = sentValues(request.form);
  const stamp = { at: now, by: row.keeper.name };
  const version = versionOf(sent);
  if (sent["go"] === "take_away") {
    const typed = sent["confirm"] ?? "";
    if (typed.trim() !== nameOf(row).trim()) {
      const text = `Name "${shown(typed)}": type the name as shown, ${nameOf(row)}`;
      return await page(row, { field: "confirm", text }, typed, context);
    }
    const saved = await store.setKept(row.id, version, false, stamp);
    return saved.kind === "conflict"
      ? await changed(saved.current, context)
      : { kind: "redirect", to: to.start() };
  }
  if (sent["go"] === "bring_back") {
    const saved = row.kept ? null : await store.setKept(row.id, version, true, stamp);
    return saved?.kind === "conflict"
      ? await changed(saved.current, context)
      : { kind: "redirect", to: to.tank(row.id) };
  }
  return await goBack(row, Number(sent["restore"] ?? 0), version, sent["next"], context);
}

const changed = (row: TankRow, context: PageContext): Promise<PageReply> =>
  page(
    row,
    { field: "versions", text: "This tank was changed since you opened the page: look at the list again" },
    "",
    context,
  );

async function goBack(
  row: TankRow,
  restore: number,
  version: number,
  next: string | undefined,
  context: PageContext,
): Promise<PageReply> {
  const { store, today, now } = context;
  const wanted = (await store.tankHistory(row.id)).find((one) => one.version === restore);
  if (wanted === undefined || !row.kept) return { kind: "not_found", what: "version of that number" };
  const readings = await readingsOf(store, row.id);
  const together = (file: TankFile) => withReadings(file, readings);
  const result = judged(wanted.facts as unknown as TankFile, [], {}, { today, together });
  if (!result.ok) {
    const text = `It can't be as it was: ${result.doubts[0]?.text ?? "its readings say otherwise"}`;
    return await page(row, { field: "versions", text }, "", context);
  }
  const stamp = { at: now, by: row.keeper.name };
  const saved = await store.saveFacts(row.id, version, wanted.facts, stamp);
  if (saved.kind === "conflict") return await changed(saved.current, context);
  const question = questionIn(next);
  return { kind: "redirect", to: question === null ? to.history(row.id) : to.question(row.id, question) };
}
