/**
 * The sheet: one page of paper to hand over, black and white. Left the waves with boxes to tick and their conditions,
 * right the larder, feeding and when to call; at the foot where it came from. What does not fit is counted.
 */
import { plain } from "../../answers/sentence.ts";
import type { Sheet, SheetWave } from "../../answers/sheet/sheet.ts";
import { CAUTION } from "../../answers/statement.ts";
import { dateWords } from "../../answers/words.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Sentence } from "./sentence.tsx";

export interface SheetView {
  readonly head: TankHead;
  readonly sheet: Sheet;
  /** Version of the tank's facts. */
  readonly version: number;
  /** ISO date of printing. */
  readonly today: string;
}

export function sheetPage({ head, sheet, version, today }: SheetView): Page {
  return {
    title: `Sheet of ${head.name}, ${dateWords(today)}`,
    tank: head,
    here: "sheet",
    body: (
      <article class="sheet">
        <header class="sheet-head">
          <h1>{head.name}</h1>
          <p>
            {head.keeper === "" ? "" : `Kept by ${head.keeper}. `}As the tank stood on {dateWords(sheet.asOf)}
            , facts version {version}. Printed {dateWords(today)}.
          </p>
          <p class="sheet-finding">{sheet.finding}</p>
        </header>
        <div class="sheet-columns">
          <div class="sheet-left">
            {sheet.waves.length === 0 ? <Because sheet={sheet} /> : null}
            {sheet.waves.map((wave) => (
              <Wave key={wave.number} wave={wave} />
            ))}
            {sheet.moreWaves === 0 ? null : (
              <p>
                And {sheet.moreWaves} more {sheet.moreWaves === 1 ? "wave" : "waves"}: see the page of waves.
              </p>
            )}
          </div>
          <div class="sheet-right">
            <Larder sheet={sheet} />
            <Feeding sheet={sheet} />
            <section>
              <h2>Call me if</h2>
              <ol>
                {sheet.callMeIf.map((sentence) => (
                  <li key={plain(sentence)}>
                    <Sentence of={sentence} />
                  </li>
                ))}
              </ol>
            </section>
          </div>
        </div>
        <footer class="sheet-foot">
          <p>
            Estimates, range in brackets; your own counts and tests overrule them. {CAUTION.mains}{" "}
            {CAUTION.wild}
          </p>
          {sheet.sources.length === 0 ? null : <p>Rests among others on: {sheet.sources.join("; ")}</p>}
          <p class="screen-only">
            On paper its address and the day stand at the foot.{" "}
            <a href={to.tank(head.id, "waves")}>The whole plan, and how each number came about</a>
          </p>
        </footer>
      </article>
    ),
  };
}

function Because({ sheet }: { readonly sheet: Sheet }) {
  return (
    <section>
      <h2>Why nothing yet</h2>
      <ul>
        {sheet.because.map((sentence) => (
          <li key={plain(sentence)}>
            <Sentence of={sentence} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Wave({ wave }: { readonly wave: SheetWave }) {
  return (
    <section class="sheet-wave">
      <h2>
        Wave {wave.number}: <Sentence of={[wave.when]} />
      </h2>
      <p>
        Only if {wave.onlyIf.join("; ")}
        {wave.moreConditions === 0 ? "" : `; and ${wave.moreConditions} more: see the page`}.
      </p>
      <ul class="boxes">
        {wave.animals.map((animal) => (
          <li key={animal.figure}>
            <span class="box" aria-hidden="true">
              {" "}
            </span>{" "}
            <Sentence of={[animal]} />
          </li>
        ))}
        {wave.moreAnimals === 0 ? null : <li>and {wave.moreAnimals} more kinds: see the page</li>}
      </ul>
      <p>Stop if {wave.stopIf ?? "any of the same is seen"}.</p>
    </section>
  );
}

function Larder({ sheet }: { readonly sheet: Sheet }) {
  return (
    <section>
      <h2 id="sheet-larder">Larder: food the tank makes</h2>
      <p>Rations a day; a ration is about what one 22 mm trochus snail eats.</p>
      <table aria-labelledby="sheet-larder">
        <thead>
          <tr>
            <th scope="col">Shelf</th>
            <th scope="col">Grown</th>
            <th scope="col">Eaten now</th>
          </tr>
        </thead>
        <tbody>
          {sheet.shelves.map(({ id, name, grown, eaten }) => (
            <tr key={id}>
              <th scope="row">{name}</th>
              <td>
                <Sentence of={[grown]} />
              </td>
              <td>
                <Sentence of={[eaten]} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Feeding({ sheet }: { readonly sheet: Sheet }) {
  return (
    <section>
      <h2>Feeding</h2>
      {sheet.feeding.length === 0 ? (
        <p>
          {sheet.leftOver === null ? "Feed as you do." : <Sentence of={sheet.leftOver} />} No animal of the
          crew needs food by hand yet.
        </p>
      ) : (
        <ul>
          {sheet.feeding.map((sentence) => (
            <li key={plain(sentence)}>
              <Sentence of={sentence} />
            </li>
          ))}
          {sheet.moreFeeding === 0 ? null : <li>and {sheet.moreFeeding} more: see the page of waves</li>}
        </ul>
      )}
    </section>
  );
}
