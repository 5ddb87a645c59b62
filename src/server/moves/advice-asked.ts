/**
 * What is asked of the keeper today, for an entry that declines some of it: each piece with what it rests on, by which it
 * comes back. Asked before the entry is read, as its reader waits for nothing.
 */
import { restsOn } from "../../answers/bench/declined.ts";
import type { RankedAdvice } from "../../answers/bench/next.ts";
import { plain } from "../../answers/sentence.ts";
import type { AskedAdvice } from "../../contract/daybook/asked-advice.ts";
import type { EntryKind } from "../../contract/daybook/kinds.ts";
import type { EntryText } from "../../contract/daybook/read-entry.ts";
import type { LoadedTank } from "../route.ts";

/**
 * Undefined for entries of other kinds.
 *
 * @param correcting id of an entry whose reason is put right: its advice, and what that rested on, stay
 * @param rank the ranked list in which advice of that id would stand
 */
export async function adviceAsked(
  kind: EntryKind,
  typed: EntryText,
  { entries }: Pick<LoadedTank, "entries">,
  rank: (id: string) => Promise<RankedAdvice>,
  correcting: string | null = null,
): Promise<readonly AskedAdvice[] | undefined> {
  if (kind !== "decline") return undefined;
  const before = entries.find(({ id }) => id === correcting);
  if (before?.kind === "decline") {
    const { advice, rests_on } = before.body;
    return [{ id: advice, does: "as it was declined", restsOn: rests_on }];
  }
  const { standing, declined } = await rank((typed["advice"] ?? "").trim());
  return [...standing, ...declined.map(({ advice }) => advice)].map((advice) => ({
    ...{ id: advice.id, does: plain(advice.do), restsOn: restsOn(advice) },
  }));
}
