/** Looking an animal up by any of its names: one field, sent as a plain GET, so that it works without script. */
import type { ComponentChildren } from "preact";

/** What is searched in: names in the shop and in science, and the kind. */
export interface Named {
  readonly name: string;
  readonly also_sold_as: readonly string[];
  readonly scientific_name: string;
  readonly group: string;
}

/** Every word of the search begins a word of its names. */
export function fitsSearch({ name, also_sold_as, scientific_name, group }: Named, search: string): boolean {
  const words = `${name} ${also_sold_as.join(" ")} ${scientific_name} ${group}`
    .toLowerCase()
    .split(/[^\p{L}\d]+/u);
  return search
    .toLowerCase()
    .split(/[^\p{L}\d]+/u)
    .every((part) => words.some((word) => word.startsWith(part)));
}

interface SearchProps {
  readonly search: string;
  /** Address without the search: the way back to all. */
  readonly all: string;
  readonly found: number;
  readonly children: ComponentChildren;
}

export function AnimalSearch({ search, all, found, children }: SearchProps) {
  return (
    <>
      <search>
        <form method="get" action={all} class="search">
          <label for="search" class="label">
            Look one up by name
          </label>
          <div class="input-row">
            <input
              id="search"
              class="input middle"
              type="search"
              name="search"
              value={search}
              autocomplete="off"
            />
            <button type="submit">Look up</button>
          </div>
        </form>
      </search>
      {search === "" ? null : (
        <p>
          {found === 0 ? `Nothing in our list is called "${search}".` : `${found} found for "${search}".`}{" "}
          <a href={all}>All animals</a>
        </p>
      )}
      {children}
    </>
  );
}
