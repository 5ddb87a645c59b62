/**
 * Leaving home: from a day to a day. On the screen the form, the three ways of feeding side by side and what to do before;
 * on paper one page for a sitter. Nothing is saved: the dates stand in the address.
 */
import type { CareDate } from "../../answers/almanac/care-date.ts";
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
        ]}
      />
      <button type="submit">Work it out</button>
    </form>
  );
}

function Planned({ head, today, plan }: HolidayView & { readonly plan: NonNullable<HolidayView["plan"]> }) {
  const { span, packing, dates, outcome } = plan;
  const query = spanQuery(span);
  return (
    <WorkingOf.Provider value={(_, id) => to.holidayWorking(head.id, id, query)}>
      <div class="holiday-screen">
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
      <SitterSheet span={span} packing={packing} today={today} />
    </WorkingOf.Provider>
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
