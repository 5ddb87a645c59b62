/** What follows once a medicine has ended: how long the gates stay shut, as advice and as dated care. */
import type { Figure } from "../../engine/types/figure.ts";
import { figureId } from "../../engine/types/figure-id.ts";
import { exact, workedOut } from "../../engine/types/link.ts";
import type { Advice } from "../advice.ts";
import type { CareDate } from "../almanac/care-date.ts";
import type { RecordScene } from "../record-scene.ts";
import { told } from "../sentence.ts";
import { dateWords } from "../words.ts";
import { sourcesOf } from "../working.ts";
import { coursesOf, type MedicineCourse, UNKNOWN_RETURN_DAYS } from "./courses.ts";

/** In ids: letters, digits and hyphens of what was typed. */
const slugOf = ({ medicine, typed }: Pick<MedicineCourse, "medicine" | "typed">): string =>
  medicine?.id ??
  (typed
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replaceAll(/^-|-$/g, "")
    .slice(0, 40) ||
    "unknown");

export const leftFigureId = (course: MedicineCourse): string =>
  figureId.care("medicines", `${slugOf(course)}.left`);
export const backFigureId = (course: MedicineCourse): string =>
  figureId.care("medicines", `${slugOf(course)}.days`);

export function medicineFigures(course: MedicineCourse): Figure[] {
  const { medicine, changes, left, startedOn, endedOn } = course;
  const since = endedOn ?? startedOn;
  return [
    {
      ...{
        id: leftFigureId(course),
        label: `${course.typed}: left of what was dissolved, by water changes alone`,
      },
      ...{ spread: exact(100 * left), unit: "%" },
      working: {
        formulaKey: "arrivals.md#what-is-left",
        formula: "for each water change since, what it left: 1 - its share; multiplied",
        inputs: [
          workedOut("counted since", since === null ? "no day is known" : since),
          ...changes.map(({ on, share }) =>
            workedOut(`water change on ${on}`, `${Math.round(100 * (share ?? 0))} %`),
          ),
          ...(changes.length === 0 ? [workedOut("water changes since", "none with a share logged")] : []),
        ],
        ...{ parameters: [], animals: [], confidence: "computed" },
        wouldChange: [
          "another water change",
          "carbon, which this figure does not count",
          "what rock and sand give back",
        ],
      },
    },
    {
      ...{ id: backFigureId(course), label: `${course.typed}: days from its end before a crew comes back` },
      ...{ spread: exact(medicine?.returnDays.value ?? UNKNOWN_RETURN_DAYS), unit: "d" },
      working: {
        formulaKey: "arrivals.md#when-a-crew-may-come-back",
        formula:
          medicine === null
            ? "not known by its active ingredient: as long as the longest of those that are"
            : "of the facts of this medicine: judgement",
        inputs: [workedOut("ended on", endedOn ?? "not yet")],
        ...{ parameters: [], animals: [], confidence: "judgement" },
        references: sourcesOf(medicine?.said.sources ?? []).map(({ title }) => title),
        wouldChange: ["a test that can tell traces of it", "its active ingredient, where it is not known"],
      },
    },
  ];
}

const endedIn = ({ facts, record, today }: RecordScene): readonly MedicineCourse[] =>
  coursesOf(facts.medicines, record, today).filter(({ endedOn }) => endedOn !== null);

/** Of kind `medicine`: it closes the tank to newcomers until its day. What is still in the water is the bench's own. */
export function afterMedicineAdvice(scene: RecordScene): readonly Advice[] {
  return endedIn(scene).map((course): Advice => {
    const { typed, medicine, endedOn, backOn } = course;
    return {
      id: `medicine.${slugOf(course)}.after`,
      urgency: "next_visit",
      weight: 44,
      about: "medicine",
      do: [
        "Add no crew until ",
        told(dateWords(backOn ?? ""), backFigureId(course)),
        `: ${typed} was in the water.`,
      ],
      why: [
        [
          `It ended on ${dateWords(endedOn ?? "")}. ${medicine?.said.text ?? "What it is made of is not known here: it counts as the worst."}`,
        ],
        [
          "Water changes since then leave ",
          told(`${Math.round(100 * course.left)} %`, leftFigureId(course)),
          " of what was dissolved; carbon takes more, rock gives some back.",
        ],
      ],
      byWhen: [
        `From ${dateWords(backOn ?? "")} on, and only if: ${lowerFirst(medicine?.returnTest.text ?? "you know what it was.")}`,
      ],
      by: backOn,
      wouldChange: [
        medicine === null ? "Its active ingredient, from the label." : "A test that can tell traces of it.",
      ],
      restsOn: [slugOf(course), ...course.entries].join(" "),
      act: { words: "Medicines and their ends", leads: "arrivals" },
      wait: { words: `Wait until ${dateWords(backOn ?? "")}`, leads: "ahead" },
    };
  });
}

const lowerFirst = (text: string): string => text.slice(0, 1).toLowerCase() + text.slice(1);

export function medicineDates(scene: RecordScene): readonly CareDate[] {
  const courses = coursesOf(scene.facts.medicines, scene.record, scene.today);
  return courses.map((course): CareDate => {
    const { typed, medicine, endedOn, backOn } = course;
    const over = endedOn !== null;
    return {
      id: `medicine.${slugOf(course)}.${over ? "back" : "check"}`,
      kind: "medicine",
      on: backOn ?? scene.today,
      ...{ at: null, every: over ? null : 1, until: null, gate: null },
      do: [
        over
          ? `Test for ${typed} before any of the crew comes back.`
          : `Look at the tank under ${typed}: breathing, balance, appetite.`,
      ],
      why: [[medicine?.said.text ?? "What it is made of is not known here: it counts as the worst."]],
      byWhen: [
        over ? `On ${dateWords(backOn ?? "")} at the earliest.` : "Daily, until it is logged as ended.",
      ],
      wouldChange: [over ? "A test that can tell traces of it." : "The vet's word."],
      figures: over ? medicineFigures(course) : [],
      restsOn: [slugOf(course), ...course.entries].join(" "),
      done: over ? null : { kind: "treatment", fields: { step: "ended", substance: typed } },
      leads: "arrivals",
    };
  });
}
