/** One work: what was taken from it, how far it was opened, and which parameters and animals rest on it. */
import type { Source } from "../../catalogue/index.ts";
import type { Animal } from "../../engine/types/animal.ts";
import type { Parameter } from "../../engine/types/parameter.ts";
import { type Page, to } from "../page.ts";
import { unitText } from "../parts/text.ts";
import { OPENED_WORDS, spreadWords } from "./knowledge-words.ts";
import { nameOf } from "./sources.tsx";

export interface SourceView {
  readonly source: Source;
  readonly parameters: readonly Parameter[];
  readonly animals: readonly Animal[];
  /** Growths, hitchhikers, causes and faults of tests, by name. */
  readonly signs: readonly string[];
}

export function sourcePage({ source, parameters, animals, signs }: SourceView): Page {
  const name = source.title ?? source.about;
  return {
    title: `Source: ${name}`,
    tank: null,
    here: null,
    body: (
      <>
        <p class="kind">Source</p>
        <h1>{name}</h1>
        <dl class="facts">
          <Row term="Cited as" text={nameOf(source)} />
          <Row term="Where" text={source.where} />
          <Row term="DOI" text={source.doi} />
          <Row term="What was taken from it" text={source.about} />
          <Row term="How far it was opened" text={OPENED_WORDS[source.opened]} />
          <Row term="Note" text={source.note} />
        </dl>
        <h2>Parameters that rest on it ({parameters.length})</h2>
        {parameters.length === 0 ? <p>None.</p> : null}
        <ul>
          {parameters.map(({ id, meaning, spread, unit }) => (
            <li key={id}>
              <a href={to.parameter(id)}>
                <code>{id}</code>
              </a>{" "}
              {unitText(meaning)}: {spreadWords(spread, unit)}
            </li>
          ))}
        </ul>
        <h2>Animals of which facts rest on it ({animals.length})</h2>
        {animals.length === 0 ? <p>None.</p> : null}
        <ul>
          {animals.map(({ id, commonName }) => (
            <li key={id}>
              <a href={to.guideEntry(id)}>{commonName}</a>
            </li>
          ))}
        </ul>
        {signs.length === 0 ? null : (
          <>
            <h2>Growths, hitchhikers and causes that rest on it ({signs.length})</h2>
            <ul>
              {signs.map((name) => (
                <li key={name}>{name}</li>
              ))}
            </ul>
          </>
        )}
        <p>
          <a href={to.sources()}>All sources</a>
        </p>
      </>
    ),
  };
}

function Row({ term, text }: { readonly term: string; readonly text: string | undefined }) {
  if (text === undefined) return null;
  return (
    <div>
      <dt>{term}</dt>
      <dd>{text}</dd>
    </div>
  );
}
