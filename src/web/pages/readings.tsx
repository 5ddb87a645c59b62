/**
 * Readings: log one, see them latest first with what was typed, correct, take away, bring back. The form is the first
 * thing: a phone and one thumb. Danger is told in plain words beside its figure.
 */
import { type LatestReading, saidOf } from "../../answers/bench/latest.ts";
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { dateWords } from "../../answers/words.ts";
import { saidCold } from "../../answers/wrong/list-of-danger.ts";
import { MEASURES } from "../../contract/daybook/read-reading.ts";
import { MEASURED, type Measured, type ReadingBody } from "../../contract/daybook/reading.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { FirstSteps } from "../parts/first-steps.tsx";
import { Notice } from "../parts/notice.tsx";
import { unitSigns } from "../parts/text.ts";
import { ReturnKey, summaryOf } from "./form-fields.tsx";
import { ReadingFields } from "./reading-form.tsx";

export interface ReadingLine {
  readonly id: string;
  readonly version: number;
  readonly on: string;
  readonly kept: boolean;
  readonly body: ReadingBody;
  /** In the unit that the keeper reads, where it differs from what was typed. */
  readonly shown: string | null;
}

export interface ReadingsView {
  readonly head: TankHead;
  readonly quantity: Measured;
  readonly values: Values;
  readonly doubts: readonly FieldDoubt[];
  /** Sent with the form: however often it arrives, it adds one row. */
  readonly once: string;
  /** It came from this browser's outbox, with a form that could not be read: it stays. */
  readonly keepsKey: boolean;
  /** Latest first. */
  readonly lines: readonly ReadingLine[];
  /** Also those taken away are listed. */
  readonly withRemoved: boolean;
  /** Told in the answers to the questions, not here. */
  readonly told: readonly LatestReading[];
  /** Just kept. */
  readonly kept: ReadingLine | null;
  /** Address of older ones; null where these are all. */
  readonly older: string | null;
}

export function readingsPage(view: ReadingsView): Page {
  const { head, quantity, doubts } = view;
  return {
    title: `${doubts.length > 0 ? "Error: " : ""}Log a reading, ${head.name}`,
    tank: head,
    here: "daybook",
    body: (
      <>
        <ErrorSummary errors={summaryOf(doubts)} />
        {view.kept === null ? null : <Kept tank={head.id} line={view.kept} />}
        <h1>Log a reading</h1>
        <p>
          <a href={to.tank(head.id, "daybook")}>Daybook: all that happened</a>
        </p>
        <nav aria-label="What was measured">
          <ul class="question-steps">
            {MEASURED.map((name) => (
              <li key={name}>
                <a
                  class="action"
                  href={to.readingsOf(head.id, name)}
                  aria-current={name === quantity ? "true" : undefined}
                >
                  {MEASURES[name].label}
                </a>
              </li>
            ))}
          </ul>
        </nav>
        <form
          method="post"
          action={to.tank(head.id, "readings")}
          novalidate
          data-draft={to.readingsOf(head.id, quantity)}
          data-outbox="reading"
          data-tank={head.id}
          data-words={MEASURES[quantity].label}
          data-key={view.keepsKey ? "" : undefined}
        >
          <ReturnKey />
          <input type="hidden" name="quantity" value={quantity} />
          <input type="hidden" name="once" value={view.once} />
          <ReadingFields quantity={quantity} values={view.values} doubts={doubts} />
          <div class="actions">
            <button type="submit" class="first">
              Keep this reading
            </button>
          </div>
        </form>
        <Lines {...view} />
        <Told tank={head.id} told={view.told} />
      </>
    ),
  };
}

/** "Temperature 25.7 °C": as typed, its unit with its sign. */
export const readingWords = ({ quantity, text }: ReadingBody): string =>
  `${MEASURES[quantity].label} ${unitSigns(text)}`;

/** What was kept, how it was read, what is dangerous about it, and one step to take it back. */
function Kept({ tank, line }: { readonly tank: string; readonly line: ReadingLine }) {
  const { body, on, id, version, kept } = line;
  const danger = body.flag === "danger";
  if (!kept) {
    return (
      <Notice kind="note" title="Taken away">
        <TakeOrBring tank={tank} id={id} version={version} kept={kept} />
      </Notice>
    );
  }
  return (
    <Notice kind={danger ? "danger" : "done"} title={danger ? "Danger" : "Kept"}>
      <p>
        {readingWords(body)}, {dateWords(on)}. {body.said === null ? "" : `${unitSigns(saidOf(body.said))}.`}
      </p>
      {danger ? (
        <p>
          <FirstSteps tank={tank} quantity={body.quantity} cold={saidCold(body.said)} />
        </p>
      ) : null}
      <TakeOrBring tank={tank} id={id} version={version} kept={kept} />
    </Notice>
  );
}

interface TakeOrBringProps {
  readonly tank: string;
  readonly id: string;
  readonly version: number;
  readonly kept: boolean;
}

export function TakeOrBring({ tank, id, version, kept }: TakeOrBringProps) {
  return (
    <form method="post" action={to.reading(tank, id)} class="beside-actions">
      <input type="hidden" name="version" value={version} />
      <button type="submit" class="plain" name="go" value={kept ? "take_away" : "bring_back"}>
        {kept ? "Take it away" : "Bring it back"}
      </button>
    </form>
  );
}

function Lines({ head, lines, withRemoved, older }: ReadingsView) {
  return (
    <section>
      <h2>Kept readings, latest first</h2>
      {lines.length === 0 ? <p>None yet.</p> : null}
      {lines.map((line) => (
        <Line key={line.id} tank={head.id} line={line} />
      ))}
      <p class="beside-actions">
        {older === null ? null : <a href={older}>Older ones</a>}
        {withRemoved ? (
          <a href={to.tank(head.id, "readings")}>Without those taken away</a>
        ) : (
          <a href={`${to.tank(head.id, "readings")}?removed=1`}>Also those taken away</a>
        )}
      </p>
    </section>
  );
}

function Line({
  tank,
  line: { id, version, on, kept, body, shown },
}: {
  readonly tank: string;
  readonly line: ReadingLine;
}) {
  const { label } = MEASURES[body.quantity];
  return (
    <div class="reading-line">
      <p>
        {dateWords(on)}: {label} <strong>{unitSigns(body.text)}</strong>
        {shown === null ? "" : ` (${unitSigns(shown)})`}
        {kept ? "" : ". Taken away"}
      </p>
      {body.flag === null ? null : (
        <p>
          <strong>{body.flag === "danger" ? "Dangerous." : "Unusual."}</strong>{" "}
          {unitSigns(saidOf(body.said ?? "see its history"))}.
        </p>
      )}
      {body.note === null ? null : <p class="note">{body.note}</p>}
      <div class="beside-actions">
        <a
          href={to.reading(tank, id)}
          aria-label={`Correct, history: ${readingWords(body)} of ${dateWords(on)}`}
        >
          Correct, history
        </a>
        <TakeOrBring tank={tank} id={id} version={version} kept={kept} />
      </div>
    </div>
  );
}

function Told({ tank, told }: { readonly tank: string; readonly told: readonly LatestReading[] }) {
  if (told.length === 0) return null;
  return (
    <section>
      <h2>Told in the questions</h2>
      <ul>
        {told.map(({ quantity, label, text, on }) => (
          <li key={quantity}>
            {label} {unitSigns(text)}
            {on === null ? "" : `, ${dateWords(on)}`}
          </li>
        ))}
      </ul>
      <p>
        <a href={to.question(tank, 7)}>Change them</a>
      </p>
    </section>
  );
}
