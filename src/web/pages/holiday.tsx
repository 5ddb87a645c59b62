/**
 * Leaving home: from a day to a day. On the screen the form, the three ways of feeding side by side and what to do before;
 * on paper one page for a sitter. The dates stand in the address until they are kept by one press, as an entry of the daybook.
 */
import type { CareDate } from "../../answers/almanac/care-date.ts";
import type { KeptAbsence } from "../../answers/holiday/absences.ts";
import { type HolidayOutput, WAY_WORDS } from "../../answers/holiday/holiday.ts";
import type { HolidaySpan, Packing } from "../../answers/holiday/packing.ts";
import { type HolidayTyped, spanQuery, USUAL_EVERY } from "../../answers/holiday/read-span.ts";
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import { dateWords } from "../../answers/words.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Choices } from "../parts/choices.tsx";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { Field } from "../parts/field.tsx";
import { Table } from "../parts/table.tsx";
import { WorkingOf } from "../parts/tank-context.ts";
import { errorOf, summaryOf } from "./form-fields.tsx";
import { Sentence } from "./sentence.tsx";
import { SitterSheet } from "./sitter-sheet.tsx";

interface HolidayView {
  readonly head: TankHead;
  readonly typed: HolidayTyped;
  readonly doubts: readonly FieldDoubt[];
  /** ISO date. */
  readonly today: string;
  /** Null until both days are told and read. */
  readonly plan: {
    readonly span: HolidaySpan;
    readonly packing: Packing;
    readonly dates: readonly CareDate[];
    /** Null while the runs are being worked out. */
    readonly outcome: HolidayOutput | null;
    /** What the daybook keeps of these days; null where nothing. */
    readonly kept: KeptAbsence | null;
    /** What can't wait meanwhile, for the sheet. */
    readonly sitter: readonly CareDate[];
    readonly once: string;
  } | null;
}

export function holidayPage(view: HolidayView): Page {
  const { head, doubts, plan } = view;
  return {
    title: `${doubts.length > 0 ? "Error: " : ""}${titleOf(view)}`,
    tank: head,
    here: "feeding",
    body: (
      <>
        <div class="holiday-screen">
          <h1>Leaving home</h1>
          <ErrorSummary errors={summaryOf(doubts)} />
          <p class="lead">From a day to a day: what to pack, what would happen, a page for a sitter.</p>
          <HolidayForm {...view} />
        </div>
        {plan === null ? null : <Planned {...view} plan={plan} />}
      </>
    ),
  };
}

const titleOf = ({ head, plan }: HolidayView): string =>
  plan === null
    ? `Leaving home, ${head.name}`
    : `${head.name}, ${dateWords(plan.span.from)} to ${dateWords(plan.span.to)}`;

function HolidayForm({ head, typed, doubts, today }: HolidayView) {
  const every = typed.every ?? USUAL_EVERY;
  return (
    <form method="get" action={to.holiday(head.id)} novalidate>
      <Field
        name="from"
        label="Leaving"
        hint={`A date such as ${dateWords(today)}.`}
        value={typed.from ?? ""}
        width="middle"
        error={errorOf("from", doubts)}
      />
      <Field
        name="to"
        label="Coming back"
        value={typed.to ?? ""}
        width="middle"
        error={errorOf("to", doubts)}
      />
      <Choices
        name="every"
        legend="A sitter would feed"
        hint="Grown fish bear days without food; a sitter who feeds less often can do less harm."
        error={errorOf("every", doubts)}
        options={[
          { value: "1", label: "daily", checked: every === "1" },
          { value: "2", label: "every second day", checked: every === "2" },
          { value: "3", label: "every third day", checked: every === "3" },
          ...(/^[4-7]$/.test(every) ? [{ value: every, label: `every ${every} days`, checked: true }] : []),
        ]}
      />
      <button type="submit">Work it out</button>
    </form>
  );
}

type Plan = NonNullable<HolidayView["plan"]>;

const KEEP_AS = [
  ["sitter", "a sitter feeds"],
  ["nobody", "nobody comes"],
  ["feeder", "a feeder feeds"],
] as const satisfies readonly (readonly [KeptAbsence["fedBy"], string])[];

const keptWords = ({ from, to: back, fedBy, sitterEvery }: KeptAbsence): string =>
  `Away from ${dateWords(from)} to ${dateWords(back)}, ${
    fedBy === "sitter"
      ? `a sitter feeds ${sitterEvery === 1 ? "daily" : `every ${sitterEvery} days`}`
      : KEEP_AS.find(([by]) => by === fedBy)?.[1]
  }.`;

/** One press: almanac, next action and weeks ahead know of it from then on. */
function KeepDates({ head, plan }: { readonly head: TankHead; readonly plan: Plan }) {
  const { span, kept, once } = plan;
  const same = kept !== null && kept.from === span.from && kept.to === span.to;
  return (
    <section>
      <h2>Keep these dates</h2>
      {kept === null ? (
        <p>
          Almanac, bench and weeks ahead then go by them: what is due is moved before or after, no animal
          comes.
        </p>
      ) : (
        <p>
          <strong>Kept:</strong> {keptWords(kept)}{" "}
          {kept.entry === null ? (
            "The tank's answers say so."
          ) : (
            <a href={to.entry(head.id, kept.entry)}>Correct it or take it away</a>
          )}
        </p>
      )}
      <form method="post" action={to.holiday(head.id)}>
        <input type="hidden" name="from" value={span.from} />
        <input type="hidden" name="to" value={span.to} />
        <input type="hidden" name="every" value={String(span.sitterEvery)} />
        <input type="hidden" name="once" value={once} />
        <div class="actions">
          {KEEP_AS.filter(
            ([by]) =>
              !(same && kept.fedBy === by && (by !== "sitter" || kept.sitterEvery === span.sitterEvery)),
          ).map(([by, words], i) => (
            <button
              key={by}
              type="submit"
              name="fed_by"
              value={by}
              class={i === 0 && kept === null ? "first" : undefined}
            >
              {kept === null ? "Keep" : same ? "Change to" : "Keep these instead"}: {words}
            </button>
          ))}
        </div>
      </form>
    </section>
  );
}

function Planned({ head, today, plan }: HolidayView & { readonly plan: Plan }) {
  const { span, packing, dates, outcome, sitter } = plan;
  const query = spanQuery(span);
  return (
    <WorkingOf.Provider value={(_, id) => to.holidayWorking(head.id, id, query)}>
      <div class="holiday-screen">
        {span.from < today ? (
          <p class="lead">You are away now. What can wait stands in the almanac for the day you are back.</p>
        ) : (
          <WouldHappen head={head} query={query} outcome={outcome} />
        )}
        {packing.short.length === 0 ? null : (
          <section>
            <h3>Who may not last so long unfed</h3>
            <p>A full reserve at its worst lasts no longer than you are away:</p>
            <ul>
              {packing.short.map(({ name, lasts }) => (
                <li key={name}>
                  {name}: <Sentence of={[lasts]} />
                </li>
              ))}
            </ul>
          </section>
        )}
        <KeepDates head={head} plan={plan} />
        <h2>Before you go, and after</h2>
        <dl class="facts">
          {dates.map(({ id, on, do: sentence, why }) => (
            <div key={id}>
              <dt>{dateWords(on)}</dt>
              <dd>
                <Sentence of={sentence} />{" "}
                <span class="note">
                  {why.map((one, i) => (
                    <span key={i}>
                      <Sentence of={one} />{" "}
                    </span>
                  ))}
                </span>
              </dd>
            </div>
          ))}
        </dl>
        <h2>The page for a sitter</h2>
        <p>
          Print this page: on paper only what stands below is left, one side. Write in whom to call.{" "}
          <a href={to.tank(head.id, "feeding")}>Back to feeding</a>
        </p>
      </div>
      <SitterSheet span={span} packing={packing} sitter={sitter} today={today} />
    </WorkingOf.Provider>
  );
}

interface WouldHappenView {
  readonly head: TankHead;
  readonly query: string;
  readonly outcome: HolidayOutput | null;
}

function WouldHappen({ head, query, outcome }: WouldHappenView) {
  return (
    <>
      <h2>What would happen</h2>
      {outcome === null ? (
        <div data-await data-src={to.holiday(head.id, `${query}&part=1`)}>
          <p role="status">Twenty versions of this tank are being run, which takes a few seconds.</p>
          <p>
            <a href={to.holiday(head.id, `${query}&wait=1`)}>Wait for them</a>
          </p>
        </div>
      ) : (
        <Ways outcome={outcome} />
      )}
    </>
  );
}

/** The comparison alone, for the slot that waited for it. */
export function holidayPart(head: TankHead, outcome: HolidayOutput): Page {
  return {
    title: `Leaving home, ${head.name}`,
    tank: head,
    here: "feeding",
    body: (
      <WorkingOf.Provider value={(_, id) => to.holidayWorking(head.id, id, spanQuery(outcome))}>
        <Ways outcome={outcome} />
      </WorkingOf.Provider>
    ),
  };
}

function Ways({ outcome: { finding, ways, days } }: { readonly outcome: HolidayOutput }) {
  return (
    <>
      <p>
        <Sentence of={finding} />
      </p>
      <Table
        caption={`After ${days} days without wiping, water change or filter cleaning; top-up goes on`}
        columns={[
          { name: "Way" },
          { name: "Nitrate, mg/L", numeric: true },
          { name: "Phosphate, mg/L", numeric: true },
          { name: "Ammonia that harms, runs", numeric: true },
          { name: "Film on glass, mg C/m²", numeric: true },
          { name: "Crew lost, heads", numeric: true },
        ]}
        rows={ways.map(({ way, nitrate, phosphate, ammonia, film, lost }) => [
          WAY_WORDS[way],
          ...[nitrate, phosphate, ammonia, film, lost].map((one) => <Sentence key={one.figure} of={[one]} />),
        ])}
      />
      <p class="note">
        Ammonia harms over days from 0.035 mg/L of its un-ionised part on. Film is seen from 150, covers from
        about 1200. Fish are not starved in these runs: grown ones bear a week or two, young ones and those
        that peck all day do not. A pump or heater that fails is in none of them.
      </p>
    </>
  );
}
