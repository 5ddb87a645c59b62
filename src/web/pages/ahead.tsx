/**
 * Weeks ahead: how it could go, twenty ways. First a sentence with its number of twenty, then who lives, the limits,
 * and each quantity as twenty runs, counted on a day that can be chosen without script.
 */
import type { TankAnswers } from "../../answers/tank-answers.ts";
import { chance, counted, dateWords } from "../../answers/words.ts";
import { type Page, to } from "../page.ts";
import { Grains } from "../parts/grains.tsx";
import { Notice } from "../parts/notice.tsx";
import { Quantity } from "../parts/quantity.tsx";
import { capital } from "../parts/text.ts";
import { WhoLives } from "./ahead-lives.tsx";
import { TwentyWays, type TwentyWaysView } from "./ahead-runs.tsx";
import { type Chance, knownChances, lowestOxygen, quantityName } from "./ahead-view.ts";
import { Assumed } from "./assumed.tsx";
import { askedAt } from "./fact-questions.ts";
import { FallowNotice } from "./fallow-notice.tsx";
import { limitWords } from "./interests.ts";

export interface AheadView extends TwentyWaysView {
  /** First day with fish again where the tank lies fallow, ISO date. */
  readonly fallowUntil?: string | null;
}

export function aheadPage(view: AheadView): Page {
  const { head, answers } = view;
  const { ahead } = answers;
  const last = ahead.weeks.at(-1)!;
  const title = titleOf(answers);
  return {
    title: `Weeks ahead: ${title}`,
    tank: head,
    here: "ahead",
    body: (
      <>
        <h1>{title}</h1>
        <p class="gloss">
          Weeks ahead: how it could go until {dateWords(last)}, kept as today,{" "}
          {ahead.with_plan ? "with the waves of its plan" : "with the animals that live there"}. Twenty runs,
          each as likely as the next; no run is a promise.
        </p>
        <FallowNotice tank={head.id} until={view.fallowUntil} />
        <Taught answers={answers} tank={head.id} />
        {ahead.warnings.map((text) => (
          <Notice key={text} kind="look">
            <p>{text}</p>
          </Notice>
        ))}
        <Limits answers={answers} />
        <WhoLives kinds={ahead.as_it_is.kinds} tank={head.id} />
        <TwentyWays {...view} />
        <Oxygen answers={answers} />
        <Sharpen answers={answers} tank={head.id} />
        <Assumed tank={head.id} fields={ahead.tank.assumed} />
        <p>
          Care goes on as told. Nobody feeds by hand, takes out the dead or pulls algae in these runs; who
          eats whom is not in them.
        </p>
      </>
    ),
  };
}

/** Where the runs were moved towards the daybook, that is said, with the door to how far. */
function Taught({ answers: { learned }, tank }: { readonly answers: TankAnswers; readonly tank: string }) {
  const taught = learned?.taught ?? null;
  if (taught === null) return null;
  return (
    <p>
      The runs have learned from the daybook of {dateWords(taught.from)} to {dateWords(taught.to)}:{" "}
      <a href={to.learned(tank)}>what it has taught</a>.
    </p>
  );
}

/** From this many of 20 on a thing is worth the first sentence: about even and above. */
const WORTH_SAYING = 8;

function titleOf({ ahead }: TankAnswers): string {
  const hungry = [...ahead.as_it_is.kinds].sort((a, b) => b.starves_of_20 - a.starves_of_20)[0];
  const known = knownChances(ahead);
  const first = known.find(({ of_20 }) => of_20 >= WORTH_SAYING);
  if (first !== undefined) return `${crossing(ahead, first)}: ${chance(first.of_20)}`;
  if (hungry !== undefined && hungry.starves_of_20 >= WORTH_SAYING)
    return `Half or more of ${counted(hungry.heads, hungry.name)} starve: ${chance(hungry.starves_of_20)}`;
  if (known.length === 0)
    return "Not enough data to say how this tank will go: this is a typical tank of its size";
  const most = Math.max(...known.map(({ of_20 }) => of_20));
  return `No limit that we can tell is crossed in more than ${most} of 20 runs`;
}

function crossing(ahead: TankAnswers["ahead"], one: Chance): string {
  const above = `${capital(quantityName(ahead, one.quantity))} goes above ${limitWords(one)}`;
  // A crop in grams says little; what it means does.
  return GROWTH.test(one.quantity) ? `${above}, ${one.why}` : above;
}

/** Runs of 20 below which a limit stands last. */
const FEW = 2;
const GROWTH = /^(film|hair)_/;

function Limits({ answers: { ahead } }: { readonly answers: TankAnswers }) {
  // What hardly a run meets stands last; poisons come first otherwise.
  const known = knownChances(ahead).toSorted((a, b) => Number(b.of_20 >= FEW) - Number(a.of_20 >= FEW));
  const unknown = ahead.as_it_is.chances.filter(({ missing }) => missing !== null);
  return (
    <section>
      <h2>Above a limit, on some day until {dateWords(ahead.weeks.at(-1)!)}</h2>
      {known.length === 0 ? null : (
        <ul class="chances">
          {known.map((one) => (
            <ChanceLine key={one.id} one={one} name={quantityName(ahead, one.quantity)} />
          ))}
        </ul>
      )}
      {unknown.length === 0 ? null : (
        <>
          <h3>Not enough data for this tank</h3>
          <p>
            These are a typical tank's chances, not yet yours. It would take{" "}
            {[...new Set(unknown.map(({ missing }) => missing))].join("; ")}.
          </p>
          <ul class="chances">
            {unknown.map((one) => (
              <ChanceLine key={one.id} one={one} name={quantityName(ahead, one.quantity)} />
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** From here on it is said of the tank, below it of the runs. */
const SO_TODAY_OF_20 = 15;

function ChanceLine({ one, name }: { readonly one: Chance; readonly name: string }) {
  const { of_20, already_of_20, first_on, why, figures } = one;
  const when =
    already_of_20 >= of_20 && of_20 > 0
      ? of_20 >= SO_TODAY_OF_20
        ? "It is so today."
        : `In ${of_20} of 20 it is so today.`
      : first_on === null
        ? null
        : `First about ${dateWords(first_on.middle)}.`;
  return (
    <li>
      <Grains of20={of_20} yes="go above it" no="stay at or under it">
        {capital(name)} goes above <Quantity figure={figures.limit}>{limitWords(one)}</Quantity>:{" "}
        <Quantity figure={figures.chance}>{chance(of_20)}</Quantity>. {when} The limit: {why}.
      </Grains>
    </li>
  );
}

function Oxygen({ answers: { ahead } }: { readonly answers: TankAnswers }) {
  const lowest = lowestOxygen(ahead);
  const figure = ahead.as_it_is.dawn_oxygen_figure;
  if (lowest === null || figure === null) return null;
  const { low, middle, high, week } = lowest;
  return (
    <section>
      <h2>Oxygen at dawn</h2>
      <p>
        Lowest about {dateWords(ahead.weeks[week]!)}:{" "}
        <Quantity figure={figure}>
          {middle.toFixed(1)} mg/L ({low.toFixed(1)} to {high.toFixed(1)})
        </Quantity>
        , from the water's load and usual movement at the surface. Nothing else in the runs depends on it.
      </p>
    </section>
  );
}

function Sharpen({ answers: { ahead }, tank }: { readonly answers: TankAnswers; readonly tank: string }) {
  if (ahead.would_sharpen.length === 0) return null;
  return (
    <section>
      <h2>What would narrow it most</h2>
      <ul>
        {ahead.would_sharpen.map(({ fact, label, ask }) => (
          <li key={fact}>
            {capital(label)}: {ask}. <a href={askedAt(tank, fact)}>Say it</a>
          </li>
        ))}
      </ul>
    </section>
  );
}
