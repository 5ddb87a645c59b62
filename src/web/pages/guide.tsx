/** The field guide without a tank: every animal of the catalogue by kind, with what it eats in a sentence. */
import { dietParts } from "../../answers/animals/diet.ts";
import type { Animal, AnimalGroup } from "../../engine/types/animal.ts";
import { type Page, to } from "../page.ts";
import { AnimalSearch, fitsSearch } from "./animal-search.tsx";

export interface GuideView {
  readonly animals: readonly Animal[];
  readonly search: string;
}

const GROUPS: Readonly<Record<AnimalGroup, string>> = {
  snail: "Snails",
  conch: "Conchs",
  hermit: "Hermit crabs",
  crab: "Crabs",
  shrimp: "Shrimp",
  star: "Sea stars",
  urchin: "Urchins",
  cucumber: "Sea cucumbers",
  slug: "Slugs",
  pod: "Pods",
  worm: "Worms",
  fish: "Fish",
};

const ROLE: Readonly<Record<Animal["role"], string>> = {
  crew: "",
  crew_with_caution: " With caution.",
  hitchhiker: " It comes by itself with rock; nobody buys it.",
  compatibility_only: " Not of the crew; listed for whom it gets on with.",
};

/** Foods named in the list; the rest stands in the entry. */
const FOODS_NAMED = 3;

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
          {(Object.keys(GROUPS) as AnimalGroup[]).map((group) => {
            const some = rows.filter((animal) => animal.group === group);
            if (some.length === 0) return null;
            return (
              <section key={group}>
                <h2>{GROUPS[group]}</h2>
                <ul class="guide">
                  {some.map((animal) => (
                    <li key={animal.id}>
                      <a href={to.guideEntry(animal.id)}>{animal.commonName}</a> eats {foodsOf(animal)}.
                      {ROLE[animal.role]}
                    </li>
                  ))}
                </ul>
              </section>
            );
          })}
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

function foodsOf(animal: Animal): string {
  const names = dietParts(animal)
    .slice(0, FOODS_NAMED)
    .map(({ name }) => name);
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}
