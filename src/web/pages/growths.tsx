/**
 * What is this? What the daybook's growths and signs may be and come from, and the way into the keys: a growth, an
 * animal or dots, odd behaviour, a death. Plain words; no script is needed.
 */
import type { StarvingKind } from "../../answers/growths/starving.ts";
import { dateWords } from "../../answers/words.ts";
import type { GrowthsOutput, OutbreakOutput, SignOutput } from "../../contract/output/growths.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Disclosure } from "../parts/disclosure.tsx";
import { Notice } from "../parts/notice.tsx";
import { Quantity } from "../parts/quantity.tsx";
import { KeyPart, type KeyView, keyTitle } from "./growths-key.tsx";
import { ODD_TITLE, OddPart, type OddView } from "./growths-odd.tsx";
import { Causes, Lines } from "./growths-parts.tsx";
import { Sentence } from "./sentence.tsx";

interface HomeView {
  readonly kind: "home";
  readonly output: GrowthsOutput;
  /** From the weeks ahead where they are known, else from signs alone. */
  readonly hungry: readonly StarvingKind[];
}

export interface GrowthsView {
  readonly head: TankHead;
  readonly part: HomeView | KeyView | OddView;
}

export function growthsPage({ head, part }: GrowthsView): Page {
  return { title: `${titleOf(part)}, ${head.name}`, tank: head, here: "growths", body: bodyOf(head, part) };
}

function titleOf(part: GrowthsView["part"]): string {
  if (part.kind === "home") return "What is this?";
  return part.kind === "key" ? keyTitle(part.name) : ODD_TITLE;
}

function bodyOf(head: TankHead, part: GrowthsView["part"]) {
  if (part.kind === "key") return <KeyPart tank={head.id} view={part} />;
  if (part.kind === "odd") return <OddPart tank={head.id} view={part} />;
  return <Home head={head} view={part} />;
}

const WAYS = [
  ["growth", "A growth: slime, dust, threads, crust"],
  ["animal", "An animal, white dots, eggs"],
  ["odd", "Animals behave oddly, or one died"],
] as const;

function Home({ head, view: { output, hungry } }: { readonly head: TankHead; readonly view: HomeView }) {
  const { growths, signs, gates_closed, tests_first, unfound_death } = output;
  const nothing =
    growths.length + signs.length + tests_first.length + hungry.length === 0 && unfound_death === null;
  return (
    <>
      <h1>What is this?</h1>
      <p>What do you see?</p>
      <ul class="question-steps">
        {WAYS.map(([see, words]) => (
          <li key={see}>
            <a class="action" href={`${to.tank(head.id, "growths")}?see=${see}`}>
              {words}
            </a>
          </li>
        ))}
      </ul>
      {gates_closed.map(({ reason }) => (
        <Notice key={reason} kind="danger" title="No new animals for now">
          <p>{reason}</p>
        </Notice>
      ))}
      {unfound_death === null ? null : <Death death={unfound_death} />}
      {tests_first.map((test) => (
        <TestFirst key={test.id} test={test} />
      ))}
      {hungry.map(({ animal, said }) => (
        <Notice key={animal} kind="look" title="May be hungry">
          <p>
            <Sentence of={said} />
          </p>
        </Notice>
      ))}
      {growths.map((one) => (
        <Outbreak key={one.growth} tank={head.id} of={one} />
      ))}
      {signs.map((one) => (
        <Sign key={one.sign} of={one} />
      ))}
      {nothing ? (
        <p>Nothing in the daybook asks for an answer: no growth scored high, no sign of the last week.</p>
      ) : null}
    </>
  );
}

function Death({ death }: { readonly death: NonNullable<GrowthsOutput["unfound_death"]> }) {
  const { quantity, on, rise_mg_n_per_l, figure, said } = death;
  return (
    <Notice kind="danger" title={death.named ? "A death that nobody found?" : `${quantity} rose`}>
      <p>
        {quantity} rose by <Quantity figure={figure}>{rise_mg_n_per_l} mg N/L</Quantity> above what is usual
        here, {dateWords(on)}. {said.join(" ")}
      </p>
      <p>
        Count heads by torch tonight, look behind and under rock, lift out what is dead, gloves on. Test
        ammonia today and tomorrow. Stop when two tests a day apart show none.
      </p>
    </Notice>
  );
}

function TestFirst({ test }: { readonly test: GrowthsOutput["tests_first"][number] }) {
  return (
    <Notice kind="note" title={`${test.quantity}: look at the test first`}>
      <p>
        {test.says} {test.because.join(" ")}
      </p>
      <p>
        <strong>{test.check}</strong>{" "}
        {test.animals_ill ? "Animals look ill: until then, take the reading as true." : null}
      </p>
    </Notice>
  );
}

const EATS = {
  eats: "Eat it",
  nibbles: "Nibble at it",
  refuses: "Don't eat it",
  harmed: "Can die of it",
} as const;

function Outbreak({ tank, of }: { readonly tank: string; readonly of: OutbreakOutput }) {
  const { growth, label, anchor, on, score } = of;
  const trait = `${to.tank(tank, "growths")}?see=growth`;
  return (
    <section id={growth}>
      <h2>{label}</h2>
      <p>
        Scored {score} of 4: {anchor.slice(0, 1).toLowerCase() + anchor.slice(1)},{" "}
        {of.from === "daybook" ? "" : "as the questions were told on "}
        {dateWords(on)}. <a href={trait}>Is it that? Tell it by its traits</a>
      </p>
      {of.key.length === 0 ? null : (
        <p>
          By the traits kept with it:{" "}
          {of.key
            .slice(0, 3)
            .map(({ name, of_20 }) => `${name} ${of_20} of 20`)
            .join(", ")}
          .
        </p>
      )}
      {of.toxin === null ? null : (
        <Notice kind="danger">
          <p>{of.toxin}</p>
        </Notice>
      )}
      {of.asked_first.length === 0 ? null : (
        <Notice kind="look" title="Asked first">
          {of.asked_first.map(({ clue, test }) => (
            <p key={clue}>{test}</p>
          ))}
        </Notice>
      )}
      <p>{of.crew_said}</p>
      <Lines title="Do" of={of.do} />
      <Lines title="Do not" of={of.dont} />
      <p>{of.stop}</p>
      <Disclosure summary="Which animals eat it, and which don't">
        <Eaters of={of} />
      </Disclosure>
      <h3>What it may come from</h3>
      <Causes causes={of.causes} wouldTell={of.would_tell} inPlace={null} />
    </section>
  );
}

function Eaters({ of: { eaters } }: { readonly of: OutbreakOutput }) {
  if (eaters.length === 0) return <p>None that is known.</p>;
  return (
    <ul>
      {(["eats", "nibbles", "harmed", "refuses"] as const).flatMap((how) => {
        const those = eaters.filter(({ eats }) => eats === how);
        if (those.length === 0) return [];
        return [
          <li key={how}>
            {EATS[how]}:{" "}
            {those.map(({ name, lives_here }) => (lives_here ? `${name} (lives here)` : name)).join(", ")}
          </li>,
        ];
      })}
    </ul>
  );
}

function Sign({ of }: { readonly of: SignOutput }) {
  return (
    <section id={of.sign}>
      <h2>{of.title}</h2>
      <p>{dateWords(of.on)}.</p>
      {of.verdict === "test_now" ? (
        <Notice kind="danger" title="Test now">
          {of.said.map((words) => (
            <p key={words}>{words}</p>
          ))}
        </Notice>
      ) : (
        of.said.map((words) => <p key={words}>{words}</p>)
      )}
      {of.asked_first.length === 0 ? null : (
        <Lines title="Asked first" of={of.asked_first.map(({ test }) => test)} />
      )}
      <Causes causes={of.causes} wouldTell={of.would_tell} inPlace={null} />
    </section>
  );
}
