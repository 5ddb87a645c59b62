/**
 * Wet hand: log it now, with one wet thumb. Rows in words, the last used first; big keys for digits, values near the
 * last one as keys of their own. Without script each row leads to its form; with it each opens a panel of this page, so
 * that it works with the network gone.
 */
import type { ComponentChildren } from "preact";
import { counted } from "../../answers/words.ts";
import { CHORE_LABELS, KIND_LABELS } from "../../contract/daybook/fields.ts";
import { GROWTH_ANCHORS, SCORE_WORDS, SCORES } from "../../contract/daybook/growth-anchors.ts";
import { CHORES } from "../../contract/daybook/kinds/care.ts";
import type { EntryKind } from "../../contract/daybook/kinds.ts";
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import type { Measured } from "../../contract/daybook/reading.ts";
import type { Growth } from "../../engine/types/tank.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { capital, unitSigns } from "../parts/text.ts";
import type { OnRecord } from "./entry-form.tsx";
import { CoverDrawing } from "./entry-form-cover.tsx";
import { unitChoice } from "./form-fields.tsx";

export interface WetReading {
  readonly quantity: Measured;
  /** The unit it was typed in last. */
  readonly unit: string;
  /** As typed last; null where it was never logged. */
  readonly last: string | null;
  /** Values to choose from, near the last one, low to high. */
  readonly near: readonly string[];
}

export interface WetGrowth {
  readonly growth: Growth;
  /** Score seen last; null where it was never logged. */
  readonly last: number | null;
}

export interface WetHandView {
  readonly head: TankHead;
  /** All that can be measured, the last used first. */
  readonly readings: readonly WetReading[];
  /** All growths, the last used first. */
  readonly growths: readonly WetGrowth[];
  readonly onRecord: readonly OnRecord[];
  /** Of the keeper's numbers: "." or ",". */
  readonly decimal: string;
}

export function wetHandPage(view: WetHandView): Page {
  const { head } = view;
  return {
    title: `Wet hand, ${head.name}`,
    tank: head,
    here: "daybook",
    scripts: ["wet-hand"],
    body: (
      <div class="wet-hand" data-wet-hand>
        <h1 tabIndex={-1}>Log it now</h1>
        <div class="wet-said" role="status" data-wet-said />
        <Home {...view} />
        <Readings {...view} />
        <Growths {...view} />
        <Heads {...view} />
        <Chores {...view} />
        <section class="outbox" id="outbox" data-outbox-list hidden />
      </div>
    ),
  };
}

const readingPanel = (quantity: Measured) => `reading-${quantity}`;
const growthPanel = (growth: Growth) => `growth-${growth}`;
const headsPanel = (animal: string) => `heads-${animal}`;

interface RowProps {
  /** Panel that it opens; without script the address. */
  readonly go?: string;
  readonly href: string;
  readonly children: ComponentChildren;
  /** What was last, in small. */
  readonly last?: string | null;
  /** Where the words alone do not say it. */
  readonly name?: string;
}

function Row({ go, href, children, last = null, name }: RowProps) {
  return (
    <a class="wet-row" href={href} data-wet-go={go} aria-label={name}>
      <span>{children}</span>
      {last === null ? null : <span class="wet-last">{last}</span>}
    </a>
  );
}

function Home({ head, readings, growths }: WetHandView) {
  const [reading] = readings;
  const [growth] = growths;
  return (
    <section data-wet-panel="home">
      <ul class="wet-rows">
        <li class="wet-pair">
          {reading === undefined ? null : <ReadingRow tank={head.id} reading={reading} />}
          <Row go="readings" href={to.tank(head.id, "readings")} name="Other readings">
            Other
          </Row>
        </li>
        <li class="wet-pair">
          {growth === undefined ? null : <GrowthRow tank={head.id} growth={growth} />}
          <Row go="growths" href={to.newEntry(head.id, "growth")} name="Other growths">
            Other
          </Row>
        </li>
        <li>
          <Row go="heads" href={to.newEntry(head.id, "head_count")}>
            {KIND_LABELS.head_count}
          </Row>
        </li>
        <li>
          <Row go="chores" href={to.newEntry(head.id, "chore")}>
            {KIND_LABELS.chore}
          </Row>
        </li>
        <li>
          <Row href={to.tank(head.id, "daybook")}>Something else</Row>
        </li>
      </ul>
    </section>
  );
}

function ReadingRow({ tank, reading }: { readonly tank: string; readonly reading: WetReading }) {
  const { quantity, last } = reading;
  return (
    <Row
      go={readingPanel(quantity)}
      href={to.readingsOf(tank, quantity)}
      last={last === null ? null : unitSigns(last)}
    >
      {MEASURES[quantity].label}
    </Row>
  );
}

function GrowthRow({
  tank,
  growth: { growth, last },
}: {
  readonly tank: string;
  readonly growth: WetGrowth;
}) {
  return (
    <Row
      go={growthPanel(growth)}
      href={`${to.newEntry(tank, "growth")}?growth=${growth}`}
      last={last === null ? null : (SCORE_WORDS[last] ?? "")}
    >
      {GROWTH_ANCHORS[growth].label}
    </Row>
  );
}

interface PanelProps {
  readonly name: string;
  readonly title: string;
  readonly children: ComponentChildren;
}

function Panel({ name, title, children }: PanelProps) {
  return (
    <section class="wet-panel" data-wet-panel={name} hidden aria-labelledby={`wet-${name}`}>
      <h2 id={`wet-${name}`} tabIndex={-1}>
        {title}
      </h2>
      {children}
      <p>
        <a class="action" href="#home" data-wet-go="home">
          Back
        </a>
      </p>
    </section>
  );
}

interface WetFormProps {
  readonly tank: string;
  readonly kind: EntryKind;
  /** Of the draft: one a panel. */
  readonly name: string;
  readonly words: string;
  readonly fields: Readonly<Record<string, string>>;
  readonly children: ComponentChildren;
}

function WetForm({ tank, kind, name, words, fields, children }: WetFormProps) {
  const action = kind === "reading" ? to.tank(tank, "readings") : to.newEntry(tank, kind);
  return (
    <form
      method="post"
      action={action}
      novalidate
      class="wet-form"
      data-draft={`${to.wetHand(tank)}#${name}`}
      data-outbox={kind}
      data-tank={tank}
      data-words={words}
    >
      <input type="hidden" name="once" value="" />
      {Object.entries(fields).map(([field, value]) => (
        <input key={field} type="hidden" name={field} value={value} />
      ))}
      {children}
    </form>
  );
}

function Readings({ head, readings, decimal }: WetHandView) {
  return (
    <>
      <Panel name="readings" title="Other readings">
        <ul class="wet-rows two">
          {readings.map((reading) => (
            <li key={reading.quantity}>
              <ReadingRow tank={head.id} reading={{ ...reading, last: null }} />
            </li>
          ))}
        </ul>
      </Panel>
      {readings.map(({ quantity, unit, near }) => {
        const { label, units } = MEASURES[quantity];
        const name = readingPanel(quantity);
        return (
          <Panel key={name} name={name} title={label}>
            <WetForm tank={head.id} kind="reading" name={name} words={label} fields={{ quantity }}>
              <div class="wet-value">
                <Value name="text" label={label} panel={name} />
                <UnitOf label={label} units={units} unit={unit} />
              </div>
              {near.length === 0 ? null : (
                <div class="wet-near">
                  {near.map((value) => (
                    <button key={value} type="button" data-wet-value={value}>
                      {value}
                    </button>
                  ))}
                </div>
              )}
              <Keys signs={["<", decimal]} />
            </WetForm>
          </Panel>
        );
      })}
    </>
  );
}

function UnitOf({
  label,
  units,
  unit,
}: {
  readonly label: string;
  readonly units: readonly string[];
  readonly unit: string;
}) {
  const [only] = units;
  if (only === undefined) return null;
  if (units.length === 1) {
    return (
      <>
        <input type="hidden" name="unit" value={only} />
        <span class="unit-word">{unitChoice(only).label}</span>
      </>
    );
  }
  return (
    <select class="input unit" name="unit" aria-label={`Unit of ${label}`}>
      {units.map(unitChoice).map((choice) => (
        <option key={choice.value} value={choice.value} selected={choice.value === unit}>
          {choice.label}
        </option>
      ))}
    </select>
  );
}

/** The page's own keys write into it; a keyboard does too, and a phone brings none up. */
function Value({
  name,
  label,
  panel,
}: {
  readonly name: string;
  readonly label: string;
  readonly panel: string;
}) {
  return (
    <input
      type="text"
      class="input wet-input"
      id={`${panel}-${name}`}
      name={name}
      aria-label={label}
      inputmode="none"
      autocomplete="off"
      spellcheck={false}
    />
  );
}

const KEY_NAMES: Readonly<Record<string, string>> = {
  ".": "point",
  ",": "comma",
  "<": "less than",
  "?": "about",
};

/** Digits, what a kit's or an eye's figure needs beside them, and "Keep" where the thumb is. */
function Keys({ signs }: { readonly signs: readonly [string, string] }) {
  const [second, third] = signs;
  const key = (sign: string) => (
    <button key={sign} type="button" data-wet-key={sign} aria-label={KEY_NAMES[sign]}>
      {sign}
    </button>
  );
  return (
    <div class="wet-keys">
      {["1", "2", "3"].map(key)}
      <button type="button" data-wet-key="delete">
        Delete
      </button>
      {["4", "5", "6"].map(key)}
      {second === "" ? <span /> : key(second)}
      {["7", "8", "9"].map(key)}
      {third === "" ? <span /> : key(third)}
      {key("0")}
      <button type="submit" class="first wet-keep">
        Keep
      </button>
    </div>
  );
}

function Growths({ head, growths }: WetHandView) {
  return (
    <>
      <Panel name="growths" title="Other growths">
        <ul class="wet-rows two">
          {growths.map((growth) => (
            <li key={growth.growth}>
              <GrowthRow tank={head.id} growth={{ ...growth, last: null }} />
            </li>
          ))}
        </ul>
      </Panel>
      {growths.map(({ growth }) => {
        const name = growthPanel(growth);
        const { label, anchors } = GROWTH_ANCHORS[growth];
        return (
          <Panel key={name} name={name} title={label}>
            <WetForm tank={head.id} kind="growth" name={name} words={label} fields={{ growth }}>
              <div class="wet-scores">
                {SCORES.map((score) => (
                  <button key={score} type="submit" name="score" value={score} title={anchors[score]}>
                    <CoverDrawing growth={growth} score={score} />
                    <span>{SCORE_WORDS[score]}</span>
                  </button>
                ))}
              </div>
            </WetForm>
            <p>
              <a href={`${to.newEntry(head.id, "growth")}?growth=${growth}`}>What each score looks like</a>
            </p>
          </Panel>
        );
      })}
    </>
  );
}

function Heads({ head, onRecord }: WetHandView) {
  return (
    <>
      <Panel name="heads" title={KIND_LABELS.head_count}>
        {onRecord.length === 0 ? <p>No animals on record.</p> : null}
        <ul class="wet-rows">
          {onRecord.map(({ id, name, count }) => (
            <li key={id}>
              <Row
                go={headsPanel(id)}
                href={`${to.newEntry(head.id, "head_count")}?animal=${encodeURIComponent(name)}`}
                last={`${count} on record`}
              >
                {capital(name)}
              </Row>
            </li>
          ))}
        </ul>
      </Panel>
      {onRecord.map(({ id, name, count }) => {
        const panel = headsPanel(id);
        return (
          <Panel key={id} name={panel} title={capital(name)}>
            <WetForm
              tank={head.id}
              kind="head_count"
              name={panel}
              words={`${capital(name)} seen`}
              fields={{ animal: name }}
            >
              <div class="wet-value">
                <Value name="seen" label={`${name} seen`} panel={panel} />
                <span class="unit-word">of {counted(count, "head")}</span>
              </div>
              <div class="choice">
                <input type="checkbox" id={`${panel}-torch`} name="torch" value="yes" />
                <label for={`${panel}-torch`}>By torch</label>
              </div>
              <Keys signs={["?", ""]} />
            </WetForm>
          </Panel>
        );
      })}
    </>
  );
}

const SHARES = ["5 %", "10 %", "15 %", "20 %", "25 %", "50 %"];

function Chores({ head }: WetHandView) {
  const plain = CHORES.filter((chore) => chore !== "water_change");
  return (
    <>
      <Panel name="chores" title={KIND_LABELS.chore}>
        <WetForm tank={head.id} kind="chore" name="chores" words="Chore" fields={{}}>
          <div class="wet-rows">
            <a
              class="wet-row"
              href={`${to.newEntry(head.id, "chore")}?chore=water_change`}
              data-wet-go="water"
            >
              <span>{CHORE_LABELS.water_change}</span>
            </a>
            {plain.map((chore) => (
              <button key={chore} type="submit" class="wet-row" name="chore" value={chore}>
                <span>{CHORE_LABELS[chore]}</span>
              </button>
            ))}
          </div>
        </WetForm>
      </Panel>
      <Panel name="water" title={CHORE_LABELS.water_change}>
        <WetForm
          tank={head.id}
          kind="chore"
          name="water"
          words={CHORE_LABELS.water_change}
          fields={{ chore: "water_change" }}
        >
          <div class="wet-near">
            {SHARES.map((share) => (
              <button key={share} type="submit" name="amount" value={share}>
                {share}
              </button>
            ))}
          </div>
        </WetForm>
        <p>
          <a href={`${to.newEntry(head.id, "chore")}?chore=water_change`}>Another amount</a>
        </p>
      </Panel>
    </>
  );
}
