/** Twenty runs for the eye: grains at chosen dates, for what the runs disagree on most. */
import { counted } from "../../answers/words.ts";
import { type GrainBlock, grainBlocks } from "./grains.ts";
import type { Page } from "./page.ts";

const LIMITS_MOST = 3;
const KINDS_MOST = 2;
/** Runs on the smaller side from which a picture tells more than the table. */
const LEAST_APART = 3;
const WEEKS = [4, 13, 26];

export function twentyText({ outlooks, lastWeek, dateOf, say, io }: Page): string {
  const [asItIs, whatIf] = outlooks;
  const weeks = [...WEEKS.filter((week) => week < lastWeek), lastWeek];
  const block = (title: string, of20: (week: number) => readonly number[]): GrainBlock => ({
    title,
    rows: weeks.map((week) => ({ date: dateOf(week), of20: of20(week) })),
  });
  const limits = asItIs.chances.map((now, i) =>
    block(`above: ${now.limit.short}`, (week) =>
      (whatIf === undefined ? [now] : [now, whatIf.chances[i]!]).map((one) => one.aboveIn(week)),
    ),
  );
  const lives = (whatIf ?? asItIs).kinds.flatMap((kind) => {
    const now = asItIs.kinds.find(({ animal }) => animal.id === kind.animal.id);
    if (now === undefined) return [];
    const title = `half or more alive: ${counted(kind.heads, kind.animal.commonName)}`;
    const both = whatIf === undefined ? [kind] : [now, kind];
    return [block(title, (week) => both.map((one) => one.aliveIn(week)))];
  });
  const blocks = [...openest(limits, LIMITS_MOST), ...openest(lives, KINDS_MOST)];
  if (blocks.length === 0) return "";
  const pair = whatIf === undefined ? "" : "; left as it is, right what if";
  return [
    say(`${io.bold("Twenty runs for the eye")}: solid, it is so on that day; empty, it is not${pair}`),
    ...grainBlocks(blocks),
  ].join("\n");
}

/** Blocks on which the runs are furthest from one mind. */
function openest(blocks: readonly GrainBlock[], most: number): GrainBlock[] {
  const apart = ({ rows }: GrainBlock) =>
    Math.max(...rows.flatMap(({ of20 }) => of20.map((n) => Math.min(n, 20 - n))));
  return blocks
    .filter((one) => apart(one) >= LEAST_APART)
    .sort((a, b) => apart(b) - apart(a))
    .slice(0, most);
}
