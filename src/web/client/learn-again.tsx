/**
 * Learning a tank again in the browser's own engine, beside the page: the form's press begins it, how far it has come is
 * told in words, a press stops it, and what moved is drawn where the form stands. Where the engine can't be had, the form
 * goes to the server as it does without script.
 */
import { render } from "preact";
import type { LearnWord } from "../../contract/worker/messages.ts";
import { to } from "../page.ts";
import { LearnedAgain } from "../pages/learned/again.tsx";
import type { LearnedSeen } from "../pages/learned/seen.ts";
import { TankId } from "../parts/tank-context.ts";
import { engineAddresses } from "./built-addresses.ts";
import { Engine } from "./engine.ts";

interface Place {
  readonly tank: string;
  readonly daybook: string;
  readonly form: HTMLFormElement;
  readonly says: HTMLElement;
  readonly told: HTMLElement;
  readonly was: LearnedSeen | null;
}

let engine: Engine | null = null;
/** Of the learning that is under way; another one, or none, makes what an older one says worth nothing. */
let turn = 0;

document.addEventListener("submit", (event) => {
  const form = event.target;
  const section = form instanceof HTMLFormElement ? form.closest<HTMLElement>("[data-learn-again]") : null;
  if (!(form instanceof HTMLFormElement) || section === null) return;
  const place = placeOf(section, form);
  if (place === null) return;
  event.preventDefault();
  void learn(place);
});

function placeOf(section: HTMLElement, form: HTMLFormElement): Place | null {
  const { learnAgain: tank, daybook } = section.dataset;
  const says = section.querySelector<HTMLElement>("[data-learn-says]");
  const told = section.querySelector<HTMLElement>("[data-learn-told]");
  if (tank === undefined || daybook === undefined || says === null || told === null) return null;
  const text = section.querySelector("[data-learned-was]")?.textContent ?? "null";
  return { tank, daybook, form, says, told, was: JSON.parse(text) as LearnedSeen | null };
}

async function learn(place: Place): Promise<void> {
  const { says, told, was, tank } = place;
  turn += 1;
  const mine = turn;
  says.textContent = "Reading the daybook ...";
  begin(place, () => {
    turn += 1;
    engine?.stopLearning();
    end(place, "Stopped. Nothing was changed.");
  });
  try {
    const [addresses, answer] = await Promise.all([engineAddresses(), fetch(place.daybook)]);
    if (!answer.ok) throw new Error(`the daybook could not be read (${answer.status})`);
    const asked = (await answer.json()) as Pick<LearnWord, "facts" | "record">;
    if (mine !== turn) return;
    engine ??= new Engine(addresses);
    engine.learn(asked, {
      progress: (share) => {
        if (mine === turn) progress(place, share);
      },
      learned: (seen) => {
        if (mine !== turn) return;
        end(place, "Learned.");
        render(
          <TankId.Provider value={tank}>
            <LearnedAgain tank={tank} was={was} now={seen as LearnedSeen} />
          </TankId.Provider>,
          told,
        );
      },
      failed: (why) => {
        if (mine === turn) instead(place, why);
      },
    });
  } catch (error) {
    if (mine === turn) instead(place, error instanceof Error ? error.message : String(error));
  }
}

/** The form gives way to the bar and its button, and the focus goes with it. */
function begin({ form, told }: Place, stop: () => void): void {
  render(null, told);
  told.replaceChildren();
  const bar = document.createElement("progress");
  bar.max = 1;
  bar.value = 0;
  bar.ariaLabel = "Learned so far";
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = "Stop";
  button.addEventListener("click", stop);
  told.append(bar, button);
  form.hidden = true;
  button.focus();
}

/** Told at every tenth, so that who listens is not told two hundred times. */
function progress({ says, told }: Place, share: number): void {
  const bar = told.querySelector("progress");
  if (bar !== null) bar.value = share;
  const words = `Learning from the daybook: ${Math.floor(share * 10) * 10} % of the runs are done.`;
  if (says.textContent !== words) says.textContent = words;
}

function end({ form, says, told }: Place, words: string): void {
  const held = told.contains(document.activeElement);
  told.replaceChildren();
  form.hidden = false;
  says.textContent = words;
  if (held) form.querySelector("button")?.focus();
}

function instead(place: Place, why: string): void {
  end(place, `Not learned in this browser: ${why}. `);
  const link = document.createElement("a");
  link.href = `${to.learned(place.tank)}?wait=1`;
  link.textContent = "Let the server learn it";
  place.says.append(link);
}
