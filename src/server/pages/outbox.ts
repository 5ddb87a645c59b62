/**
 * Where a browser's outbox sends what was typed while nothing could be reached. "Today" is then the day on which it was
 * typed. The answer is for a script: kept, with where to see it; or why it could not be read.
 */
import { addDays, daysBetween } from "../../contract/quantity/calendar.ts";
import type { OutboxAnswer } from "../../web/client/outbox-send.ts";
import { to } from "../../web/page.ts";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { daybookLineOf, entryKindOf, readSentEntry } from "./entry-of.ts";
import { isOwnKey, keepOnce, keptBefore } from "./keep-entry.ts";
import { ofTank } from "./of-tank.ts";
import { sentValues } from "./sent.ts";

export const OUTBOX_ROUTES: readonly PageRoute[] = [
  { method: "POST", path: "/tanks/:tank/daybook/outbox", answer: ofTank(take) },
];

async function take(tank: LoadedTank, { form }: PageRequest, context: PageContext): Promise<PageReply> {
  return answer(await keep(tank, form, context));
}

const answer = (said: OutboxAnswer): PageReply => ({
  kind: "file",
  name: "outbox.json",
  type: "application/json; charset=utf-8",
  text: JSON.stringify(said),
});

const refused = (...doubts: readonly string[]): OutboxAnswer => ({ kind: "refused", doubts });

async function keep(
  tank: LoadedTank,
  form: URLSearchParams | null,
  context: PageContext,
): Promise<OutboxAnswer> {
  const sent = sentValues(form);
  const kind = entryKindOf(sent["kind"]);
  if (kind === undefined) return refused(`Kind of entry "${sent["kind"] ?? ""}": there is none such.`);
  if (!isOwnKey(sent["once"] ?? "")) return refused("Its key can't be read.");
  const then = whenTyped(sent["typed_at"] ?? "", context);
  const read = await readSentEntry(kind, sent, tank, then);
  const done = read.ok
    ? await keepOnce(kind, sent, read, tank, context)
    : await keptBefore(kind, sent, tank, context);
  if (done === null) return refused(...(read.ok ? [] : read.doubts.map(({ text }) => text)));
  if (done.refused !== undefined) return refused(done.refused);
  if (done.other === true) return { kind: "other" };
  const row = await context.store.entry(done.id);
  const line = row === null ? null : daybookLineOf(row);
  const place = kind === "reading" ? "readings" : "daybook";
  const quantity = kind === "reading" ? `&quantity=${sent["quantity"] ?? ""}` : "";
  return {
    kind: "kept",
    id: done.id,
    version: row?.version ?? 1,
    sentence: line?.sentence ?? "",
    danger: line?.flag?.kind === "danger" ? line.flag.words : null,
    next: `${to.tank(tank.row.id, place)}?kept=${done.id}${quantity}`,
  };
}

/** Longer ago, what was typed has to say its own day. */
const MOST_DAYS = 400;
const STAMP = /^(\d{4}-\d\d-\d\d)T\d\d:\d\d:\d\d(?:Z|([+-])(\d\d):(\d\d))$/;

/** The day and instant of typing, as the tank's clock would have had them; now where it says none, or one to come. */
function whenTyped(typedAt: string, context: PageContext): PageContext {
  const match = STAMP.exec(typedAt);
  const at = Date.parse(typedAt);
  if (match === null || Number.isNaN(at)) return context;
  const offset = (match[2] === "-" ? -1 : 1) * (Number(match[3] ?? 0) * 60 + Number(match[4] ?? 0));
  const nowThere = new Date(Date.parse(context.now) + offset * 60_000).toISOString().slice(0, 10);
  const days = daysBetween(match[1] ?? "", nowThere);
  if (days <= 0 || days > MOST_DAYS) return context;
  return { ...context, today: addDays(context.today, -days), now: new Date(at).toISOString() };
}
