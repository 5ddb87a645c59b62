/** The daybook of a tank: its entries, newest first, sixty a page. */
import { isPictured } from "../../contract/picture/limits.ts";
import type { EntryRow } from "../../store/store.ts";
import { daybookPage } from "../../web/pages/daybook.tsx";
import type { LoadedTank, PageContext, PageReply, PageRequest, PageRoute } from "../route.ts";
import { daybookLineOf, entryKindOf } from "./entry-of.ts";
import { ofTank } from "./of-tank.ts";

export const DAYBOOK_ROUTES: readonly PageRoute[] = [
  { method: "GET", path: "/tanks/:tank/daybook", answer: ofTank(show) },
];

const LINES_SHOWN = 60;

async function show(tank: LoadedTank, { query }: PageRequest, { store }: PageContext): Promise<PageReply> {
  const only = entryKindOf(query["kind"]) ?? null;
  const withRemoved = query["removed"] === "1";
  const after = /^(\d{4}-\d\d-\d\d)_([\w-]+)$/.exec(query["after"] ?? "");
  const rows = await store.entries(tank.row.id, {
    limit: LINES_SHOWN + 1,
    withRemoved,
    ...(only === null ? {} : { kind: only }),
    ...(after === null ? {} : { after: { on: after[1] ?? "", id: after[2] ?? "" } }),
  });
  const shown = rows.slice(0, LINES_SHOWN);
  const last = shown.at(-1);
  const kept = await keptRow(query["kept"], tank, store);
  const page = daybookPage({
    head: tank.head,
    lines: shown.flatMap((row) => daybookLineOf(row) ?? []),
    pictures: await picturesOf(shown, store),
    only,
    withRemoved,
    kept: kept === null ? null : daybookLineOf(kept),
    after: after === null ? null : (query["after"] ?? null),
    older: rows.length > LINES_SHOWN && last !== undefined ? `${last.on}_${last.id}` : null,
  });
  return { kind: "page", page };
}

async function picturesOf(
  rows: readonly EntryRow[],
  store: PageContext["store"],
): Promise<ReadonlyMap<string, number>> {
  const counts = new Map<string, number>();
  const ids = rows.filter(({ kind }) => isPictured(kind)).map(({ id }) => id);
  for (const { entryId, takenAway } of await store.pictures(ids))
    if (takenAway === null) counts.set(entryId, (counts.get(entryId) ?? 0) + 1);
  return counts;
}

async function keptRow(
  id: string | undefined,
  tank: LoadedTank,
  store: PageContext["store"],
): Promise<EntryRow | null> {
  const row = id === undefined ? null : await store.entry(id);
  return row?.tankId === tank.row.id ? row : null;
}
