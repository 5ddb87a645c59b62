/** One parameter of the science: what it means, value and range, how it is known, rivals, and what stands on it. */
import type { Source } from "../../catalogue/index.ts";
import type { Parameter } from "../../engine/types/parameter.ts";
import { type Page, to } from "../page.ts";
import { capital, unitText } from "../parts/text.ts";
import { EVIDENCE_WORDS, OPENED_WORDS, spreadWords } from "./knowledge-words.ts";

export interface ParameterView {
  readonly parameter: Parameter;
  readonly sources: readonly Source[];
  /** Where it is used, each in a sentence. */
  readonly uses: readonly string[];
  /** Symbols of the model that take their range from it. */
  readonly rangeOf: readonly string[];
}

export function parameterPage({ parameter, sources, uses, rangeOf }: ParameterView): Page {
  const { id, meaning, unit, spread, evidence, range, rivals, note } = parameter;
  return {
    title: `Parameter ${id}: ${meaning}`,
    tank: null,
    here: null,
    body: (
      <>
        <p class="kind">
          Parameter <code>{id}</code>
        </p>
        <h1>{unitText(meaning)}</h1>
        <p>
          {spreadWords(spread, unit)}
          {spread.low === spread.high
            ? ", taken as exact."
            : "; 18 of 20 runs draw from the range in brackets."}
        </p>
        <h2>How it is known</h2>
        <p>{capital(EVIDENCE_WORDS[evidence])}.</p>
        <ul>
          {sources.map((source) => (
            <li key={source.key}>
              <a href={to.source(source.key)}>{source.title ?? source.about}</a> (
              {OPENED_WORDS[source.opened]})
            </li>
          ))}
        </ul>
        {note === undefined ? null : <p>{unitText(note)}</p>}
        {range === undefined ? null : (
          <p>
            Its range is that of{" "}
            <a href={to.parameter(range)}>
              <code>{range}</code>
            </a>
            .
          </p>
        )}
        {rivals === undefined || rivals.length === 0 ? null : (
          <>
            <h2>Other values found, not chosen</h2>
            <ul>
              {rivals.map((rival) => (
                <li key={`${rival.source} ${rival.value}`}>
                  {spreadWords({ low: rival.value, central: rival.value, high: rival.value }, unit)},{" "}
                  <a href={to.source(rival.source)}>{rival.source}</a>
                  {rival.note === undefined ? "" : `: ${unitText(rival.note)}`}
                </li>
              ))}
            </ul>
          </>
        )}
        <h2>What stands on it</h2>
        <ul>
          {uses.map((text) => (
            <li key={text}>{text}</li>
          ))}
          {rangeOf.map((symbol) => (
            <li key={symbol}>
              The range of{" "}
              <a href={to.parameter(symbol)}>
                <code>{symbol}</code>
              </a>
            </li>
          ))}
          {uses.length + rangeOf.length === 0 ? (
            <li>No shown figure rests on it alone: the runs draw it.</li>
          ) : null}
        </ul>
        <p>
          <a href={to.sources()}>All sources</a>
        </p>
      </>
    ),
  };
}
