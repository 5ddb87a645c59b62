/** One medicine by its active ingredient: effect on each group, filters and oxygen, how it leaves, when a crew may return. */
import { leftFigureId } from "../../answers/medicines/after.ts";
import type { MedicineCourse } from "../../answers/medicines/courses.ts";
import {
  EFFECT_WORDS,
  evidenceWords,
  GROUP_WORDS,
  REMOVER_WORDS,
  WORKS_WORDS,
} from "../../answers/medicines/words.ts";
import { counted, dateWords } from "../../answers/words.ts";
import { MEDICINE_GROUPS, type Medicine, REMOVERS } from "../../engine/types/medicine.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Notice } from "../parts/notice.tsx";
import { Quantity } from "../parts/quantity.tsx";
import { Table } from "../parts/table.tsx";
import { capital } from "../parts/text.ts";

export interface MedicineView {
  readonly head: TankHead;
  readonly medicine: Medicine;
  /** Where it is, or was, in this tank. */
  readonly course: MedicineCourse | null;
  readonly sources: readonly { readonly key: string; readonly title: string }[];
}

const NITRIFIERS = {
  stops: "Stops the bacteria of the filter: ammonia and nitrite rise.",
  slows: "Slows the bacteria of the filter: test ammonia and nitrite daily.",
  little: "Little known harm to the bacteria of the filter.",
  unknown: "Not known what it does to the bacteria of the filter: test daily.",
} as const;
const OXYGEN = {
  lowers: "Takes oxygen out of the water: strong air, and somebody who looks.",
  little: "Little known effect on oxygen; sick fish need more of it all the same.",
  unknown: "Not known what it does to oxygen: strong air.",
} as const;
const USE = {
  bath: "given into the water",
  dip: "a dip in a vessel of its own",
  food: "given in food",
} as const;

export function medicinePage({ head, medicine, course, sources }: MedicineView): Page {
  const { name, also, use, groups, nitrifiers, oxygen, said, remove, goneDays, returnDays, returnTest } =
    medicine;
  const title = `${capital(name)}: ${killedWords(medicine)}`;
  return {
    title,
    tank: head,
    here: "arrivals",
    body: (
      <>
        <h1>{title}</h1>
        <p class="gloss">
          {capital(USE[use])}
          {also.length === 0 ? "." : `; also written ${also.join(", ")}.`} No amounts here: those are the
          vet's and the label's.
        </p>
        <Notice kind="look" title="Before anything goes in">
          <p>
            Ask an aquatic vet. Treat in a hospital tank, never in the tank of the crew. Treated water goes
            down the drain as local rules allow, never into the wild.
          </p>
          {medicine.people === null ? null : <p>{medicine.people.text}</p>}
        </Notice>
        <p>
          {said.text} <span class="hint">({evidenceWords(said.evidence)})</span>
        </p>
        {course === null ? null : <Here course={course} />}
        <Table
          caption={`What ${name} does to whom`}
          columns={[{ name: "who" }, { name: "effect" }, { name: "how it is known" }]}
          rows={MEDICINE_GROUPS.map((group) => [
            capital(GROUP_WORDS[group]),
            EFFECT_WORDS[groups[group].value],
            evidenceWords(groups[group].evidence),
          ])}
        />
        <section>
          <h2>Filter and oxygen</h2>
          <ul>
            <li>
              {NITRIFIERS[nitrifiers.value]} <span class="hint">({evidenceWords(nitrifiers.evidence)})</span>
            </li>
            <li>
              {OXYGEN[oxygen.value]} <span class="hint">({evidenceWords(oxygen.evidence)})</span>
            </li>
          </ul>
        </section>
        <section>
          <h2>How it leaves</h2>
          <ul>
            {REMOVERS.map((by) => (
              <li key={by}>
                {capital(REMOVER_WORDS[by])}: {WORKS_WORDS[remove[by].works.value]}. {remove[by].said.text}{" "}
                <span class="hint">({evidenceWords(remove[by].said.evidence)})</span>
              </li>
            ))}
          </ul>
          <p>
            {goneDays === null
              ? "How fast it goes was found in no source."
              : `None to be found after about ${goneDays.central} days (${goneDays.low} to ${goneDays.high}): ${evidenceWords(goneDays.evidence)}.`}
          </p>
          <p>
            <a href={to.sum(head.id, "medicine-left")}>How much water changes and carbon leave</a>
          </p>
        </section>
        <section>
          <h2>When a crew may come back</h2>
          <p>
            {returnDays.value === 0
              ? "At once"
              : `Not before ${counted(returnDays.value, "day")} after its end`}
            , and only if: {returnTest.text} <span class="hint">({evidenceWords(returnDays.evidence)})</span>
          </p>
          {medicine.dont.length === 0 ? null : (
            <>
              <h3>Do not</h3>
              <ul>
                {medicine.dont.map(({ text }) => (
                  <li key={text}>{text}</li>
                ))}
              </ul>
            </>
          )}
        </section>
        <section>
          <h2>Sources</h2>
          <ul>
            {sources.map(({ key, title: words }) => (
              <li key={key}>
                <a href={to.source(key)}>{words}</a>
              </li>
            ))}
          </ul>
        </section>
        <p>
          <a href={to.tank(head.id, "arrivals")}>Arrivals and all medicines</a>
        </p>
      </>
    ),
  };
}

/** "kills shrimps and pods, corals", at most three groups, or that it is usually borne. */
function killedWords({ groups }: Medicine): string {
  const killed = MEDICINE_GROUPS.filter((group) => group !== "fish" && groups[group].value === "kills");
  if (killed.length > 3) return "kills most of a crew";
  if (killed.length > 0) return `kills ${killed.map((group) => GROUP_WORDS[group]).join(", ")}`;
  const borne = MEDICINE_GROUPS.every(
    (group) => groups[group].value === "bears" || groups[group].value === "unknown",
  );
  return borne ? "borne by a crew, so far as is known" : "no medicine for a tank with a crew";
}

function Here({ course }: { readonly course: MedicineCourse }) {
  const { startedOn, endedOn, backOn } = course;
  return (
    <Notice kind={endedOn === null ? "danger" : "look"} title="In this tank">
      <p>
        {startedOn === null ? "Told in the questions" : `Put in on ${dateWords(startedOn)}`}
        {endedOn === null ? ", not said to have ended." : `, ended on ${dateWords(endedOn)}.`}{" "}
        {backOn === null ? "" : `No crew before ${dateWords(backOn)}. `}Water changes since then leave{" "}
        <Quantity figure={leftFigureId(course)}>{Math.round(100 * course.left)} %</Quantity> of what was
        dissolved.
      </p>
    </Notice>
  );
}
