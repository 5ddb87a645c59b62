/**
 * Almanac: dated care, the next fourteen days first, each duty with why and with what would change it. A wave stands with
 * its gate. What is done is logged by the daybook's own form, filled in as far as is known.
 */
import type { Almanac } from "../../answers/almanac/almanac.ts";
import type { CareDate } from "../../answers/almanac/care-date.ts";
import { plain } from "../../answers/sentence.ts";
import { counted, dateWords } from "../../answers/words.ts";
import { addDays, daysBetween } from "../../contract/quantity/calendar.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Disclosure } from "../parts/disclosure.tsx";
import { Notice } from "../parts/notice.tsx";
import { adviceAddress } from "./advice-address.ts";
import { Sentence } from "./sentence.tsx";

export interface AlmanacView {
  readonly head: TankHead;
  readonly almanac: Almanac;
  /** IANA zone of the tank; null where nobody said. */
  readonly zone: string | null;
  /** Feeds that stand. */
  readonly feeds: number;
}

const NEAR_DAYS = 14;
/** What comes again sooner is told once, with how often. */
const TOLD_AGAIN_FROM = 4;

export function almanacPage({ head, almanac, zone, feeds }: AlmanacView): Page {
  const { today, dates } = almanac;
  const last = addDays(today, NEAR_DAYS - 1);
  const near = dates.filter(({ on }) => on <= last);
  const later = dates.filter(({ on }) => on > last);
  const title = findingOf(almanac);
  return {
    title: `${title} ${head.name}`,
    tank: head,
    here: "almanac",
    body: (
      <>
        <h1>{title}</h1>
        <p class="gloss">Almanac: what is due when, worked out from this tank.</p>
        {almanac.benchFirst ? (
          <Notice kind="look" title="The bench comes first">
            <p>
              Something was told or measured that goes before all dated care.{" "}
              <a href={to.tank(head.id)}>See the bench</a>
            </p>
          </Notice>
        ) : null}
        <section>
          <h2>The next 14 days</h2>
          {near.length === 0 ? <p>Nothing is due. Look at the tank as you feed.</p> : null}
          {daysOf(near, today, last).map(({ on, first, again }) => (
            <section key={on} class="almanac-day">
              <h3>{on === today ? `Today, ${dateWords(on)}` : weekdayWords(on)}</h3>
              {first.length === 0 ? null : (
                <ul class="almanac-duties">
                  <Duties tank={head.id} dates={first} />
                </ul>
              )}
              {again.length === 0 ? null : <p>Again: {again.map(({ do: what }) => plain(what)).join(" ")}</p>}
            </section>
          ))}
        </section>
        <Later tank={head.id} dates={later} />
        <Undated almanac={almanac} />
        <section class="screen-only">
          <h2>In your own calendar</h2>
          <ul>
            <li>
              <a href={to.calendarFile(head.id)}>A calendar file (.ics)</a>: taken in again after changes, it
              moves what moved and takes out what no longer holds.
            </li>
            <li>
              <a href={to.calendarFeeds(head.id)}>An address for a calendar program</a>
              {feeds === 0
                ? ": none stands."
                : `: ${counted(feeds, "address")} stand${feeds === 1 ? "s" : ""}.`}
            </li>
            <li>
              {zone === null
                ? "The tank's time zone is not told; days are those of this machine. "
                : `Days and times are those of ${zone}. `}
              <a href={to.units(head.id)}>{zone === null ? "Say where it stands" : "Change it"}</a>
            </li>
          </ul>
        </section>
      </>
    ),
  };
}

function findingOf({ today, dates }: Almanac): string {
  const due = dates.filter(({ on }) => on === today);
  const tests = due.filter(({ kind }) => kind === "test");
  const rest = due.filter(({ kind }) => kind !== "test");
  const deeds = [
    ...rest.map(({ do: what }) => plain(what)),
    ...(tests.length === 0 ? [] : [testsWords(tests)]),
  ];
  const [first, ...more] = deeds;
  if (first !== undefined) return more.length === 0 ? first : `${first} And ${more.length} more today.`;
  const next = dates[0];
  return next === undefined ? "Nothing is due." : `Nothing is due today. Next: ${dateWords(next.on)}.`;
}

/** "Test phosphate and alkalinity." of several tests. */
function testsWords(tests: readonly CareDate[]): string {
  const names = tests.map(({ do: what }) =>
    plain(what)
      .replace(/^Test /, "")
      .replace(/(?: for the first time)?\.$/, ""),
  );
  const last = names.at(-1) ?? "";
  return `Test ${names.length < 2 ? last : `${names.slice(0, -1).join(", ")} and ${last}`}.`;
}

const WEEKDAYS = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"] as const;
const weekdayWords = (iso: string): string =>
  `${WEEKDAYS[new Date(`${iso}T00:00:00Z`).getUTCDay()]}, ${dateWords(iso)}`;

interface Day {
  readonly on: string;
  readonly first: readonly CareDate[];
  /** Duties told on an earlier day. */
  readonly again: readonly CareDate[];
}

/** Days with something on them; a duty is told whole on its first. */
function daysOf(dates: readonly CareDate[], today: string, last: string): Day[] {
  const days = Array.from({ length: daysBetween(today, last) + 1 }, (_, i) => addDays(today, i));
  return days.flatMap((on) => {
    const first = dates.filter((one) => one.on === on);
    const again = dates.filter(
      ({ on: from, every, until }) =>
        every !== null &&
        every >= TOLD_AGAIN_FROM &&
        from < on &&
        daysBetween(from, on) % every === 0 &&
        (until === null || on <= until),
    );
    return first.length + again.length === 0 ? [] : [{ on, first, again }];
  });
}

/** Tests of one day are one piece of work, each with its own reason and its own form. */
function Duties({ tank, dates }: { readonly tank: string; readonly dates: readonly CareDate[] }) {
  const tests = dates.filter(({ kind }) => kind === "test");
  const joined = tests.length > 1 ? tests : [];
  return (
    <>
      {dates
        .filter((one) => !joined.includes(one))
        .map((one) => (
          <Duty key={one.id} tank={tank} date={one} />
        ))}
      {joined.length === 0 ? null : (
        <li>
          <p class="almanac-do">{testsWords(joined)}</p>
          <Disclosure summary="Why, and what would change it">
            {joined.map((one) => (
              <div key={one.id}>
                <p class="almanac-do">
                  <Sentence of={one.do} />
                </p>
                <Reasons tank={tank} date={one} />
              </div>
            ))}
          </Disclosure>
          <p class="screen-only">
            <a href={to.tank(tank, "readings")}>Done: log them</a>
          </p>
        </li>
      )}
    </>
  );
}

interface DutyProps {
  readonly tank: string;
  readonly date: CareDate;
}

function Duty({ tank, date }: DutyProps) {
  const { at, every, until, gate } = date;
  return (
    <li>
      <p class="almanac-do">
        {at === null ? null : `${at}: `}
        <Sentence of={date.do} />
        {every === null
          ? null
          : `${every === 1 ? " Each day" : ` Then every ${every} days`}${until === null ? "" : `, to ${dateWords(until)}`}.`}
      </p>
      {gate === null ? null : (
        <p class="almanac-gate">
          <Sentence of={gate} />
        </p>
      )}
      <Disclosure summary="Why, and what would change it">
        <Reasons tank={tank} date={date} />
      </Disclosure>
      {date.done === null ? null : (
        <p class="screen-only">
          <a href={logAddress(tank, date)}>Done: log it</a>
        </p>
      )}
    </li>
  );
}

function Reasons({ tank, date: { why, byWhen, wouldChange, leads } }: DutyProps) {
  return (
    <>
      {why.map((sentence, i) => (
        <p key={i}>
          <Sentence of={sentence} />
        </p>
      ))}
      <p>
        By when: <Sentence of={byWhen} />
      </p>
      <p>
        What would change it: <Sentence of={wouldChange} />
      </p>
      {leads === null ? null : (
        <p class="screen-only">
          <a href={adviceAddress(tank, leads)}>More of it</a>
        </p>
      )}
    </>
  );
}

/** The daybook's own form, with what is known filled in; a wave's is behind its gate. */
function logAddress(tank: string, { done, kind }: Pick<CareDate, "done" | "kind">): string {
  if (done === null) return to.tank(tank, "daybook");
  if (kind === "wave") return to.acceptWave(tank, Number(done.fields["wave"] ?? 1));
  if (done.kind === "reading") return to.readingsOf(tank, done.fields["quantity"] ?? "");
  return `${to.newEntry(tank, done.kind)}?${new URLSearchParams(done.fields)}`;
}

function Later({ tank, dates }: { readonly tank: string; readonly dates: readonly CareDate[] }) {
  if (dates.length === 0) return null;
  return (
    <section>
      <h2>Later</h2>
      {[...new Set(dates.map(({ on }) => on))].map((day) => (
        <section key={day} class="almanac-day">
          <h3>{weekdayWords(day)}</h3>
          <ul class="almanac-duties">
            <Duties tank={tank} dates={dates.filter(({ on }) => on === day)} />
          </ul>
        </section>
      ))}
    </section>
  );
}

function Undated({ almanac: { undated } }: { readonly almanac: Almanac }) {
  if (undated.length === 0) return null;
  return (
    <section>
      <h2>Without a day</h2>
      <dl class="almanac-undated">
        {undated.map(({ id, what, why }) => (
          <div key={id}>
            <dt>{what}</dt>
            <dd>
              <Sentence of={why} />
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
