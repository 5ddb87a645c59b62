/**
 * The form of one new entry. Before the fields stands what has to be known first: which kinds a count by day can't tell
 * of, whether a loss is one, where animals must never go. Works without script; with it, the outbox takes the entry.
 */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { counted, lowered } from "../../answers/words.ts";
import { animalById, findAnimal } from "../../catalogue/index.ts";
import { KIND_LABELS } from "../../contract/daybook/fields.ts";
import { GROWTH_ANCHORS } from "../../contract/daybook/growth-anchors.ts";
import type { EntryKind } from "../../contract/daybook/kinds.ts";
import { GROWTHS } from "../../engine/types/tank.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { Notice } from "../parts/notice.tsx";
import { capital, listed } from "../parts/text.ts";
import { EntryFields, type FormScene } from "./entry-form.tsx";
import { restingWords } from "./entry-form-loss.ts";
import { ReturnKey, summaryOf } from "./form-fields.tsx";

export interface EntryFormView {
  readonly head: TankHead;
  readonly kind: EntryKind;
  readonly values: Values;
  readonly doubts: readonly FieldDoubt[];
  readonly scene: FormScene;
  /** Sent with the form: however often it arrives, it adds one row. */
  readonly once: string;
  /** The key came from this browser's outbox, and the form came back with doubts: it stays. */
  readonly keepsKey: boolean;
}

const headingOf = (kind: EntryKind): string => (kind === "decline" ? "Decline advice" : KIND_LABELS[kind]);

export function entryFormPage(view: EntryFormView): Page {
  const { head, kind, values, doubts, scene, once, keepsKey } = view;
  const address = to.newEntry(head.id, kind);
  const asksFirst = kind === "loss" && doubts.length === 0 && (values["certainty"] ?? "") === "";
  return {
    title: `${doubts.length > 0 ? "Error: " : ""}${headingOf(kind)}, ${head.name}`,
    tank: head,
    here: "daybook",
    body: (
      <>
        <ErrorSummary errors={summaryOf(doubts)} />
        <h1>{headingOf(kind)}</h1>
        {kind === "growth" ? <GrowthLinks tank={head.id} growth={values["growth"]} /> : null}
        {kind === "loss" ? <FirstAsked tank={head.id} values={values} scene={scene} /> : null}
        {kind === "move" ? <MoveLinks address={address} tank={head.name} comesIn={"from" in values} /> : null}
        <Before tank={head.id} kind={kind} scene={scene} />
        {kind === "head_count" || kind === "departure" || (kind === "move" && !("from" in values)) ? (
          <WhoLinks address={address} animal={values["animal"]} scene={scene} />
        ) : null}
        {asksFirst ? null : (
          <form
            method="post"
            action={address}
            novalidate
            data-draft={kind === "growth" ? `${address}?growth=${values["growth"] ?? ""}` : address}
            data-outbox={kind}
            data-tank={head.id}
            data-words={wordsOf(kind, values)}
            data-key={keepsKey ? "" : undefined}
          >
            <ReturnKey />
            <input type="hidden" name="once" value={once} />
            <EntryFields kind={kind} values={values} doubts={doubts} scene={scene} />
            <div class="actions">
              <button type="submit" class="first">
                Keep it
              </button>
              <a class="action" href={to.tank(head.id, "daybook")}>
                Leave it
              </a>
            </div>
          </form>
        )}
      </>
    ),
  };
}

/** Those on record, so that a name need not be typed. */
function WhoLinks({
  address,
  animal,
  scene,
}: {
  readonly address: string;
  readonly animal: string | undefined;
  readonly scene: FormScene;
}) {
  if (scene.onRecord.length === 0) return <p>The record has no animals in it yet.</p>;
  return (
    <nav aria-label="Animals on record">
      <ul class="question-steps">
        {scene.onRecord.map(({ id, name, count }) => (
          <li key={id}>
            <a
              class="action"
              href={`${address}?animal=${encodeURIComponent(name)}`}
              aria-current={name === animal ? "true" : undefined}
            >
              {capital(name)}, {count} on record
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** Out of this tank, or into it. */
function MoveLinks({
  address,
  tank,
  comesIn,
}: {
  readonly address: string;
  readonly tank: string;
  readonly comesIn: boolean;
}) {
  const current = (one: boolean) => (one ? ("true" as const) : undefined);
  return (
    <nav aria-label="Out of this tank, or into it">
      <ul class="question-steps">
        <li>
          <a class="action" href={address} aria-current={current(!comesIn)}>
            Out of {tank}
          </a>
        </li>
        <li>
          <a class="action" href={`${address}?way=in`} aria-current={current(comesIn)}>
            Into {tank}
          </a>
        </li>
      </ul>
    </nav>
  );
}

function wordsOf(kind: EntryKind, values: Values): string {
  const growth = GROWTHS.find((one) => one === values["growth"]);
  return kind === "growth" && growth !== undefined ? GROWTH_ANCHORS[growth].label : KIND_LABELS[kind];
}

function GrowthLinks({ tank, growth }: { readonly tank: string; readonly growth: string | undefined }) {
  return (
    <>
      <nav aria-label="What was seen">
        <ul class="question-steps">
          {GROWTHS.map((name) => (
            <li key={name}>
              <a
                class="action"
                href={`${to.newEntry(tank, "growth")}?growth=${name}`}
                aria-current={name === growth ? "true" : undefined}
              >
                {GROWTH_ANCHORS[name].label}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      <p>
        Not sure which it is? <a href={to.tank(tank, "growths")}>Tell growths apart</a>.
      </p>
    </>
  );
}

/** Dead, resting or moulted? Which animal, how it looks, and three ways on; waiting is one of them. */
function FirstAsked({
  tank,
  values,
  scene,
}: {
  readonly tank: string;
  readonly values: Values;
  readonly scene: FormScene;
}) {
  const address = to.newEntry(tank, "loss");
  const typed = values["animal"] ?? "";
  const found = findAnimal(typed);
  const animal = found.kind === "one" ? found.animal : undefined;
  if ((values["certainty"] ?? "") !== "" && animal === undefined) return null;
  const link = (certainty: string) => `${address}?animal=${encodeURIComponent(typed)}&certainty=${certainty}`;
  return (
    <section>
      <h2>Dead, resting or moulted?</h2>
      {animal === undefined ? (
        <>
          <p>Each group rests in its own way. Which animal is it?</p>
          <ul class="add-entries">
            {scene.onRecord.map(({ id, name, count }) => (
              <li key={id}>
                <a class="action" href={`${address}?animal=${encodeURIComponent(name)}`}>
                  {capital(name)}, {count} on record
                </a>
              </li>
            ))}
            <li>
              <a class="action" href={`${address}?certainty=found`}>
                Another, found dead
              </a>
            </li>
            <li>
              <a class="action" href={`${address}?certainty=feared`}>
                Another, feared lost
              </a>
            </li>
          </ul>
        </>
      ) : (
        <Resting tank={tank} animal={animal} link={link} chosen={values["certainty"] ?? ""} />
      )}
    </section>
  );
}

function Resting({
  tank,
  animal,
  link,
  chosen,
}: {
  readonly tank: string;
  readonly animal: NonNullable<ReturnType<typeof animalById.get>>;
  readonly link: (certainty: string) => string;
  readonly chosen: string;
}) {
  const { resting, dead, wait, days, sign } = restingWords(animal);
  const name = lowered(animal.commonName);
  const waiting = `${to.newEntry(tank, "sign")}?sign=${sign}&animal=${encodeURIComponent(animal.commonName)}`;
  const current = (certainty: string) => (chosen === certainty ? ("true" as const) : undefined);
  return (
    <>
      <dl class="facts">
        <div>
          <dt>No loss</dt>
          <dd>{resting}</dd>
        </div>
        <div>
          <dt>Died</dt>
          <dd>{dead}</dd>
        </div>
        <div>
          <dt>In doubt</dt>
          <dd>{wait}</dd>
        </div>
      </dl>
      <ul class="question-steps">
        <li>
          <a class="action" href={link("found")} aria-current={current("found")}>
            Found dead
          </a>
        </li>
        <li>
          <a class="action" href={link("feared")} aria-current={current("feared")}>
            Feared lost, nothing found
          </a>
        </li>
        <li>
          <a class="action" href={waiting}>
            Wait and look again in {counted(days, "day")}
          </a>
        </li>
      </ul>
      {chosen === "found" ? <p>Take the body out with a net or tongs, not with bare hands.</p> : null}
      {chosen === "" ? <p>Waiting keeps {name} on the record and logs what you saw.</p> : null}
    </>
  );
}

/** What has to be known before the fields of a kind. */
function Before({
  tank,
  kind,
  scene,
}: {
  readonly tank: string;
  readonly kind: EntryKind;
  readonly scene: FormScene;
}) {
  switch (kind) {
    case "head_count":
      return <ByDay scene={scene} />;
    case "sign":
      return (
        <p>
          A hitchhiker, or white dots? <a href={to.tank(tank, "growths")}>Tell what it is</a>, by what you
          see.
        </p>
      );
    case "departure":
      return (
        <Notice kind="note">
          <p>To another tank, a shop or a friend. Never into the wild: not the animal, not its water.</p>
        </Notice>
      );
    case "move":
      return scene.tanks.length === 0 ? (
        <p>
          There is no other tank in this store yet. To a tank elsewhere:{" "}
          <a href={to.newEntry(tank, "departure")}>animals moved out</a>.
        </p>
      ) : (
        <Notice kind="note" title="Both daybooks">
          <p>
            It is kept in the daybooks of both tanks, and undone in both. For the tank they come to it is an
            arrival: <a href={to.tank(tank, "arrivals")}>acclimate them</a>, and bring none of the old water.
          </p>
        </Notice>
      );
    case "treatment":
      return (
        <Notice kind="look" title="Before medicine goes in">
          <p>
            Many medicines kill snails, crabs and shrimps. Ask an aquatic vet, keep to the label, and take the
            crew out first where it says so. Never pour treated water into the wild.
          </p>
        </Notice>
      );
    case "outage":
      return (
        <Notice kind="look" title="Mains and water">
          <p>
            Dry hands, and unplug what you will touch. What trips again and again is for a licensed
            electrician; local codes go first.
          </p>
        </Notice>
      );
    case "identification":
      return <p>What was written before stays as it was. The plan is made anew.</p>;
    default:
      return null;
  }
}

/** Hidden by day: who is out at night, and who lies in the sand. */
function ByDay({ scene }: { readonly scene: FormScene }) {
  const here = scene.onRecord.flatMap(({ id }) => animalById.get(id) ?? []);
  const buried = here.filter(({ reach }) => reach.insideSand === 2);
  const night = here.filter((animal) => animal.active === "night" && !buried.includes(animal));
  const names = (of: readonly { readonly commonName: string }[]) =>
    listed(of.map(({ commonName }) => lowered(commonName)));
  if (buried.length + night.length === 0) {
    return <p>Count what you see. None of the kinds on record hides by day.</p>;
  }
  return (
    <Notice kind="note" title="What a count by day can't tell">
      {buried.length === 0 ? null : (
        <p>Buried in the sand: {names(buried)}. Offer food and watch the sand.</p>
      )}
      {night.length === 0 ? null : (
        <p>Out at night: {names(night)}. Count by torch, an hour or two after the lamps went out.</p>
      )}
      <p>Few seen by day says nothing of these. None of them is called lost by it.</p>
    </Notice>
  );
}
