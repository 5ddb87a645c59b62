/** One side of paper for who looks after the tank meanwhile: plain words, boxes to tick, whom to call, mains first. */
import type { CareDate } from "../../answers/almanac/care-date.ts";
import type { HolidaySpan, Packing } from "../../answers/holiday/packing.ts";
import { dateWords } from "../../answers/words.ts";
import { Sentence } from "./sentence.tsx";

interface SitterView {
  readonly span: HolidaySpan;
  readonly packing: Packing;
  /** What can't wait until the keeper is back. */
  readonly sitter: readonly CareDate[];
  /** ISO date of printing. */
  readonly today: string;
}

/** On one page beside the rest; more is told in words. */
const MOST_BOXES = 42;

export function SitterSheet({ span, packing, sitter, today }: SitterView) {
  const boxes = packing.feedOn.slice(0, MOST_BOXES);
  return (
    <article class="sitter" aria-labelledby="sitter-name">
      <header>
        <h2 id="sitter-name">While the keeper is away</h2>
        <p>
          {dateWords(span.from)} to {dateWords(span.to)}. Printed {dateWords(today)}.
        </p>
      </header>
      <p class="sitter-first">
        <strong>
          Water on the floor, a spark, a burnt smell: stay out of the water, switch off at the fuse box, then
          call.
        </strong>
      </p>
      <section>
        <h3>Each visit</h3>
        <ol>
          <li>
            Dry floor? Pumps running, water over the edge where it should? All fish seen, breathing calmly?
          </li>
          <li>Thermometer: 24 to 27 °C. Write it down: ______________________</li>
          <li>Top up to the mark with the fresh water in the marked can. Nothing else goes in.</li>
          <li>A feeding day: one bag, slowly. Left over after two minutes? Give half of the next one.</li>
          <li>A dead animal: don't reach in. Call.</li>
        </ol>
      </section>
      <section>
        <h3>
          Feeding: <Sentence of={[packing.bags]} />, packed
        </h3>
        <p>
          {packing.weighed ? (
            <>
              A bag holds <Sentence of={[packing.portion]} /> ({packing.food}).
            </>
          ) : (
            "A bag holds one usual day's food."
          )}{" "}
          Only on these days; a day that was missed stays missed.
        </p>
        {boxes.length === 0 ? (
          <p>No feeding day falls into this time. Feed nothing.</p>
        ) : (
          <ul class="boxes sitter-boxes">
            {boxes.map((day) => (
              <li key={day}>
                <span class="box" aria-hidden="true">
                  {" "}
                </span>{" "}
                {dateWords(day).replace(/ \d{4}$/, "")}
              </li>
            ))}
          </ul>
        )}
      </section>
      {sitter.length === 0 ? null : (
        <section>
          <h3>Can't wait</h3>
          <ul>
            {sitter.map(({ id, on, every, do: deed }) => (
              <li key={id}>
                {every === null ? `${dateWords(on)}: ` : "Each visit: "}
                <Sentence of={deed} /> Only as you were shown; not sure: call.
              </li>
            ))}
          </ul>
        </section>
      )}
      <section>
        <h3>Leave alone</h3>
        <ul>
          <li>No more food than the bag, however they beg.</li>
          <li>No water change, no wiping, no moving of animals or rock, no bare hand in the water.</li>
          <li>No sea salt, drops or medicine. Unplug nothing that runs, unless there is water or a spark.</li>
        </ul>
      </section>
      <section>
        <h3>Call</h3>
        <ul class="sitter-calls">
          <li>Me: ________________________</li>
          <li>Somebody near who knows the tank: ________________________</li>
          <li>Aquatic vet: ________________________</li>
          <li>Licensed electrician: ________________________</li>
          <li>Somebody hurt: the emergency number first. Fuse box is: ________________________</li>
        </ul>
        <p>
          Call if fish gasp, two or more are missing, the water is below 23 or above 28 °C, a pump is silent,
          it smells, or you are not sure.
        </p>
      </section>
      <p class="sitter-foot">
        Some animals in here sting, cut or are poisonous: no bare hands. Never release animals or tank water
        into the wild.
      </p>
    </article>
  );
}
