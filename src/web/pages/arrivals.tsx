/**
 * Arrivals: what to look at before paying, acclimation, quarantine with dates, day three, signs of disease, a fallow
 * time with who goes hungry in it, medicines of this tank and all that are known.
 */
import { BEFORE_PAYING } from "../../answers/arrivals/before-paying.ts";
import type { Fallow } from "../../answers/arrivals/fallow.ts";
import {
  type Apart,
  FALLOW_DAYS,
  HOSPITAL_TANK,
  QUARANTINED,
  type QuarantineDay,
  type Quarantined,
  REFUSES_FOOD,
  SIGNS_OF_DISEASE,
} from "../../answers/arrivals/quarantine.ts";
import { backFigureId, leftFigureId } from "../../answers/medicines/after.ts";
import type { MedicineCourse } from "../../answers/medicines/courses.ts";
import { chance, counted, dateWords, dryFood } from "../../answers/words.ts";
import type { Medicine } from "../../engine/types/medicine.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Grains } from "../parts/grains.tsx";
import { Notice } from "../parts/notice.tsx";
import { Quantity } from "../parts/quantity.tsx";
import { WorkingOf } from "../parts/tank-context.ts";
import { capital } from "../parts/text.ts";
import { type Arrived, ArrivedList } from "./arrived.tsx";
import { type TankWorkingView, WorkingArticle } from "./working.tsx";

/** As long as a seller may be asked, and longer. */
export const DEAD_DAYS = 60;

export interface ArrivalsView {
  readonly head: TankHead;
  readonly today: string;
  readonly apart: readonly Apart[];
  /** The plan that is shown, from a day on. */
  readonly plan: {
    readonly group: Quarantined;
    readonly from: string;
    readonly days: readonly QuarantineDay[];
  };
  readonly courses: readonly MedicineCourse[];
  readonly medicines: readonly Medicine[];
  /** Null unless asked for. */
  readonly fallow: Fallow | null;
  readonly fallowFrom: string;
  readonly fallowUntil: string;
  /** What came dead within `DEAD_DAYS`. */
  readonly dead: readonly Arrived[];
}

export function arrivalsPage(view: ArrivalsView): Page {
  const { head } = view;
  const title = titleOf(view);
  return {
    title: `Arrivals: ${title}`,
    tank: head,
    here: "arrivals",
    body: (
      <>
        <h1>{title}</h1>
        <p class="gloss">Arrivals: from the shop to the tank, and what is kept apart meanwhile.</p>
        <Medicines view={view} />
        <BeforePaying />
        <Acclimation tank={head.id} />
        <Dead view={view} />
        <Quarantine view={view} />
        <DayThree tank={head.id} />
        <Disease tank={head.id} />
        <FallowTime view={view} />
        <AllMedicines tank={head.id} medicines={view.medicines} />
        <p class="hint">
          What to look at, days of quarantine and fallow times are common practice, no source; a vet's word
          overrules them. Laws on keeping and treating animals differ: yours go first.
        </p>
      </>
    ),
  };
}

function titleOf({ courses, apart }: ArrivalsView): string {
  const [running] = courses.filter(({ endedOn }) => endedOn === null);
  if (running !== undefined) return `${capital(running.typed)} is in the water: nothing is added now`;
  const [course] = courses;
  if (course?.backOn != null)
    return `${capital(course.typed)} was in the water: no crew before ${dateWords(course.backOn)}`;
  const [first] = apart;
  if (first !== undefined)
    return first.what === "fallow"
      ? `No fish until ${dateWords(first.until)}: the tank lies fallow`
      : `In quarantine until ${dateWords(first.until)}: ${first.words === "" ? QUARANTINED[first.group].name : first.words}`;
  return "Look before you pay, then keep it apart for weeks";
}

function Medicines({ view: { courses, head } }: { readonly view: ArrivalsView }) {
  if (courses.length === 0) return null;
  return (
    <section id="medicines">
      <h2>Medicine in this tank</h2>
      {courses.map((course) => {
        const { typed, medicine, endedOn, startedOn, backOn } = course;
        return (
          <Notice key={typed} kind={endedOn === null ? "danger" : "look"} title={capital(typed)}>
            <p>
              {startedOn === null
                ? "Told in the questions, without a day"
                : `Put in on ${dateWords(startedOn)}`}
              {endedOn === null ? ", not said to have ended. " : `, ended on ${dateWords(endedOn)}. `}
              {medicine === null
                ? "Not known here by its active ingredient: it counts as the worst, and the gates stay shut. Read the label."
                : medicine.said.text}
            </p>
            <p>
              Water changes since then leave{" "}
              <Quantity figure={leftFigureId(course)}>{percent(course.left)}</Quantity> of what was dissolved;
              carbon takes more, rock and sand can give some back.
            </p>
            <p>
              {backOn === null ? (
                <>
                  The crew may come back{" "}
                  <Quantity figure={backFigureId(course)}>{returnWords(course)}</Quantity> after its end, test
                  passed.
                </>
              ) : (
                <>
                  No crew before <Quantity figure={backFigureId(course)}>{dateWords(backOn)}</Quantity>, and
                  only if: {medicine?.returnTest.text ?? "you know what it was."}
                </>
              )}{" "}
              {medicine === null ? null : (
                <a href={to.medicine(head.id, medicine.id)}>More on {medicine.name}</a>
              )}
            </p>
          </Notice>
        );
      })}
      <p>
        <a class="action" href={to.newEntry(head.id, "treatment")}>
          Log its end
        </a>
      </p>
    </section>
  );
}

const percent = (share: number): string => `${Math.round(100 * share)} %`;
const returnWords = ({ medicine }: MedicineCourse): string =>
  medicine === null ? "90 days" : counted(medicine.returnDays.value, "day");

function BeforePaying() {
  return (
    <section id="before-paying">
      <h2>Before you pay</h2>
      {BEFORE_PAYING.map(({ id, name, look, leave }) => (
        <div key={id}>
          <h3>{name}</h3>
          <ul>
            {look.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
          <p>{leave}</p>
        </div>
      ))}
    </section>
  );
}

function Acclimation({ tank }: { readonly tank: string }) {
  return (
    <section id="acclimation">
      <h2>Into the water</h2>
      <p>
        Measure salinity, temperature and pH in the bag, and its ammonia if you can. A bag that was long on
        the way has low pH and much ammonia; once it is open, pH rises and the ammonia turns poisonous.
      </p>
      <p>
        <a class="action" href={to.sum(tank, "acclimation")}>
          Work out steps or a drip
        </a>
      </p>
      <ul>
        <li>Lights low on that day. Never pour the bag's water into the tank.</li>
        <li>Invertebrates are the narrow ones: slow with salinity, never dipped in fresh water.</li>
      </ul>
      <p>
        <a href={to.newEntry(tank, "addition")}>Log what arrived, alive and dead</a>
      </p>
    </section>
  );
}

function Dead({ view: { head, dead } }: { readonly view: ArrivalsView }) {
  return (
    <section id="dead-on-arrival">
      <h2>Dead on arrival</h2>
      {dead.length === 0 ? (
        <p>
          Nothing came dead within the last {DEAD_DAYS} days, by the daybook. If something does: log it with
          its hour, then add a picture to that entry before the bag is emptied; many shops ask for both.
        </p>
      ) : (
        <ArrivedList tank={head.id} arrived={dead} />
      )}
    </section>
  );
}

const GROUP_CHOICES = Object.entries(QUARANTINED) as [Quarantined, (typeof QUARANTINED)[Quarantined]][];

/** The form of a change, filled in: what began or ended is told by its words. */
const apartForm = (tank: string, words: string): string =>
  `${to.newEntry(tank, "change")}?${new URLSearchParams({ changed: "other", to: words })}`;

function Quarantine({ view: { head, apart, plan } }: { readonly view: ArrivalsView }) {
  const running = apart.filter(({ what }) => what === "quarantine");
  return (
    <section id="quarantine">
      <h2>Quarantine</h2>
      {running.length === 0 ? (
        <p>
          Nobody is in quarantine by the daybook. Log who goes in, as "quarantine: 2 clownfish", and its days
          stand in the almanac. <a href={apartForm(head.id, "quarantine: ")}>Log a quarantine</a>
        </p>
      ) : (
        <ul>
          {running.map(({ entry, words, group, from, until }) => (
            <li key={entry}>
              {capital(words === "" ? QUARANTINED[group].name : words)}: since {dateWords(from)}, until{" "}
              {dateWords(until)} at the earliest.{" "}
              <a href={`${to.tank(head.id, "arrivals")}?group=${group}&from=${from}#plan`}>Its plan</a>.{" "}
              <a href={apartForm(head.id, words === "" ? "quarantine ended" : `quarantine ended: ${words}`)}>
                It has ended
              </a>
            </li>
          ))}
        </ul>
      )}
      <h3 id="plan">
        Plan for {QUARANTINED[plan.group].name}, from {dateWords(plan.from)}
      </h3>
      <ol class="dated">
        {plan.days.map(({ day, on, do: words }) => (
          <li key={day}>
            {dateWords(on)}, day {day}: {words}
          </li>
        ))}
      </ol>
      <form method="get" action={`${to.tank(head.id, "arrivals")}#plan`} class="choose-day">
        <div class="pick">
          <label for="group" class="label">
            Plan for
          </label>
          <select id="group" name="group" class="input">
            {GROUP_CHOICES.map(([group, { name }]) => (
              <option key={group} value={group} selected={group === plan.group}>
                {name}
              </option>
            ))}
          </select>
        </div>
        <div class="pick">
          <label for="from" class="label">
            from
          </label>
          <input id="from" name="from" type="date" class="input" value={plan.from} />
        </div>
        <button type="submit">Show it</button>
      </form>
    </section>
  );
}

function Lines({ of }: { readonly of: readonly string[] }) {
  return (
    <ul>
      {of.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}

function DayThree({ tank }: { readonly tank: string }) {
  return (
    <section id="day-three">
      <h2>Day three, and it refuses food</h2>
      <Lines of={REFUSES_FOOD} />
      <p>
        <a href={to.newEntry(tank, "sign")}>Log what you see</a>
      </p>
    </section>
  );
}

function Disease({ tank }: { readonly tank: string }) {
  return (
    <section id="disease">
      <h2>Signs of disease in a fish</h2>
      <Lines of={SIGNS_OF_DISEASE} />
      <h3>Hospital tank</h3>
      <Lines of={HOSPITAL_TANK} />
      <p>
        <a href={`${to.tank(tank, "growths")}?see=animal&trait.shape_dots=yes`}>White dots: what are they?</a>
      </p>
    </section>
  );
}

function FallowTime({ view }: { readonly view: ArrivalsView }) {
  const { head, fallow, fallowFrom, fallowUntil, apart } = view;
  const running = apart.some(({ what }) => what === "fallow");
  const address = `${to.tank(head.id, "arrivals")}?fallow=1#fallow`;
  return (
    <section id="fallow">
      <h2>A fallow time</h2>
      <p>
        All fish out, into a hospital tank, for {FALLOW_DAYS} days: {running ? "" : "begun today, "}
        from {dateWords(fallowFrom)} to {dateWords(fallowUntil)}. Leftovers stop, and the crew that lived on
        them goes hungry.{" "}
        {running ? (
          <a href={apartForm(head.id, "fallow ended")}>It has ended</a>
        ) : (
          <>
            Once it is logged its end stands in the almanac.{" "}
            <a href={apartForm(head.id, "fallow")}>Log its first day</a>
          </>
        )}
      </p>
      {fallow === null ? (
        <p>
          <a class="action" href={address}>
            Work out who goes hungry
          </a>{" "}
          (some seconds)
        </p>
      ) : (
        <WorkingOf.Provider value={(tank, figure) => to.fallowWorking(tank ?? head.id, figure)}>
          <Hungry fallow={fallow} tank={head.id} />
        </WorkingOf.Provider>
      )}
    </section>
  );
}

/** From this many of 20 on a kind is fed or moved before it begins. */
const WORTH_FEEDING = 3;

function Hungry({ fallow: { kinds, fed }, tank }: { readonly fallow: Fallow; readonly tank: string }) {
  if (kinds.length === 0) return <p>No crew lives here that could go hungry.</p>;
  const hungry = kinds.filter(({ starvesOf20 }) => starvesOf20 >= WORTH_FEEDING);
  return (
    <>
      <p>
        {hungry.length === 0
          ? "With no fish and no feed, no kind of the crew starves in more than 2 of 20 runs by the end of it."
          : `${capital(counted(hungry.length, "kind"))} of the crew would go hungry: feed or move them before it begins.`}
      </p>
      <ul class="chances">
        {kinds.map(({ id, name, heads, starvesOf20, figure }) => (
          <li key={id}>
            <Grains of20={starvesOf20} yes="lose half or more to hunger" no="do not">
              {capital(counted(heads, name))}: half or more starve,{" "}
              <Quantity figure={figure}>{chance(starvesOf20)}</Quantity>
              {starvesOf20 >= WORTH_FEEDING ? ". Feed by hand, or let them live elsewhere meanwhile." : "."}
            </Grains>
          </li>
        ))}
      </ul>
      {fed.length === 0 ? null : (
        <>
          <h3>What to feed by hand, a day</h3>
          <ul>
            {fed.map(({ name, dryFeedMg, figure }) => (
              <li key={name}>
                {capital(name)}: <Quantity figure={figure}>{dryFood(dryFeedMg)}</Quantity> of dry food, in all
              </li>
            ))}
          </ul>
        </>
      )}
      <p>
        Film and hair algae keep growing while nobody feeds; seaweed for grazers and wafers for those that eat
        waste are common practice. <a href={to.tank(tank, "feeding")}>Foods and portions</a>
      </p>
    </>
  );
}

function AllMedicines({
  tank,
  medicines,
}: {
  readonly tank: string;
  readonly medicines: readonly Medicine[];
}) {
  return (
    <section id="all-medicines">
      <h2>Medicines by active ingredient</h2>
      <p>
        What each does to whom, how it leaves, and when a crew may come back. No amounts: those are the vet's
        and the label's.
      </p>
      <ul>
        {medicines.map(({ id, name, said }) => (
          <li key={id}>
            <a href={to.medicine(tank, id)}>{capital(name)}</a>: {said.text}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Working of a figure of a fallow time; further workings are of the same. */
export function fallowWorkingPage(view: TankWorkingView): Page {
  const { head, figure } = view;
  return {
    title: `How do you know? ${figure.label}, in a fallow time`,
    tank: head,
    here: null,
    body: (
      <WorkingOf.Provider value={(_, id) => to.fallowWorking(head.id, id)}>
        <p class="note">
          {FALLOW_DAYS} days without fish and without feed, the crew as it is. Nothing of it is saved.{" "}
          <a href={`${to.tank(head.id, "arrivals")}?fallow=1#fallow`}>The fallow time</a>
        </p>
        <WorkingArticle {...view} />
      </WorkingOf.Provider>
    ),
  };
}
