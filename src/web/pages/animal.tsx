/**
 * One animal as an entry of a field guide, in sentences: first how it fits the tank, where there is one, then what it
 * eats, does, needs and minds, and how that is known.
 */
import { entryOf, type Section } from "../../answers/animals/entry.ts";
import { type AnimalRow, capital, fitWords } from "../../answers/animals/fit-words.ts";
import { opened, plain } from "../../answers/sentence.ts";
import { dateWords } from "../../answers/words.ts";
import type { Source } from "../../catalogue/index.ts";
import type { Animal } from "../../engine/types/animal.ts";
import { SHELF_NAME, SHELVES } from "../../engine/types/shelf.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Sentence } from "./sentence.tsx";

export interface AnimalView {
  readonly animal: Animal;
  readonly sources: readonly Source[];
  /** The tank that it is asked of, with what the answers say of it there; null in the guide alone. */
  readonly here: { readonly head: TankHead; readonly row: AnimalRow; readonly asOf: string } | null;
}

export function animalPage({ animal, sources, here }: AnimalView): Page {
  const { commonName, scientificName, nameConfidence, alsoSoldAs } = animal;
  const names = alsoSoldAs.filter((name) => name !== commonName);
  return {
    title: here === null ? capital(commonName) : `${capital(commonName)} in ${here.head.name}`,
    tank: here?.head ?? null,
    here: here === null ? null : "animals",
    body: (
      <article class="entry">
        <h1>{capital(commonName)}</h1>
        <p>
          <i>{scientificName}</i>: {nameConfidence}.
          {names.length === 0 ? "" : ` Also sold as ${names.join(", ")}.`}
        </p>
        {here === null ? null : <Here {...here} />}
        {entryOf(animal)
          .filter(({ title }) => title !== KNOWN)
          .map((section) => (
            <EntrySection key={section.title} section={section} figures={here?.row.figures ?? {}} />
          ))}
        <HowKnown animal={animal} sources={sources} />
        <p>
          {here === null ? (
            <a href={to.guide()}>All animals</a>
          ) : (
            <a href={to.tank(here.head.id, "animals")}>All animals, and how they fit this tank</a>
          )}
        </p>
      </article>
    ),
  };
}

function Here({ head, row, asOf }: NonNullable<AnimalView["here"]>) {
  if (row.fit === null) return null;
  const sentences = fitWords(row, row.fit);
  return (
    <section class="here">
      <h2>
        In {head.name}, on {dateWords(asOf)}
      </h2>
      {sentences.map((sentence) => (
        <p key={plain(sentence)}>
          <Sentence of={sentence} />
        </p>
      ))}
    </section>
  );
}

interface EntrySectionProps {
  readonly section: Section;
  /** Fact → its working in this tank; none in the guide alone. */
  readonly figures: Readonly<Record<string, string>>;
}

function EntrySection({ section: { title, sentences }, figures }: EntrySectionProps) {
  const doors = doorsOf(figures);
  return (
    <section>
      <h2>{title}</h2>
      {sentences.map((text) => (
        <p key={text}>
          <Sentence of={opened(text, doors)} />
        </p>
      ))}
    </section>
  );
}

/** Where a number stands in the entry's sentences, and the fact that it is. */
const NUMBERS: readonly (readonly [RegExp, fact: string])[] = [
  [/^(?:One eats|A thousand eat) about ([\d.]+ rations a day \([^)]*\))/, "intake"],
  [/weight on ([\d.]+);/, "break_even"],
  [/lasts about (\d+ days \([^)]*\))/, "without_food"],
  [/a display of at least (\d+ L)/, "min_tank"],
  [/held seawater for (\d+ days)/, "min_tank_age"],
  [/^Each has room in about ([\d.]+ L \([\d.]+ to [\d.]+)/, "spacing"],
  [/^It grows to about ([\d.]+ mm \([^)]*\))/, "size"],
  [/lives about ([\d.]+ years? \([^)]*\))/, "lifespan"],
  [/^It lives at ([\d.]+ to [\d.]+ °C)/, "temperature"],
  [/at a salinity of ([\d.]+ to [\d.]+)/, "salinity"],
  [/^Bring at least (\d+) together/, "group_min"],
  [/^No more than (\d+) get on/, "max_per_tank"],
  [/^Keep about ([\d.]+ empty shells?)/, "empty_shells"],
  ...SHELVES.map((shelf): readonly [RegExp, string] => [
    new RegExp(`^Of its food.*is ${SHELF_NAME[shelf]} \\((\\d+ %)\\)`),
    `eats_${shelf}`,
  ]),
];

const doorsOf = (figures: Readonly<Record<string, string>>): readonly (readonly [RegExp, string])[] =>
  NUMBERS.flatMap(([number, fact]) => {
    const figure = figures[fact];
    return figure === undefined ? [] : [[number, figure] as const];
  });

const KNOWN = "How it is known";

function HowKnown({ animal, sources }: { readonly animal: Animal; readonly sources: readonly Source[] }) {
  const told = entryOf(animal)
    .find(({ title }) => title === KNOWN)
    ?.sentences.filter((text) => !text.startsWith("Source "));
  return (
    <section>
      <h2>{KNOWN}</h2>
      {told?.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <ul>
        {sources.map(({ key, title, about }) => (
          <li key={key}>
            <a href={to.source(key)}>{title ?? about}</a>
          </li>
        ))}
      </ul>
    </section>
  );
}
