/**
 * A young tank's answers with its start-up. A tank file without a daybook has its dated readings as a record, and where
 * they are enough the runs learn from them as from a daybook.
 */
import type { StartUpOutput } from "../../contract/output/start-up.ts";
import { START_UP } from "../../engine/care/start-up/judgement.ts";
import type { ReadingSeen, TankRecord } from "../../engine/types/record.ts";
import type { TankFacts } from "../../engine/types/tank.ts";
import { learnedOf } from "../learned/learned.ts";
import type { Progress } from "../progress.ts";
import type { TankAnswers } from "../tank-answers.ts";
import { workingOutputOf } from "../working.ts";
import { type StartUpSaid, startUpOf } from "./start-up.ts";

/** The dated readings of a tank file as a record. */
export function recordFromReadings({ readings, asOf }: TankFacts): TankRecord {
  const observations = readings
    .flatMap(({ quantity, value, censored, on }, i): ReadingSeen[] =>
      on === null
        ? []
        : [
            {
              ...{ kind: "reading", entry: `reading ${i}`, on, quantity, value, censored },
              ...{ step: null, flag: null },
            },
          ],
    )
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  return { observations, happenings: [], declined: [], asOf };
}

/** @param record null where there is no daybook; @param facts as taught, where the daybook has taught */
export function startUpFor(facts: TankFacts, record: TankRecord | null, progress: Progress): StartUpSaid {
  if (record !== null) return startUpOf({ facts, record, today: facts.asOf }, progress);
  const told = recordFromReadings(facts);
  const taught = facts.learned === undefined ? learnedOf(facts, told, progress).facts : facts;
  return startUpOf({ facts: taught, record: told, today: facts.asOf }, progress);
}

const isPast = ({ ageDays }: TankFacts): boolean => ageDays.central > START_UP.longestDays;

/** What is said of an older tank, at once; null for one that may still be in it. */
export const pastStartUp = (facts: TankFacts, record: TankRecord): StartUpOutput | null =>
  isPast(facts) ? startUpOf({ facts, record, today: facts.asOf }, () => {}).output : null;

/** Older tanks are past it: nothing is run for them. */
export function withStartUp(answers: TankAnswers, facts: TankFacts, record: TankRecord | null): TankAnswers {
  if (isPast(facts)) return answers;
  const taught = answers.taught ?? null;
  const { output, figures } = startUpFor(
    taught === null ? facts : { ...facts, learned: taught },
    record,
    () => {},
  );
  const own = Object.fromEntries(figures.map((figure) => [figure.id, workingOutputOf(figure, []).figure!]));
  return { ...answers, startUp: output, workings: { ...answers.workings, ...own } };
}
