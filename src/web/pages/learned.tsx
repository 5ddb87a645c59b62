/**
 * What the daybook has taught: how much of the tank is known by now, quantity by quantity, and which observations had to
 * do with it. Where there is too little to learn from, what it would take.
 */
import type { LearnedOutput, LearnedQuantity } from "../../answers/learned/output.ts";
import { counted, dateWords } from "../../answers/words.ts";
import { LearnedBands } from "../charts/learned-bands.tsx";
import { bandWords, SEEN_WORDS } from "../charts/learned-words.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Disclosure } from "../parts/disclosure.tsx";
import { Quantity } from "../parts/quantity.tsx";
import { Table } from "../parts/table.tsx";
import { capital, lowerFirst } from "../parts/text.ts";
import { LearnAgain } from "./learned/again.tsx";
import { learnedSeen } from "./learned/seen.ts";

export interface LearnedView {
  readonly head: TankHead;
  readonly learned: LearnedOutput | null;
  /** Where the daybook has gone on since this was learned, a sentence of that; null where it is of today. */
  readonly since?: string | null;
}

const LEARNED_CHART = "learned-bands";
/** Observations listed; the rest pulled less. */
const OBSERVATIONS_SHOWN = 30;

export function learnedPage({ head, learned, since = null }: LearnedView): Page {
  const taught = learned?.taught ?? null;
  const title = titleOf(taught);
  return {
    title: `What the daybook has taught: ${lowerFirst(title)}`,
    tank: head,
    here: "daybook",
    scripts: ["learn-again"],
    body: (
      <>
        <h1>{title}</h1>
        <p class="gloss">
          What the daybook has taught: two hundred versions of the tank are run through its days, and those
          that show what was read and seen count from then on. Larder, plan and weeks ahead are worked out
          from them.
        </p>
        {since === null ? null : <Again head={head} learned={learned} since={since} />}
        {taught === null ? (
          <NotEnough tank={head.id} learned={learned} />
        ) : (
          <Taught tank={head.id} taught={taught} />
        )}
        {since === null && taught !== null ? <Again head={head} learned={learned} since={null} /> : null}
      </>
    ),
  };
}

const Again = ({ head, learned, since = null }: LearnedView) => (
  <LearnAgain tank={head.id} was={learned === null ? null : learnedSeen(learned)} since={since} />
);

type TaughtOutput = NonNullable<LearnedOutput["taught"]>;

function titleOf(taught: TaughtOutput | null): string {
  if (taught === null) return "Not enough in the daybook to learn from";
  const seen = taught.quantities.filter(({ seen: how }) => how === "well");
  const partly = taught.quantities.filter(({ seen: how }) => how === "partly");
  const shown = seen.length > 0 ? seen : partly;
  if (shown.length === 0) return "The daybook tells little beyond what was assumed";
  const how = seen.length > 0 ? "well seen" : "partly seen";
  const [first, ...more] = shown;
  // Names hold commas of their own: several are counted here and named below.
  return more.length === 0
    ? `${capital(first!.label)}: ${how}`
    : `${shown.length} of ${taught.quantities.length} quantities of this tank are ${how}`;
}

function NotEnough({ tank, learned }: { readonly tank: string; readonly learned: LearnedOutput | null }) {
  const there = learned?.observations ?? 0;
  const least = learned?.least ?? 4;
  return (
    <>
      <p>
        {there === 0 ? "Nothing that teaches has been observed" : `${there} observed so far`} in the last four
        months; from {least} on it begins, and four weeks of them say much more. Until then everything is
        worked out from what is common in such tanks.
      </p>
      <h2>What teaches most</h2>
      <ul>
        <li>
          <a href={to.readingsOf(tank, "no3_mg_n_per_l")}>Nitrate and phosphate</a>, once a week, with the
          same kit.
        </li>
        <li>
          <a href={to.newEntry(tank, "growth")}>Film on glass and rock</a> scored 0 to 4, once a week.
        </li>
        <li>
          <a href={to.newEntry(tank, "chore")}>Chores on the day they were done</a>: water changed, glass
          wiped, filter cleaned.
        </li>
      </ul>
    </>
  );
}

function Taught({ tank, taught }: { readonly tank: string; readonly taught: TaughtOutput }) {
  const order = { well: 0, partly: 1, hardly: 2 } as const;
  const quantities = taught.quantities.toSorted(
    (a, b) => order[a.seen] - order[b.seen] || a.spread_left - b.spread_left,
  );
  const told = quantities.filter(({ seen }) => seen !== "hardly");
  const hardly = quantities.filter(({ seen }) => seen === "hardly");
  const shown = told.length > 0 ? told : quantities.slice(0, 3);
  return (
    <>
      <p>
        Learned from {dateWords(taught.from)} to {dateWords(taught.to)}. {sentenceOf(quantities)}
      </p>
      <LearnedBands id={LEARNED_CHART} quantities={shown} title={chartTitle(told)} />
      <h2>Quantity by quantity</h2>
      {told.length === 0 ? null : (
        <NowAndBefore caption="What is known now, and what was known before" quantities={told} />
      )}
      {hardly.length === 0 ? null : (
        <Disclosure summary={`${hardly.length} hardly seen: of these still holds what was assumed`}>
          <NowAndBefore caption="Hardly seen: now, and before" quantities={hardly} />
        </Disclosure>
      )}
      <h2>Who taught</h2>
      <Table
        caption="Of all that was learned, what would be missing without each kind of observation. Kinds that say the same can spare each other, so shares need not add up."
        columns={[{ name: "observed" }, { name: "times", numeric: true }, { name: "share", numeric: true }]}
        rows={taught.groups
          .toSorted((a, b) => b.share - a.share)
          .map(({ label, observations, share, figure }) => [
            capital(label),
            String(observations),
            <Quantity key="share" figure={figure}>
              {Math.round(100 * share)} %
            </Quantity>,
          ])}
      />
      <Observations tank={tank} taught={taught} />
      <p>
        A reading that lies far off every version counts for less here. Advice takes it as it stands: a
        dangerous reading is never averaged away.
      </p>
    </>
  );
}

interface NowAndBeforeProps {
  readonly caption: string;
  readonly quantities: readonly LearnedQuantity[];
}

function NowAndBefore({ caption, quantities }: NowAndBeforeProps) {
  return (
    <Table
      caption={caption}
      columns={[
        { name: "quantity" },
        { name: "now", numeric: true },
        { name: "before", numeric: true },
        { name: "seen" },
        { name: "pulled most by" },
      ]}
      rows={quantities.map(({ label, unit, before, after, seen, pulled_by, figure }) => [
        capital(label),
        <Quantity key="now" figure={figure}>
          {bandWords(after, unit)}
        </Quantity>,
        <Quantity key="before" figure={figure}>
          {bandWords(before, unit)}
        </Quantity>,
        SEEN_WORDS[seen],
        pulled_by === null ? "nothing" : `${pulled_by.label}, ${pulled_by.way}`,
      ])}
    />
  );
}

function sentenceOf(quantities: readonly LearnedQuantity[]): string {
  const names = (seen: LearnedQuantity["seen"]) =>
    quantities.filter((quantity) => quantity.seen === seen).map(({ label }) => label);
  const well = names("well");
  const partly = names("partly");
  const hardly = names("hardly");
  return [
    ...(well.length > 0 ? [`Well seen: ${well.join("; ")}.`] : []),
    ...(partly.length > 0 ? [`Partly: ${partly.join("; ")}.`] : []),
    ...(hardly.length > 0
      ? [`Hardly, so that what was assumed still holds: ${counted(hardly.length, "other")}.`]
      : []),
  ].join(" ");
}

const chartTitle = (told: readonly LearnedQuantity[]): string =>
  told.length === 0
    ? "No quantity is narrower than before by a fifth"
    : `${told.length === 1 ? "1 quantity is" : `${told.length} quantities are`} narrower than before by a fifth or more`;

const PULL_WORDS = { much: "moved it much", some: "moved it somewhat", little: "moved it little" } as const;

function Observations({ tank, taught }: { readonly tank: string; readonly taught: TaughtOutput }) {
  const rank = { much: 0, some: 1, little: 2 } as const;
  const shown = taught.readings
    .toSorted((a, b) => rank[a.pull] - rank[b.pull] || (a.on < b.on ? 1 : -1))
    .slice(0, OBSERVATIONS_SHOWN);
  return (
    <>
      <h2>Observation by observation</h2>
      <Disclosure
        summary={
          shown.length < taught.readings.length
            ? `The ${shown.length} that pulled most of ${taught.readings.length}`
            : `All ${shown.length}, and how far each pulled`
        }
      >
        <Table
          caption={
            shown.length < taught.readings.length
              ? `The ${shown.length} that pulled most of ${taught.readings.length}`
              : "How far each pulled"
          }
          columns={[{ name: "on" }, { name: "observed" }, { name: "pulled at" }, { name: "how far" }]}
          rows={shown.map(({ entry, on, label, moved, way, pull, outlying }) => [
            <a key="on" href={to.entry(tank, entry)}>
              {dateWords(on)}
            </a>,
            capital(label),
            pull === "little" ? "nothing much" : `${moved}, ${way}`,
            `${PULL_WORDS[pull]}${outlying ? "; lies off every version" : ""}`,
          ])}
        />
      </Disclosure>
    </>
  );
}
