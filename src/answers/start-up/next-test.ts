/** The next test of a start-up, as a dated duty: days between tests are common practice, no source. */
import { addDays } from "../../contract/quantity/calendar.ts";
import type { CareDate } from "../almanac/care-date.ts";
import type { RecordScene } from "../record-scene.ts";
import { dateWords } from "../words.ts";
import { type Stage, type StageFound, stageOf } from "./stage.ts";

/** Days from one test to the next while something can be read. */
const EVERY_DAYS = 3;

export interface NextTest {
  readonly on: string;
  /** The dose is to be looked at, a dose is to be given and looked at, or a test is enough. */
  readonly what: "look" | "dose" | "test";
}

/** Null where none is due: not filled, proven, past. */
export function nextTestOf(found: StageFound, today: string): NextTest | null {
  const { stage, tan, no2, doses, stocked } = found;
  if (stage === "not_filled" || stage === "proven" || stage === "past") return null;
  const open = doses.findLast(({ gone, lookOn }) => gone === null && lookOn >= today);
  if (open !== undefined) return { on: open.lookOn, what: "look" };
  if (stage === "no_data") return { on: today, what: "test" };
  if ((stage === "waiting" || stage === "clear") && !stocked) return { on: today, what: "dose" };
  const last =
    [tan?.on, no2?.on]
      .filter((on) => on !== undefined)
      .sort()
      .at(-1) ?? today;
  const due = addDays(last, EVERY_DAYS);
  return { on: due < today ? today : due, what: "test" };
}

const DO: Readonly<Record<NextTest["what"], string>> = {
  test: "Test ammonia and nitrite: how far the start-up has come.",
  dose: "Dose ammonia for the start-up's test, and look at it a day later.",
  look: "Test ammonia and nitrite a day after the dose: is all of it gone?",
};

const WHY: Readonly<Record<Stage, string>> = {
  not_filled: "",
  no_data: "No test of both within ten days says where the nitrogen cycle stands.",
  waiting:
    "Both were too low for the tests to show, but no ammonia was ever seen: two noughts say nothing of the bacteria.",
  ammonia: "The last test showed ammonia.",
  both: "The last tests showed ammonia and nitrite.",
  nitrite: "The last test showed nitrite.",
  clear: "Both were too low for the last tests to show; nought on one day is not enough.",
  proven: "",
  past: "",
};

export function startUpDates(scene: RecordScene): readonly CareDate[] {
  const found = stageOf(scene);
  const next = nextTestOf(found, scene.today);
  if (next === null) return [];
  return [
    {
      ...{ id: "start_up.test", kind: "start_up", on: next.on, at: null, until: null },
      every: next.what === "test" ? EVERY_DAYS : null,
      gate: next.what === "dose" ? ["Only if nothing lives in the tank."] : null,
      do: [DO[next.what]],
      why: [[WHY[found.stage]]],
      byWhen: [`On ${dateWords(next.on)}.`],
      wouldChange: ["A test that reads otherwise, or an animal that moves in."],
      figures: [],
      restsOn: `${found.stage} ${next.what} ${found.tan?.on ?? ""} ${found.no2?.on ?? ""}`,
      done:
        next.what === "dose"
          ? { kind: "treatment", fields: { step: "started" } }
          : { kind: "reading", fields: { quantity: "no2_mg_per_l" } },
      leads: "start-up",
    },
  ];
}
