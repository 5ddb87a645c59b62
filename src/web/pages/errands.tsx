/** Errands: what to get, wave by wave, with the reason of each number; what not to get yet, and what never. */
import type { JudgedGate } from "../../answers/bench/gate.ts";
import type { Errand, Errands, WaveErrands } from "../../answers/errands/errands.ts";
import { plain } from "../../answers/sentence.ts";
import { CAUTION } from "../../answers/statement.ts";
import { dateWords } from "../../answers/words.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Disclosure } from "../parts/disclosure.tsx";
import { Quantity } from "../parts/quantity.tsx";
import { lowerFirst } from "../parts/text.ts";
import { gateFinding } from "./bench-gate.tsx";
import { OrderingPart, type OrderingView } from "./ordering.tsx";
import { Reasons } from "./reasons.tsx";
import { Sentence } from "./sentence.tsx";

export interface ErrandsView extends Omit<OrderingView, "tank"> {
  readonly head: TankHead;
  readonly errands: Errands;
  /** Of the first wave, judged from the daybook; null where none comes. */
  readonly gate: JudgedGate | null;
}

export function errandsPage({ head, errands, gate, ordering, strays, shop }: ErrandsView): Page {
  const title = findingOf(errands);
  return {
    title: `${title} ${head.name}`,
    tank: head,
    here: "errands",
    body: (
      <div class="errands">
        <h1>{title}</h1>
        <p class="gloss">Errands: what to get, and what not to get yet.</p>
        {errands.kind === "nothing_yet" ? <NothingYet errands={errands} /> : null}
        {errands.waves.slice(0, 1).map((wave) => (
          <WaveList key={wave.number} tank={head.id} wave={wave} first gate={gate} />
        ))}
        <OrderingPart tank={head.id} ordering={ordering} strays={strays} shop={shop} />
        {errands.waves.slice(1).map((wave) => (
          <WaveList key={wave.number} tank={head.id} wave={wave} first={false} gate={null} />
        ))}
        <Tests errands={errands} />
        <Food errands={errands} />
        <section>
          <h2>Not yet</h2>
          {errands.notYet.length === 0 ? (
            <p>Nothing waits.</p>
          ) : (
            <Disclosure
              summary={`${soldAsCrew(errands.notYet)} that may come later, each with what it waits for`}
            >
              <Reasons tank={head.id} groups={errands.notYet} />
            </Disclosure>
          )}
        </section>
        <section>
          <h2>Never for this tank</h2>
          {errands.never.length === 0 ? (
            <p>None of those that are sold as crew.</p>
          ) : (
            <Disclosure summary={`${soldAsCrew(errands.never)}, each with its reason`}>
              <Reasons tank={head.id} groups={errands.never} />
            </Disclosure>
          )}
        </section>
        <p class="screen-only">
          Counted here are kinds that are sold as crew. Fish, hitchhikers and others that were judged too
          stand among <a href={to.tank(head.id, "animals")}>all animals</a>.
        </p>
        <p>{CAUTION.wild}</p>
        <p class="screen-only">
          <a href={to.tank(head.id, "sheet")}>The sheet: one page to print</a>
        </p>
      </div>
    ),
  };
}

/** "16 kinds sold as crew": the animals' page counts others too. */
function soldAsCrew(groups: Errands["never"]): string {
  const count = groups.reduce((sum, { rows }) => sum + rows.length, 0);
  return count === 1 ? "1 kind sold as crew" : `${count} kinds sold as crew`;
}

function findingOf({ kind, waves }: Errands): string {
  const first = waves[0];
  if (kind === "nothing_yet" || first === undefined) return "Get no animal yet.";
  const kinds = first.animals.length;
  // Their gate is for the keeper's eyes: errands never say that it holds.
  return `For wave ${first.number}, once its gate holds: ${kinds === 1 ? "one kind" : `${kinds} kinds`}. Nothing for later waves yet.`;
}

function NothingYet({ errands }: { readonly errands: Errands }) {
  return (
    <section>
      <h2>Why</h2>
      <ul>
        {errands.because.map((sentence) => (
          <li key={plain(sentence)}>
            <Sentence of={sentence} />
          </li>
        ))}
      </ul>
      <p>
        {errands.lookAgainOn === null ? "" : `Look again on ${dateWords(errands.lookAgainOn)}. `}Waiting costs
        nothing.
      </p>
    </section>
  );
}

interface WaveListProps {
  readonly tank: string;
  readonly wave: WaveErrands;
  readonly first: boolean;
  readonly gate: JudgedGate | null;
}

function WaveList({ tank, wave, first, gate }: WaveListProps) {
  return (
    <section>
      <h2>
        {first ? "Now: wave" : "Not before its day: wave"} {wave.number},{" "}
        <Quantity figure={wave.fromFigure}>
          {dateWords(wave.from)} to {dateWords(wave.to)}
        </Quantity>
      </h2>
      {first ? (
        <>
          <p>
            Only if {wave.onlyIf.join("; ")}. Bring them home only when that holds; waiting loses nothing.
          </p>
          {gate === null ? null : (
            <p>
              By the daybook: {lowerFirst(gateFinding(gate))}{" "}
              <a href={to.tank(tank, "waves")}>Its conditions, one by one</a>
            </p>
          )}
        </>
      ) : (
        <p class="screen-only">
          <a href={`${to.tank(tank, "waves")}#wave-${wave.number}`}>What must hold first</a>
        </p>
      )}
      <List errands={[...wave.animals, ...wave.shells]} />
    </section>
  );
}

function List({ errands }: { readonly errands: readonly Errand[] }) {
  return (
    <ul class="errands">
      {errands.map(({ id, what, why }) => (
        <li key={`${id} ${plain([what])}`}>
          <Sentence of={[what, ": ", ...why, "."]} />
        </li>
      ))}
    </ul>
  );
}

function Tests({ errands: { tests } }: { readonly errands: Errands }) {
  if (tests.length === 0) return null;
  return (
    <section>
      <h2>Tests to have and to take</h2>
      <ul class="errands">
        {tests.map(({ name, why }) => (
          <li key={name}>
            {name}: {why}.
          </li>
        ))}
      </ul>
    </section>
  );
}

function Food({ errands: { food } }: { readonly errands: Errands }) {
  if (food.length === 0) return null;
  return (
    <section>
      <h2>Food by hand</h2>
      <List errands={food} />
    </section>
  );
}
