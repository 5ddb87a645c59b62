/** Crisis lists as `wrong --json` prints them, with a tank's numbers behind one where a tank was named. */
import type { WrongListOutput, WrongOutput } from "../../contract/output/wrong.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { STATEMENT } from "../statement.ts";
import type { TankAnswers } from "../tank-answers.ts";
import { partData, sentencesOf, toldWorkings, workingsById } from "../told-workings.ts";
import { ENGINE_VERSION } from "../version.ts";
import { CRISIS_IDS, type CrisisId } from "./list-ids.ts";
import { AFTERWARDS, BEFORE, CRISIS_LISTS } from "./lists.ts";
import { hasNumbers, numbersBehind, troubleFigures } from "./numbers.ts";

const listOf = (id: CrisisId): WrongOutput["lists"][number] => {
  const { about, see, lines } = CRISIS_LISTS[id];
  return { id, about, see, lines: [...lines], has_numbers: hasNumbers(id) };
};

export const wrongOutputOf = (): WrongOutput => ({
  ...{ schema: "grazewell.wrong/1", engine: ENGINE_VERSION, before: BEFORE, afterwards: AFTERWARDS },
  lists: CRISIS_IDS.map(listOf),
});

/** @param answers of the engine; null where the list has no need of them */
export function wrongListOutputOf(
  id: CrisisId,
  facts: TankFacts | null,
  answers: Pick<TankAnswers, "workings"> | null,
): WrongListOutput {
  const parts = facts === null ? null : numbersBehind(id, { facts }, answers);
  const workings = facts === null ? {} : { ...answers?.workings, ...workingsById(troubleFigures({ facts })) };
  return {
    ...{ schema: "grazewell.wrong_list/1", engine: ENGINE_VERSION, before: BEFORE, afterwards: AFTERWARDS },
    list: listOf(id),
    tank: facts === null ? null : { name: facts.name, as_of: facts.asOf },
    numbers: parts === null ? null : parts.map(partData),
    figures: parts === null ? [] : toldWorkings(sentencesOf(parts), workings),
    statement: STATEMENT,
  };
}
