/**
 * Daybook: what happened to a tank, newest first, a plain sentence an entry, and the ways to add one. The sentence opens
 * the entry: as typed, as read, what it was before. Kinds are filtered and older pages reached by links alone.
 */
import { counted, dateWords } from "../../answers/words.ts";
import { KIND_LABELS } from "../../contract/daybook/fields.ts";
import { ENTRY_KINDS, type EntryKind } from "../../contract/daybook/kinds.ts";
import { isPictured } from "../../contract/picture/limits.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { FirstSteps } from "../parts/first-steps.tsx";
import { Notice } from "../parts/notice.tsx";

export interface DaybookLine {
  readonly id: string;
  readonly version: number;
  readonly kind: EntryKind;
  readonly on: string;
  readonly kept: boolean;
  readonly sentence: string;
  /** What is unusual or dangerous about it, in words. */
  readonly flag: {
    readonly kind: "unusual" | "danger";
    readonly words: string;
    readonly quantity: string;
    readonly cold: boolean;
  } | null;
  readonly note: string | null;
}

export interface DaybookView {
  readonly head: TankHead;
  /** Latest first. */
  readonly lines: readonly DaybookLine[];
  /** The only kind that is listed; null: all. */
  readonly only: EntryKind | null;
  readonly withRemoved: boolean;
  /** Just kept, corrected or taken away. */
  readonly kept: DaybookLine | null;
  /** Older ones than these are listed, or newer ones stand before. */
  readonly after: string | null;
  readonly older: string | null;
  /** How many pictures stand with an entry, by its id; none where it is not in it. */
  readonly pictures: ReadonlyMap<string, number>;
}

/** What can be added here; advice is declined where it is given. */
const ADDED = ENTRY_KINDS.filter((kind) => kind !== "decline");

export function daybookPage(view: DaybookView): Page {
  const { head } = view;
  return {
    title: `Daybook, ${head.name}`,
    tank: head,
    here: "daybook",
    body: (
      <>
        {view.kept === null ? null : <Kept tank={head.id} line={view.kept} />}
        <h1>Daybook</h1>
        <p class="lead">Everything that happened to this tank, in order.</p>
        <section class="outbox" id="outbox" data-outbox-list hidden />
        <section>
          <h2>Add</h2>
          <ul class="add-entries">
            {ADDED.map((kind) => (
              <li key={kind}>
                <a class="action" href={to.newEntry(head.id, kind)}>
                  {KIND_LABELS[kind]}
                </a>
              </li>
            ))}
          </ul>
          <p class="beside-actions">
            <a href={to.wetHand(head.id)}>Wet hand: log it now</a>
            <a href={to.bringIn(head.id)}>Bring entries in</a>
            <a href={to.takeOut(head.id)}>Take entries out</a>
          </p>
        </section>
        <Happened {...view} />
      </>
    ),
  };
}

/** Address of the list as it stands, with something changed. */
function listed(
  { head, only, withRemoved }: Pick<DaybookView, "head" | "only" | "withRemoved">,
  change: { readonly only?: EntryKind | null; readonly withRemoved?: boolean; readonly after?: string } = {},
): string {
  const kind = change.only === undefined ? only : change.only;
  const query = [
    kind === null ? "" : `kind=${kind}`,
    (change.withRemoved ?? withRemoved) ? "removed=1" : "",
    change.after === undefined ? "" : `after=${change.after}`,
  ].filter((part) => part !== "");
  return `${to.tank(head.id, "daybook")}${query.length === 0 ? "" : `?${query.join("&")}`}`;
}

function Happened(view: DaybookView) {
  const { head, lines, only, withRemoved, older, after } = view;
  const days = byDay(lines);
  return (
    <section>
      <h2 id="happened">What happened, newest first</h2>
      <nav aria-label="Kinds of entry">
        <ul class="question-steps">
          {[null, ...ENTRY_KINDS].map((kind) => (
            <li key={kind ?? "all"}>
              <a href={listed(view, { only: kind })} aria-current={kind === only ? "true" : undefined}>
                {kind === null ? "All" : KIND_LABELS[kind]}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      {lines.length === 0 ? <p>Nothing{after === null ? " yet" : " older"}.</p> : null}
      {days.map(([on, entries]) => (
        <div class="ledger" key={on}>
          <p class="when">{dateWords(on)}</p>
          <ul class="what entry-lines">
            {entries.map((line) => (
              <Line key={line.id} tank={head.id} line={line} pictures={view.pictures.get(line.id) ?? 0} />
            ))}
          </ul>
        </div>
      ))}
      <p class="beside-actions">
        {older === null ? null : <a href={listed(view, { after: older })}>Older ones</a>}
        {after === null ? null : <a href={listed(view)}>The newest</a>}
        <a href={listed(view, { withRemoved: !withRemoved })}>
          {withRemoved ? "Without those taken away" : "Also those taken away"}
        </a>
      </p>
    </section>
  );
}

/** Runs of one day, in the order they come. */
function byDay(
  lines: readonly DaybookLine[],
): readonly (readonly [on: string, of: readonly DaybookLine[]])[] {
  const days = new Map<string, DaybookLine[]>();
  for (const line of lines) days.set(line.on, [...(days.get(line.on) ?? []), line]);
  return [...days];
}

interface LineProps {
  readonly tank: string;
  readonly line: DaybookLine;
  readonly pictures: number;
}

function Line({ tank, line, pictures }: LineProps) {
  const { id, sentence, kept, flag, note } = line;
  return (
    <li class={kept ? undefined : "taken-away"}>
      <a href={to.entry(tank, id)}>{sentence}</a>
      {kept ? null : " Taken away."}
      {flag === null ? null : (
        <p>
          <strong>{flag.kind === "danger" ? "Dangerous." : "Unusual."}</strong> {flag.words}
        </p>
      )}
      {note === null ? null : <p class="note">{note}</p>}
      {pictures === 0 || !kept ? null : (
        <p>
          <a href={`${to.entry(tank, id)}#pictures`}>{counted(pictures, "picture")}</a>
        </p>
      )}
    </li>
  );
}

/** What was just kept, and one press to undo it. */
function Kept({ tank, line }: { readonly tank: string; readonly line: DaybookLine }) {
  const { id, kind, flag, kept, sentence, on } = line;
  const danger = kept && flag !== null && flag.kind === "danger";
  return (
    <Notice
      kind={!kept ? "note" : danger ? "danger" : "done"}
      title={!kept ? "Taken away" : danger ? "Danger" : "Kept"}
    >
      <p>
        {sentence} {dateWords(on)}.{flag === null ? "" : ` ${flag.words}`}
      </p>
      {danger ? (
        <p>
          <FirstSteps tank={tank} quantity={flag.quantity} cold={flag.cold} />
        </p>
      ) : null}
      {kept && isPictured(kind) ? (
        <p>
          <a class="action" href={`${to.entry(tank, id)}#pictures`}>
            Add a picture to it
          </a>
        </p>
      ) : null}
      <TakeOrBring tank={tank} line={line} words={["Undo: take it away", "Undo: bring it back"]} />
    </Notice>
  );
}

interface TakeOrBringProps {
  readonly tank: string;
  readonly line: Pick<DaybookLine, "id" | "version" | "kept">;
  /** Of the button: while it is kept, and once it was taken away. */
  readonly words?: readonly [string, string];
}

export function TakeOrBring({
  tank,
  line: { id, version, kept },
  words = ["Take it away", "Bring it back"],
}: TakeOrBringProps) {
  return (
    <form method="post" action={to.entry(tank, id)} class="beside-actions">
      <input type="hidden" name="version" value={version} />
      <button type="submit" class="plain" name="go" value={kept ? "take_away" : "bring_back"}>
        {kept ? words[0] : words[1]}
      </button>
    </form>
  );
}
