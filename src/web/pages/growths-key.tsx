/**
 * A trait key, one question at a time or several at once, by plain forms: what it may be so far, what speaks for and
 * against it, what to do and not to do. "Can't tell" is an answer, and so is the key's own "can't tell yet".
 */

import { Fragment } from "preact";
import type { CausesTold } from "../../answers/growths/causes.ts";
import { type KeyFound, type KeyName, SUSPECTED_FROM, saidWords } from "../../answers/growths/key.ts";
import { chance } from "../../answers/words.ts";
import type { FoundOutput } from "../../contract/output/growths.ts";
import type { GrowthFact, HitchhikerFact, KeyQuestion } from "../../engine/types/diagnosis.ts";
import { SHELF_NAME } from "../../engine/types/shelf.ts";
import { to } from "../page.ts";
import { Choices } from "../parts/choices.tsx";
import { Disclosure } from "../parts/disclosure.tsx";
import { Notice } from "../parts/notice.tsx";
import { capital } from "../parts/text.ts";
import { Causes, Hidden, Lines, queryOf } from "./growths-parts.tsx";

export interface KeyView {
  readonly kind: "key";
  readonly name: KeyName;
  /** Accepted so far: `trait.ID` yes or no, `skip.QUESTION` 1. */
  readonly params: Readonly<Record<string, string>>;
  readonly found: KeyFound;
  /** Questions answered or skipped, each with the names of its own params. */
  readonly answered: readonly { readonly question: KeyQuestion; readonly names: readonly string[] }[];
  /** Why a growth that was named may grow here. */
  readonly causes: CausesTold | null;
}

const TITLES: Readonly<Record<KeyName, string>> = {
  growth: "What is this growth?",
  animal: "What is this animal, or what are these dots?",
};
export const keyTitle = (name: KeyName): string => TITLES[name];

/** Asked at once, for those who would rather fill in one form. */
const SEVERAL = 8;
const LIKELY_TOLD = 4;

export function KeyPart({ tank, view }: { readonly tank: string; readonly view: KeyView }) {
  const { name, found } = view;
  return (
    <>
      <h1>{keyTitle(name)}</h1>
      <Finding view={view} />
      {found.named === null ? null : <Named tank={tank} view={view} />}
      {found.named === null ? null : <h2>To be surer</h2>}
      <Ask tank={tank} view={view} />
      <Answered tank={tank} view={view} />
      {found.named === null ? null : <ReadIn thing={found.named} />}
      {view.causes === null ? null : <WhyHere causes={view.causes} />}
    </>
  );
}

function Finding({ view: { found, name } }: { readonly view: KeyView }) {
  const { named } = found;
  const toxic = found.things
    .map((thing, i) => ({ thing, of20: found.found[i]?.of_20 ?? 0 }))
    .filter(({ thing }) => thing !== null && "closesGates" in thing && thing.closesGates)
    .reduce((sum, { of20 }) => sum + of20, 0);
  return (
    <>
      {toxic >= SUSPECTED_FROM ? (
        <Notice kind="danger" title="It may be dinoflagellates">
          <p>
            Add no grazers: those that eat it can die. Gloves on, keep it from eyes and mouth. A drop under a
            microscope settles it. If somebody feels ill: call a doctor or the poison line.
          </p>
        </Notice>
      ) : null}
      {named === null ? (
        <p>
          <strong>Can't tell yet.</strong> Answer what you see; a wrong answer is worse than "can't tell".
        </p>
      ) : (
        <p>
          <strong>{capital(named.name)}</strong>: {chance(found.found[0]?.of_20 ?? 0)}. {named.looks.text}
        </p>
      )}
      <ul>
        {found.found.slice(0, LIKELY_TOLD).map((one) => (
          <li key={one.id ?? "else"}>
            {capital(one.name)}: {one.of_20} of 20
            <Why of={one} />
          </li>
        ))}
      </ul>
      <p class="note">
        Of 20 such {name === "growth" ? "growths" : "finds"} with these answers, about so many. Chances are
        judged from common practice.
      </p>
    </>
  );
}

function Why({ of }: { readonly of: FoundOutput }) {
  if (of.for.length + of.against.length === 0) return null;
  return (
    <Disclosure summary={`Why ${of.name}`}>
      <p>For it: {of.for.length === 0 ? "nothing answered so far" : of.for.join("; ")}.</p>
      <p>Against it: {of.against.length === 0 ? "nothing answered so far" : of.against.join("; ")}.</p>
    </Disclosure>
  );
}

function Ask({ tank, view }: { readonly tank: string; readonly view: KeyView }) {
  const { found, params, name } = view;
  const { next, open } = found;
  const others = open.filter(({ id }) => id !== next?.id).slice(0, SEVERAL);
  return (
    <>
      {next === null ? (
        <p>No further question would tell much more.</p>
      ) : (
        <form method="get" action={to.tank(tank, "growths")}>
          <input type="hidden" name="see" value={name} />
          <Hidden params={params} />
          <fieldset class="field">
            <legend class="label">{next.ask}</legend>
            <Help question={next} />
            <div class="actions">
              {next.options.length === 1 ? (
                <>
                  <button type="submit" name={`trait.${next.id}`} value="yes">
                    Yes
                  </button>
                  <button type="submit" name={`trait.${next.id}`} value="no">
                    No
                  </button>
                </>
              ) : (
                next.options.map(({ id, words }) => (
                  <button key={id} type="submit" name={`trait.${id}`} value="yes">
                    {capital(words)}
                  </button>
                ))
              )}
              <button type="submit" class="plain" name={`skip.${next.id}`} value="1">
                Can't tell
              </button>
            </div>
          </fieldset>
        </form>
      )}
      {others.length === 0 ? null : (
        <Disclosure summary="Answer several at once">
          <form method="get" action={to.tank(tank, "growths")}>
            <input type="hidden" name="see" value={name} />
            <Hidden params={params} />
            {others.map((question) => (
              <Several key={question.id} question={question} />
            ))}
            <div class="actions">
              <button type="submit">Take these answers</button>
            </div>
          </form>
        </Disclosure>
      )}
    </>
  );
}

const EFFORT_WORDS = { eye: "", night: "Takes until tomorrow.", tool: "Needs a tool." } as const;

function Help({ question: { how, effort } }: { readonly question: KeyQuestion }) {
  const words = [how === null ? "" : `${capital(how)}.`, EFFORT_WORDS[effort]].filter((text) => text !== "");
  return words.length === 0 ? null : <p class="hint">{words.join(" ")}</p>;
}

function Several({ question }: { readonly question: KeyQuestion }) {
  const { id, ask, options } = question;
  const several = options.length > 1;
  return (
    <Choices
      name={several ? `pick.${id}` : `trait.${id}`}
      legend={ask}
      row
      options={[
        ...(several
          ? options.map((option) => ({ value: option.id, label: option.words, checked: false }))
          : [
              { value: "yes", label: "yes", checked: false },
              { value: "no", label: "no", checked: false },
            ]),
        { value: "", label: "can't tell", checked: true },
      ]}
    />
  );
}

function Answered({ tank, view }: { readonly tank: string; readonly view: KeyView }) {
  const { answered, params, name, found } = view;
  const traits = traitsOf(params);
  const fromRecord = Object.keys(found.fromRecord);
  if (answered.length + fromRecord.length === 0) return null;
  return (
    <section>
      <h2>Answers so far</h2>
      <ul>
        {answered.map(({ question, names }) => (
          <li key={question.id}>
            {question.ask}{" "}
            <strong>
              {names.some((one) => one.startsWith("skip.")) ? "can't tell" : saidWords(question, traits)}
            </strong>{" "}
            <a
              href={`${to.tank(tank, "growths")}?${queryOf({ see: name, ...without(params, names) })}`}
              aria-label={`Take back: ${question.ask}`}
            >
              Take back
            </a>
          </li>
        ))}
        {fromRecord.length === 0 ? null : (
          <li>
            From this tank's answers:{" "}
            {Object.entries(found.fromRecord)
              .map(([id, seen]) => recordWords(id, seen))
              .join("; ")}
          </li>
        )}
      </ul>
      <p>
        <a href={`${to.tank(tank, "growths")}?see=${name}`}>Begin anew</a>
      </p>
    </section>
  );
}

const RECORD_WORDS: Readonly<Record<string, readonly [string, string]>> = {
  young_tank: ["younger than four months", "older than four months"],
  unpurified_water: ["water not purified", "purified water"],
};
const recordWords = (id: string, seen: boolean): string => RECORD_WORDS[id]?.[seen ? 0 : 1] ?? id;

export const traitsOf = (params: Readonly<Record<string, string>>): Record<string, boolean> =>
  Object.fromEntries(
    Object.entries(params).flatMap(([name, value]) =>
      name.startsWith("trait.") ? [[name.slice("trait.".length), value === "yes"]] : [],
    ),
  );

const without = (params: Readonly<Record<string, string>>, names: readonly string[]) =>
  Object.fromEntries(Object.entries(params).filter(([name]) => !names.includes(name)));

function Named({ tank, view }: { readonly tank: string; readonly view: KeyView }) {
  const { named } = view.found;
  if (named === null) return null;
  return "verdict" in named ? (
    <Stranger tank={tank} thing={named} params={view.params} />
  ) : (
    <Growth tank={tank} thing={named} view={view} />
  );
}

const VERDICT = { leave: "Leave it", watch: "Watch it", remove: "Remove it" } as const;
const DANGER = {
  stings: "It stings.",
  toxin: "It can poison people or the tank.",
  bites: "It bites or pinches.",
  cuts: "It cuts.",
} as const;

function Stranger({
  tank,
  thing,
  params,
}: {
  readonly tank: string;
  readonly thing: HitchhikerFact;
  readonly params: Readonly<Record<string, string>>;
}) {
  const keep = { sign: signOf(params), ...traitParams(params) };
  return (
    <section>
      <h2>{VERDICT[thing.verdict]}</h2>
      {thing.dangers.length === 0 ? null : (
        <Notice kind="danger">
          <p>{thing.dangers.map((danger) => DANGER[danger]).join(" ")} Gloves on.</p>
        </Notice>
      )}
      <p>{thing.because.text}</p>
      {thing.shelves.length === 0 ? null : (
        <p>
          It counts as a mouth: it eats {thing.shelves.map((shelf) => SHELF_NAME[shelf]).join(", ")}.
          {thing.animal === null ? null : (
            <>
              {" "}
              <a href={to.animal(tank, thing.animal)}>What it eats and needs</a>
            </>
          )}
        </p>
      )}
      <Advice thing={thing} />
      <p>
        <a href={`${to.newEntry(tank, "sign")}?${queryOf(keep)}`}>Keep this in the daybook</a>
      </p>
    </section>
  );
}

const signOf = (params: Readonly<Record<string, string>>): string =>
  params["trait.shape_dots"] === "yes" ? "white_dots" : "hitchhiker";

const traitParams = (params: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(params).filter(([name]) => name.startsWith("trait.")));

const CREW = {
  yes: "A crew is the answer",
  partly: "A crew is part of the answer",
  no: "A crew is not the answer",
};

function Growth({
  tank,
  thing,
  view,
}: {
  readonly tank: string;
  readonly thing: GrowthFact;
  readonly view: KeyView;
}) {
  return (
    <section>
      <h2>{CREW[thing.crew]}</h2>
      {thing.toxin === null ? null : (
        <Notice kind="danger">
          <p>{thing.toxin.text}</p>
        </Notice>
      )}
      <p>{thing.crewSaid.text}</p>
      <Advice thing={thing} />
      {thing.sighting === null ? null : (
        <p>
          <a
            href={`${to.newEntry(tank, "growth")}?${queryOf({ growth: thing.sighting, ...traitParams(view.params) })}`}
          >
            Keep this in the daybook, with how much of it there is
          </a>
        </p>
      )}
    </section>
  );
}

function WhyHere({ causes }: { readonly causes: CausesTold }) {
  return (
    <section>
      <h2>Why it may grow here</h2>
      <Lines title="Asked first" of={causes.askedFirst.map(({ test }) => test)} />
      <Causes causes={causes.causes} wouldTell={causes.wouldTell} inPlace={causes.figures} />
    </section>
  );
}

/** Works that a description or a trait's direction was read in; the rest is common practice. */
function ReadIn({ thing }: { readonly thing: GrowthFact | HitchhikerFact }) {
  const keys = [...new Set([...thing.looks.sources, ...Object.values(thing.read).flat()])].filter(
    (key) => !key.startsWith("memory-"),
  );
  if (keys.length === 0)
    return <p class="note">Its description is common practice; no source was read for it.</p>;
  return (
    <p class="note">
      Read of it:{" "}
      {keys.map((key, i) => (
        <Fragment key={key}>
          {i === 0 ? null : ", "}
          <a href={to.source(key)}>{key}</a>
        </Fragment>
      ))}
      . The rest is common practice.
    </p>
  );
}

function Advice({ thing }: { readonly thing: GrowthFact | HitchhikerFact }) {
  return (
    <>
      <Lines title="Do" of={thing.doLines.map(({ text }) => text)} />
      <Lines title="Do not" of={thing.dont.map(({ text }) => text)} />
      <p>{thing.stop.text}</p>
    </>
  );
}
