/** Beneath a wave's animals and gate: what brings it sooner or stops it, why so many of each, and what can hurt. */
import { inFull } from "../../answers/animals/fit-words.ts";
import { linked, maybeTold } from "../../answers/sentence.ts";
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { chance, counted, dateWords, withDates } from "../../answers/words.ts";
import { SHELF_NAME, type ShelfId } from "../../engine/types/shelf.ts";
import { to } from "../page.ts";
import { Disclosure } from "../parts/disclosure.tsx";
import { Quantity } from "../parts/quantity.tsx";
import { capital, listed, lowerFirst } from "../parts/text.ts";
import { Sentence } from "./sentence.tsx";

type Wave = TankAnswers["waves"]["waves"][number];
type Check = TankAnswers["waves"]["check"][number];

interface WaveMoreProps {
  readonly tank: string;
  readonly wave: Wave;
  readonly check: readonly Check[];
  /** What can hurt people or poison the tank, by animal. */
  readonly hazards: Readonly<Record<string, readonly string[]>>;
  /** Its window is open today: nothing brings it sooner. */
  readonly open: boolean;
}

export function WaveMore({ tank, wave, check, hazards, open }: WaveMoreProps) {
  return (
    <div id={`wave-${wave.number}`}>
      <p>
        Earliest day: <Quantity figure={wave.figures.from}>{dateWords(wave.from)}</Quantity>. It counts on{" "}
        <Quantity figure={wave.figures.planned_share}>{Math.round(100 * wave.planned_share)} %</Quantity> of
        what grows in the leaner runs.
      </p>
      <dl class="gate-more">
        {open ? null : (
          <div>
            <dt>Sooner if</dt>
            <dd>{inFull(wave.sooner_if)}</dd>
          </div>
        )}
        <div>
          <dt>Stop if</dt>
          <dd>{inFull(wave.stop_if)}</dd>
        </div>
      </dl>
      <Mind animals={wave.animals} hazards={hazards} />
      <Disclosure summary="Why so many of each, and how they do">
        <ul class="wave-notes">
          {wave.animals.map((animal) => (
            <WaveAnimal
              key={animal.id}
              tank={tank}
              animal={animal}
              check={check.find(({ id }) => id === animal.id)}
            />
          ))}
        </ul>
      </Disclosure>
    </div>
  );
}

interface MindProps {
  readonly animals: Wave["animals"];
  readonly hazards: Readonly<Record<string, readonly string[]>>;
}

/** What can hurt, and what each caution is about: never folded away. */
function Mind({ animals, hazards }: MindProps) {
  const cautions = new Map<string, string[]>();
  for (const { name, cautions: some } of animals)
    for (const text of some) cautions.set(text, [...(cautions.get(text) ?? []), name]);
  return (
    <>
      {animals.map(({ id, name }) =>
        (hazards[id] ?? []).length === 0 ? null : (
          <p key={id} class="caution">
            <strong>Caution, {name}.</strong> {(hazards[id] ?? []).join(" ")}
          </p>
        ),
      )}
      {[...cautions].map(([text, names]) => (
        <p key={text}>
          {capital(listed(names))}: {lowerFirst(text)}
        </p>
      ))}
      {animals.map(({ id, name, spare_shells, figures }) =>
        spare_shells === 0 ? null : (
          <p key={id}>
            Bring <Sentence of={[maybeTold(counted(spare_shells, "empty shell"), figures.spare_shells)]} /> of
            a size up for the {name} to change into.
          </p>
        ),
      )}
    </>
  );
}

interface WaveAnimalProps {
  readonly tank: string;
  readonly animal: Wave["animals"][number];
  readonly check: Check | undefined;
}

function WaveAnimal({ tank, animal, check }: WaveAnimalProps) {
  const { id, name, count, eats, binding, only_if, figures } = animal;
  return (
    <li>
      <p>
        <Quantity figure={figures.count}>{counted(count, name)}</Quantity> {count === 1 ? "eats" : "eat"}{" "}
        {listed(eats.map((shelf) => SHELF_NAME[shelf as ShelfId]))}. No more because of{" "}
        <Sentence of={linked(withDates(binding.text), binding.figure)} />.{" "}
        <a href={to.animal(tank, id)}>About {count === 1 ? "it" : "them"}</a>
      </p>
      {check === undefined ? null : (
        <p>
          {check.heads === 1 ? "" : "Half or more of "}
          {counted(check.heads, name)} alive 90 days after the last came, if nobody helps:{" "}
          <Quantity figure={check.figures.alive}>{chance(check.alive_of_20)}</Quantity>
          {check.explained === null ? "." : `; ${check.explained}.`}
        </p>
      )}
      {only_if.map((text) => (
        <p key={text}>{text}</p>
      ))}
    </li>
  );
}
