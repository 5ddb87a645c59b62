/** The field guide without a tank: every animal of the catalogue by kind, with what it eats in a sentence. */
import { byKind, eatsLine } from "../../answers/animals/guide.ts";
import type { Animal } from "../../engine/types/animal.ts";
import { type Page, to } from "../page.ts";
import { AnimalSearch, fitsSearch } from "./animal-search.tsx";

export interface GuideView {
  readonly animals: readonly Animal[];
  readonly search: string;
}

export function guidePage({ animals, search }: GuideView): Page {
  const rows = animals.filter((animal) => search === "" || fitsSearch(asNamed(animal), search));
  return {
    title: `Field guide: ${animals.length} animals`,
    tank: null,
    here: null,
    body: (
      <>
        <h1>Field guide: {animals.length} animals that clean, or live beside those that do</h1>
        <p class="gloss">
          What each eats, needs and minds. How one fits your own tank is told on the tank's page of animals.
        </p>
        <AnimalSearch search={search} all={to.guide()} found={rows.length}>
          {byKind(rows).map(({ title, animals: some }) => (
            <section key={title}>
              <h2>{title}</h2>
              <ul class="guide">
                {some.map((animal) => (
                  <li key={animal.id}>
                    <a href={to.guideEntry(animal.id)}>{animal.commonName}</a> {eatsLine(animal)}
                  </li>
                ))}
              </ul>
            </section>
          ))}
        </AnimalSearch>
      </>
    ),
  };
}

const asNamed = ({ commonName, alsoSoldAs, scientificName, group }: Animal) => ({
  name: commonName,
  also_sold_as: alsoSoldAs,
  scientific_name: scientificName,
  group,
});
