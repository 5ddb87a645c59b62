/** What a start-up asks for now. A stocked tank in which ammonia or nitrite can be read is the bench's danger, not told twice. */
import type { Advice } from "../advice.ts";
import type { RecordScene } from "../record-scene.ts";
import { dateWords } from "../words.ts";
import { nextTestOf } from "./next-test.ts";
import { type Stage, stageOf } from "./stage.ts";

const DO: Readonly<Partial<Record<Stage, string>>> = {
  no_data: "Test ammonia and nitrite: nobody knows where the start-up stands.",
  waiting: "Give the filter its first ammonia, then test every third day.",
  ammonia: "Wait: ammonia is still there. Test again, and add nothing that lives.",
  both: "Wait: ammonia is going and nitrite is there. Test again, and add nothing that lives.",
  nitrite: "Wait for nitrite to go. Test again, and add nothing that lives.",
  clear: "Dose ammonia once and test a day later: one nought is not enough.",
};

export function startUpAdvice(scene: RecordScene): readonly Advice[] {
  const found = stageOf(scene);
  const { stage, stocked } = found;
  const next = nextTestOf(found, scene.today);
  const deed = DO[stage];
  if (next === null || deed === undefined || stocked) return [];
  const tests = [found.tan, found.no2].flatMap((value) => (value === null ? [] : [value.on]));
  const last = tests.toSorted().at(-1);
  return [
    {
      id: "start_up",
      urgency: "this_week",
      weight: 47,
      about: "start_up",
      do: [next.what === "look" ? "Test ammonia and nitrite a day after the dose." : deed],
      why: [
        [
          last === undefined
            ? "No test of the last ten days."
            : `By the tests up to ${dateWords(last)}. Ammonia goes first, then nitrite; bacteria for nitrite come last.`,
        ],
      ],
      byWhen: [`On ${dateWords(next.on)}.`],
      by: next.on,
      wouldChange: ["A test of both, logged with its day."],
      restsOn: `${stage} ${next.what} ${last ?? ""}`,
      act: { words: "Start-up, step by step", leads: "start-up" },
      wait: { words: "Wait: bacteria need weeks, and nothing is lost", leads: "ahead" },
    },
  ];
}
