/** Animals that behave oddly, or died: which, when, how many kinds; then causes with their evidence, and what to ask. */
import type { CausesTold } from "../../answers/growths/causes.ts";
import type { QuestionOutput } from "../../contract/output/growths.ts";
import type { Effect } from "../../engine/types/diagnosis.ts";
import { to } from "../page.ts";
import { Choices } from "../parts/choices.tsx";
import { Notice } from "../parts/notice.tsx";
import { Causes, EFFECT_WORDS, Hidden, Lines, queryOf } from "./growths-parts.tsx";

export interface OddView {
  readonly kind: "odd";
  /** What is seen; null where it was not said yet. */
  readonly effect: Effect | null;
  readonly animal: string;
  readonly kinds: string;
  /** "lit", "dark" or empty. */
  readonly hour: string;
  /** Animals of the tank: the first choice of kinds. */
  readonly present: readonly { readonly id: string; readonly name: string }[];
  /** Answers to clues given here: `clue.ID` yes or no. */
  readonly params: Readonly<Record<string, string>>;
  readonly told: CausesTold | null;
  /** What the hour and the kinds say of snails at the waterline; empty otherwise. */
  readonly waterline: readonly string[];
  readonly testNow: boolean;
}

export const ODD_TITLE = "Animals behave oddly, or one died";
/** Signs that the daybook keeps; a loss has an entry of its own. */
const SIGN_OF: Readonly<Partial<Record<Effect, string>>> = {
  ...{ waterline_snails: "waterline_snails", fallen_snails: "fallen_snails", empty_shells: "empty_shells" },
  ...{ hiding: "hiding", ill_animals: "ill_animals", cloudy_water: "cloudy_water" },
};

export function OddPart({ tank, view }: { readonly tank: string; readonly view: OddView }) {
  const { effect, told } = view;
  return (
    <>
      <h1>{ODD_TITLE}</h1>
      <p>
        Gasping, several ill at once, or a smell? <a href={to.wrong(tank)}>What to do first</a> is shorter.
      </p>
      <form method="get" action={to.tank(tank, "growths")}>
        <input type="hidden" name="see" value="odd" />
        <Choices
          name="what"
          legend="What do you see?"
          options={EFFECT_WORDS.map(([value, label]) => ({ value, label, checked: value === effect }))}
        />
        <div class="field">
          <label class="label" for="animal">
            Which kind?
          </label>
          <select id="animal" name="animal" class="input">
            <option value="" selected={view.animal === ""}>
              several, or not known
            </option>
            {view.present.map(({ id, name }) => (
              <option key={id} value={id} selected={view.animal === id}>
                {name}
              </option>
            ))}
          </select>
        </div>
        <Choices
          name="kinds"
          legend="How many kinds at once?"
          row
          options={[
            { value: "1", label: "one", checked: view.kinds === "1" },
            { value: "2", label: "two or more", checked: view.kinds === "2" },
            { value: "", label: "can't tell", checked: view.kinds === "" },
          ]}
        />
        <Choices
          name="hour"
          legend="Were the lamps on?"
          row
          options={[
            { value: "lit", label: "on", checked: view.hour === "lit" },
            { value: "dark", label: "off, at night", checked: view.hour === "dark" },
            { value: "", label: "can't tell", checked: view.hour === "" },
          ]}
        />
        <div class="actions">
          <button type="submit" class="first">
            What may it be?
          </button>
        </div>
      </form>
      {effect === null || told === null ? null : <Told tank={tank} view={view} effect={effect} told={told} />}
    </>
  );
}

interface ToldProps {
  readonly tank: string;
  readonly view: OddView;
  readonly effect: Effect;
  readonly told: CausesTold;
}

function Told({ tank, view, effect, told }: ToldProps) {
  const asked = [...told.askedFirst, ...told.wouldTell].filter(
    (one, i, all) => all.findIndex(({ clue }) => clue === one.clue) === i,
  );
  const sign = SIGN_OF[effect];
  const clues = Object.fromEntries(
    Object.entries(view.params).map(([name, value]) => [name.replace(/^clue\./, "trait."), value]),
  );
  return (
    <section>
      {view.testNow ? (
        <Notice kind="danger" title="Test now">
          {view.waterline.length > 0 ? (
            view.waterline.map((words) => <p key={words}>{words}</p>)
          ) : (
            <p>Test ammonia, temperature and salinity today, and move the surface, before anything else.</p>
          )}
        </Notice>
      ) : (
        view.waterline.map((words) => <p key={words}>{words}</p>)
      )}
      <h2>What it may come from</h2>
      {told.askedFirst.length === 0 ? null : (
        <Lines title="Asked first" of={told.askedFirst.map(({ test }) => test)} />
      )}
      <Causes causes={told.causes} wouldTell={told.wouldTell} inPlace={told.figures} />
      {asked.length === 0 ? null : <Clues tank={tank} view={view} effect={effect} asked={asked} />}
      <p>
        {sign === undefined ? (
          <a href={`${to.newEntry(tank, "loss")}?${queryOf({ animal: view.animal })}`}>
            Keep the loss in the daybook
          </a>
        ) : (
          <a href={`${to.newEntry(tank, "sign")}?${queryOf({ sign, animal: view.animal, ...clues })}`}>
            Keep this in the daybook
          </a>
        )}
      </p>
    </section>
  );
}

interface CluesProps extends Omit<ToldProps, "told"> {
  readonly asked: readonly QuestionOutput[];
}

function Clues({ tank, view, effect, asked }: CluesProps) {
  const { animal, kinds, hour, params } = view;
  return (
    <form method="get" action={to.tank(tank, "growths")}>
      <h2>Do you know?</h2>
      <Hidden params={{ see: "odd", what: effect, animal, kinds, hour, ...params }} />
      {asked.map(({ clue, ask }) => (
        <Choices
          key={clue}
          name={`clue.${clue}`}
          legend={ask}
          row
          options={[
            { value: "yes", label: "yes", checked: false },
            { value: "no", label: "no", checked: false },
            { value: "", label: "can't tell", checked: true },
          ]}
        />
      ))}
      <div class="actions">
        <button type="submit">Take these answers</button>
      </div>
    </form>
  );
}
