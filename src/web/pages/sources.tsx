/** All works that the facts rest on, those that were opened first, and what no work stands behind said as such. */
import type { Source } from "../../catalogue/index.ts";
import { type Page, to } from "../page.ts";
import { capital } from "../parts/text.ts";
import { OPENED_WORDS } from "./knowledge-words.ts";

export interface SourcesView {
  readonly sources: readonly Source[];
  /** How many parameters and animals rest on each, by key. */
  readonly cited: ReadonlyMap<string, number>;
}

/** From the most that was seen of a work to none. */
const ORDER: readonly Source["opened"][] = [
  "whole",
  "page",
  "passage",
  "abstract",
  "source-code",
  "not-opened",
  "none",
];

export function sourcesPage({ sources, cited }: SourcesView): Page {
  const works = sources.filter(({ opened }) => opened !== "none").length;
  const unread = sources.filter(({ opened }) => opened === "not-opened").length;
  return {
    title: `Sources: ${works} works, ${unread} of them not opened`,
    tank: null,
    here: null,
    body: (
      <>
        <h1>Sources: which facts stand behind it?</h1>
        <p>
          {works} works stand behind the figures; of {unread} we know only what others say of them. Where a
          figure is our judgement or comes from memory, that is said too. Every number of a tank opens its
          working, and the working names its parameters and these.
        </p>
        {ORDER.map((opened) => {
          const some = sources.filter((source) => source.opened === opened);
          if (some.length === 0) return null;
          return (
            <section key={opened}>
              <h2>
                {capital(OPENED_WORDS[opened])} ({some.length})
              </h2>
              <ul class="sources">
                {some.map((source) => (
                  <li key={source.key}>
                    <a href={to.source(source.key)}>{nameOf(source)}</a>
                    {citedWords(cited.get(source.key) ?? 0)}
                  </li>
                ))}
              </ul>
            </section>
          );
        })}
      </>
    ),
  };
}

/** "Title, authors, year", as far as known. */
export function nameOf({ title, about, authors, year }: Source): string {
  return [title ?? about, authors, year].filter((part) => part !== undefined).join(", ");
}

const citedWords = (count: number): string =>
  count === 0
    ? ""
    : `: ${count} ${count === 1 ? "parameter or animal rests" : "parameters and animals rest"} on it`;
