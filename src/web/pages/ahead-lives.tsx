/** Who lives in the weeks ahead: each kind with its count of twenty, what takes it, and how well fed the living are. */
import { chance, counted, dateWords } from "../../answers/words.ts";
import { to } from "../page.ts";
import { Grains } from "../parts/grains.tsx";
import { Quantity } from "../parts/quantity.tsx";
import type { KindAhead } from "./ahead-view.ts";

export function WhoLives({ kinds, tank }: { readonly kinds: readonly KindAhead[]; readonly tank: string }) {
  return (
    <section>
      <h2>Who lives</h2>
      {kinds.length === 0 ? (
        <p>Nobody lives off the larder here, so nobody can starve.</p>
      ) : (
        <ul class="chances">
          {kinds.map((kind) => (
            <li key={kind.id}>
              <Grains
                of20={kind.alive_of_20}
                yes={kind.heads === 1 ? "have it alive" : "have half or more alive"}
                no={kind.heads === 1 ? "have not" : "have fewer"}
              >
                {kind.heads === 1 ? "" : "Half or more of "}
                <Quantity figure={kind.figures.heads}>{counted(kind.heads, kind.name)}</Quantity> alive on{" "}
                {dateWords(kind.asked_on)}:{" "}
                <Quantity figure={kind.figures.alive}>{chance(kind.alive_of_20)}</Quantity>.{" "}
                {kind.starves_of_20 === 0 ? null : (
                  <>
                    Hunger or poison takes {kind.heads === 1 ? "it" : "them"}:{" "}
                    <Quantity figure={kind.figures.starves}>{chance(kind.starves_of_20)}</Quantity>.{" "}
                  </>
                )}
                {kind.aged_of_20 >= 18 ? null : (
                  <>
                    Age alone leaves {kind.heads === 1 ? "it" : "half"}:{" "}
                    <Quantity figure={kind.figures.aged}>{chance(kind.aged_of_20)}</Quantity>.{" "}
                  </>
                )}
                <Reserve kind={kind} />{" "}
                <a href={to.animal(tank, kind.id)}>About {kind.heads === 1 ? "it" : "them"}</a>
              </Grains>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** Reserve from which an animal is called well fed, and lean. Judgement, as on the command line. */
const WELL_FED = 0.7;
const LEAN = 0.4;

function Reserve({ kind: { heads, condition, figures } }: { readonly kind: KindAhead }) {
  if (condition === null || figures.condition === null) return null;
  const { low, central, high } = condition;
  const word = central >= WELL_FED ? "well fed" : central >= LEAN ? "lean" : "thin";
  const percent = (share: number) => Math.round(100 * share);
  return (
    <>
      {heads === 1 ? "Alive it is" : "Those alive are"} {word}:{" "}
      <Quantity figure={figures.condition}>
        {percent(central)} % of a full reserve ({percent(low)} to {percent(high)})
      </Quantity>
      .
    </>
  );
}
