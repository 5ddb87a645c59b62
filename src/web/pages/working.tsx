/**
 * How a figure came about: value with range, formula, what went in and from where, parameters with range and source,
 * confidence, what would change it. Alone as a page, and as an article that opens over another page.
 */
import { dateWords, rationsADay, withDates } from "../../answers/words.ts";
import type { WorkingFigure } from "../../answers/working.ts";
import { sources } from "../../catalogue/index.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Quantity } from "../parts/quantity.tsx";
import { Table } from "../parts/table.tsx";
import { capital, unitText } from "../parts/text.ts";
import {
  CONFIDENCE_WORDS,
  EVIDENCE_WORDS,
  OPENED_WORDS,
  ORIGIN_WORDS,
  spreadWords,
} from "./knowledge-words.ts";

export interface WorkingView {
  /** Null where it belongs to no tank. */
  readonly head: TankHead | null;
  readonly figure: WorkingFigure;
  /** ISO date of the facts that it was worked out from. */
  readonly asOf: string;
}

/** Of a figure that belongs to a tank. */
export interface TankWorkingView extends WorkingView {
  readonly head: TankHead;
}

export function workingPage(view: WorkingView): Page {
  return {
    title: `How do you know? ${view.figure.label}`,
    tank: view.head,
    here: null,
    body: <WorkingArticle {...view} />,
  };
}

/** What a range holds: of a sum, which has no runs, the doubts of what went in. */
const rangeWords = (id: string): string =>
  id.startsWith("sum.")
    ? "; the range in brackets is what the tests and the equation leave open, 9 times of 10."
    : "; 18 of 20 runs lie in the range in brackets.";

export function WorkingArticle({ head, figure, asOf }: WorkingView) {
  return (
    <article class="working" data-working={figure.id}>
      <p class="kind">Working: how do you know?</p>
      <h1>{capital(unitText(figure.label))}</h1>
      <p class="working-value">
        {spreadWords(figure.value, figure.unit)}
        {inRations(figure)}
        {figure.value.low === figure.value.high ? "." : rangeWords(figure.id)}
      </p>
      <h2>Formula</h2>
      <p>{words(figure.formula)}</p>
      <p class="note">
        Explained in the program's own papers: <code>{figure.formula_at}</code>
      </p>
      <Inputs figure={figure} asOf={asOf} />
      <Parameters figure={figure} />
      <AnimalFacts head={head} figure={figure} />
      <References of={figure.references} />
      {standsAlone(figure) ? (
        <p>
          It follows from what you said of this tank, or from what is assumed where you did not: no parameter
          and no source enters it.
        </p>
      ) : null}
      <h2>Confidence</h2>
      <p>
        {capital(figure.confidence)}: {CONFIDENCE_WORDS[figure.confidence] ?? ""}.
      </p>
      {figure.would_change.length === 0 ? null : (
        <>
          <h2>What would change it most</h2>
          <ul>
            {figure.would_change.slice(0, 2).map((text) => (
              <li key={text}>{capital(words(text))}</li>
            ))}
          </ul>
        </>
      )}
    </article>
  );
}

const standsAlone = ({ inputs, parameters, animals, references }: WorkingFigure): boolean =>
  parameters.length + animals.length + references.length === 0 &&
  inputs.every((input) => input.figure === null);

/** Food is reckoned in carbon and told in rations. */
const inRations = ({ unit, value }: WorkingFigure): string =>
  unit === "mg C/d" ? `, that is ${unitText(rationsADay(value.central))}` : "";

/** A text of the engine's: dates in words, units with their signs. */
const words = (text: string): string => unitText(withDates(text));

function Inputs({ figure, asOf }: { readonly figure: WorkingFigure; readonly asOf: string }) {
  if (figure.inputs.length === 0) return null;
  return (
    <>
      <h2>What went in</h2>
      <Table
        caption={`As the tank stood on ${dateWords(asOf)}`}
        columns={[{ name: "Input" }, { name: "Value" }, { name: "Where it comes from" }]}
        rows={figure.inputs.map(({ label, value, origin, figure: id }) => [
          capital(words(label)),
          id === null ? words(value) : <Quantity figure={id}>{withDates(value)}</Quantity>,
          ORIGIN_WORDS[origin],
        ])}
      />
    </>
  );
}

function Parameters({ figure }: { readonly figure: WorkingFigure }) {
  if (figure.parameters.length === 0) return null;
  return (
    <>
      <h2>Parameters</h2>
      <Table
        caption="Each with the range that 18 of 20 runs draw from"
        columns={[
          { name: "Parameter" },
          { name: "Value and range" },
          { name: "How it is known" },
          { name: "Source" },
        ]}
        rows={figure.parameters.map(({ id, meaning, value, unit, evidence, sources }) => [
          <>
            <a href={to.parameter(id)}>
              <code>{id}</code>
            </a>{" "}
            {unitText(meaning)}
          </>,
          spreadWords(value, unit),
          EVIDENCE_WORDS[evidence as keyof typeof EVIDENCE_WORDS] ?? evidence,
          <SourceLinks sources={sources} />,
        ])}
      />
    </>
  );
}

const FIELDS = [
  ["intakeMgCPerDay", "what one eats a day"],
  ["breakEvenIntakeMgCPerDay", "what keeps its weight"],
  ["diet", "shares of its diet"],
  ["lifespanYears", "its age"],
  ["spacingLitresPerAnimal", "its room"],
] as const;

function AnimalFacts({ head, figure }: { readonly head: TankHead | null; readonly figure: WorkingFigure }) {
  return (
    <>
      {figure.animals.map(({ id, name, basis, sources }) => (
        <section key={id}>
          <h2>
            Facts of the <a href={head === null ? to.guideEntry(id) : to.animal(head.id, id)}>{name}</a>
          </h2>
          <ul>
            {FIELDS.flatMap(([field, what]) =>
              basis[field] === undefined
                ? []
                : [<li key={field}>{`${capital(what)}: ${unitText(basis[field])}`}</li>],
            )}
          </ul>
          <p>
            Sources: <SourceLinks sources={sources} />
          </p>
        </section>
      ))}
    </>
  );
}

/** Works that an equation or a table was taken from: by their key where the list of sources has them. */
function References({ of }: { readonly of: readonly string[] }) {
  if (of.length === 0) return null;
  return (
    <>
      <h2>Published works</h2>
      <ul class="references">
        {of.map((work) => {
          const known = sources.get(work);
          return (
            <li key={work}>
              {known === undefined ? (
                unitText(work)
              ) : (
                <a href={to.source(work)}>{known.title ?? known.about}</a>
              )}
            </li>
          );
        })}
      </ul>
    </>
  );
}

type SourceRow = WorkingFigure["parameters"][number]["sources"][number];

function SourceLinks({ sources }: { readonly sources: readonly SourceRow[] }) {
  if (sources.length === 0) return <>none</>;
  return (
    <ul class="source-links">
      {sources.map(({ key, title, opened }) => (
        <li key={key}>
          <a href={to.source(key)}>{title}</a> ({OPENED_WORDS[opened as keyof typeof OPENED_WORDS] ?? opened})
        </li>
      ))}
    </ul>
  );
}
