/**
 * What a file would do, before it does anything: how it was read, what is asked once, what is new, at odds, was deleted
 * before or is to mend. Every answer is a field of one form; "Look again" shows what it changes.
 */
import type { FileQuestion } from "../../contract/bring-in/asked.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { Choices } from "../parts/choices.tsx";
import { Disclosure } from "../parts/disclosure.tsx";
import { Notice } from "../parts/notice.tsx";
import { Table } from "../parts/table.tsx";
import { capital } from "../parts/text.ts";
import { many } from "./bring-in-words.ts";
import { FIX, ReturnKey } from "./form-fields.tsx";

export interface PreviewFault {
  readonly line: number;
  /** Name of the field that takes another text; null where the file itself must be changed. */
  readonly name: string | null;
  readonly label: string;
  readonly typed: string;
  readonly text: string;
  readonly choices: readonly { readonly label: string; readonly text: string }[];
}

/** Two entries side by side, in words. */
export interface PreviewPair {
  readonly place: string;
  readonly line: number;
  readonly when: string;
  readonly mine: string;
  readonly file: string;
  readonly answer: string;
}

export interface PreviewColumn {
  readonly number: number;
  readonly header: string;
  readonly holds: string;
  /** Name of the field that gives it another meaning; null where it is asked about already. */
  readonly name: string | null;
  readonly choices: FileQuestion["choices"];
}

export interface PreviewView {
  readonly head: TankHead;
  readonly held: string;
  readonly file: string;
  /** How it was read. */
  readonly said: readonly string[];
  readonly columns: readonly PreviewColumn[];
  readonly questions: readonly FileQuestion[];
  /** Answers given, as they were sent. */
  readonly answers: Readonly<Record<string, string>>;
  /** Null while something is asked that decides how all of it is read. */
  readonly counts: {
    readonly rows: number;
    readonly fresh: number;
    readonly same: number;
    readonly clashes: number;
    readonly undecided: number;
    readonly deleted: number;
    readonly back: number;
    readonly faulty: number;
    readonly leftOut: number;
    /** What adding now would add or change. */
    readonly ready: { readonly add: number; readonly change: number };
  } | null;
  /** The first of the new ones, in words. */
  readonly fresh: readonly string[];
  readonly clashes: readonly PreviewPair[];
  readonly deleted: readonly PreviewPair[];
  readonly faults: readonly PreviewFault[];
  /** More of each than are listed. */
  readonly more: { readonly clashes: number; readonly deleted: number; readonly faults: number };
}

export const heldAddress = (tankId: string, held: string): string => `${to.bringIn(tankId)}/files/${held}`;

export function previewPage(view: PreviewView): Page {
  const { head, held, file, said, counts, questions } = view;
  return {
    title: `${questions.length > 0 ? "A question about" : "Preview of"} ${file}, ${head.name}`,
    tank: head,
    here: null,
    body: (
      <>
        <h1>{file}</h1>
        <p class="lead">
          {counts === null ? askedWords(questions.length) : findingOf(counts)} Nothing was added yet.
        </p>
        {said.length === 0 ? null : <p>How it was read: {said.join("; ")}.</p>}
        <form method="post" action={heldAddress(head.id, held)} novalidate>
          {/* The return key looks again: it never adds. */}
          <ReturnKey name="go" value="look" />
          <Carried view={view} />
          {questions.map((question) => (
            <Question key={question.name} question={question} given={view.answers[question.name] ?? ""} />
          ))}
          <Faults view={view} />
          <Clashes view={view} />
          <Deleted view={view} />
          <Fresh view={view} />
          <Columns view={view} />
          <div class="actions">
            {counts === null || counts.ready.add + counts.ready.change === 0 ? null : (
              <button type="submit" class="first" name="go" value="add">
                {addWords(counts)}
              </button>
            )}
            <button type="submit" name="go" value="look">
              {counts === null ? "Go on" : "Look again"}
            </button>
            <button type="submit" class="plain" name="go" value="none">
              Add none
            </button>
          </div>
        </form>
      </>
    ),
  };
}

type Counts = NonNullable<PreviewView["counts"]>;

const askedWords = (count: number): string =>
  count === 1
    ? "One thing must be said before this file can be read."
    : `${count} things must be said before this file can be read.`;

function findingOf({ rows, fresh, same, clashes, deleted, faulty, leftOut }: Counts): string {
  if (rows === 0) return "The file holds no rows: nothing to add.";
  const parts = [
    many(fresh, "new entry", "new entries"),
    same === 0 ? "" : `${same} already here`,
    clashes === 0 ? "" : `${clashes} at odds with the daybook`,
    deleted === 0 ? "" : `${deleted} deleted here before`,
    faulty === 0 ? "" : `${many(faulty, "row", "rows")} to mend`,
    leftOut === 0 ? "" : `${many(leftOut, "row", "rows")} left out`,
  ];
  return `${many(rows, "row", "rows")}: ${parts.filter((part) => part !== "").join(", ")}.`;
}

function addWords({ ready, faulty, undecided }: Counts): string {
  const left = faulty + undecided;
  const deeds = [
    ready.add === 0 ? "" : `add the ${ready.add}`,
    ready.change === 0 ? "" : `change the ${ready.change}`,
  ];
  const now = `${capital(deeds.filter((deed) => deed !== "").join(" and "))} now`;
  return left === 0 ? now : `${now}, without the ${left} that are open`;
}

/** Answers to what is not asked any more stay with the form. */
function Carried({ view }: { readonly view: PreviewView }) {
  const drawn = new Set([
    ...view.questions.map(({ name }) => name),
    ...view.faults.map(({ name }) => name),
    ...view.columns.map(({ name }) => name),
    ...view.clashes.map(({ place }) => `clash.${place}`),
    ...(view.clashes.length > 0 ? ["clash"] : []),
    ...(view.deleted.length > 0 ? ["deleted"] : []),
  ]);
  return (
    <>
      {Object.entries(view.answers)
        .filter(([name]) => !drawn.has(name))
        .map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
    </>
  );
}

/** Few answers stand open, many in a list. */
const OPEN_CHOICES = 4;

function Question({ question, given }: { readonly question: FileQuestion; readonly given: string }) {
  const { name, text, choices } = question;
  if (choices.length <= OPEN_CHOICES) {
    return (
      <Choices
        name={name}
        legend={text}
        options={choices.map(({ label, value }) => ({ label, value, checked: value === given }))}
      />
    );
  }
  return (
    <div class="field">
      <label for={name} class="label">
        {text}
      </label>
      <div class="input-row">
        <select class="input middle" id={name} name={name}>
          <option value="">choose</option>
          {choices.map(({ label, value }) => (
            <option key={value} value={value} selected={value === given}>
              {label}
            </option>
          ))}
        </select>
      </div>
    </div>
  );
}

function Faults({ view: { faults, more, counts, answers } }: { readonly view: PreviewView }) {
  if (faults.length === 0) return null;
  return (
    <section>
      <h2>To mend</h2>
      <p>
        {many(counts?.faulty ?? 0, "row is", "rows are")} left out until mended: here, or in the file. An
        empty field changes nothing.
      </p>
      {faults.map(({ line, name, label, typed, text, choices }, i) => {
        const key = `${line}-${i}`;
        if (name === null) {
          return (
            <p key={key}>
              {text.startsWith("Line ") ? null : <strong>Line {line}. </strong>}
              {text}.
            </p>
          );
        }
        const id = name.replaceAll(".", "-");
        return (
          <div key={key} class="field wrong">
            <label for={id} class="label">
              Line {line}, {label}
            </label>
            <div class="field-error" id={`${id}-error`}>
              <p>
                <span class="error-word">Can't be read yet: </span>
                {text}
              </p>
              {choices.length === 0 ? null : (
                <div class="fixes">
                  {choices.map((choice) => (
                    <button
                      key={choice.label}
                      type="submit"
                      class="fix"
                      name={`${FIX}${name}`}
                      value={choice.text}
                    >
                      {choice.label}
                    </button>
                  ))}
                </div>
              )}
            </div>
            <div class="input-row">
              <input
                type="text"
                class="input middle"
                id={id}
                name={name}
                value={answers[name] ?? typed}
                aria-invalid="true"
                aria-describedby={`${id}-error`}
                autocomplete="off"
                spellcheck={false}
              />
            </div>
          </div>
        );
      })}
      {more.faults > 0 ? <p>And {more.faults} more. Mend these first, or the file itself.</p> : null}
    </section>
  );
}

const CLASH_WORDS = [
  { value: "mine", label: "Keep mine" },
  { value: "file", label: "Take the file's" },
  { value: "both", label: "Keep both" },
] as const;

function Clashes({ view: { clashes, more, answers, counts } }: { readonly view: PreviewView }) {
  if (clashes.length === 0) return null;
  return (
    <section>
      <h2>At odds with the daybook</h2>
      <Choices
        name="clash"
        legend="The same time and the same thing, another value. For all of them:"
        hint={
          (counts?.undecided ?? 0) === 0
            ? undefined
            : "Those that nobody decides stay as they are in the daybook"
        }
        row
        options={CLASH_WORDS.map((one) => ({ ...one, checked: answers["clash"] === one.value }))}
      />
      <Table
        caption="Side by side; a row of its own may be decided otherwise"
        columns={[{ name: "When" }, { name: "Mine" }, { name: "The file's" }, { name: "This one" }]}
        rows={clashes.map(({ place, line, when, mine, file, answer }) => [
          `${when} (line ${line})`,
          mine,
          file,
          <select
            key={place}
            class="input"
            name={`clash.${place}`}
            aria-label={`Line ${line}: ${mine} or ${file}`}
          >
            <option value="">as for all</option>
            {CLASH_WORDS.map(({ value, label }) => (
              <option key={value} value={value} selected={answer === value}>
                {label}
              </option>
            ))}
          </select>,
        ])}
      />
      {more.clashes > 0 ? <p>And {more.clashes} more, decided as for all.</p> : null}
    </section>
  );
}

function Deleted({ view: { deleted, more, answers } }: { readonly view: PreviewView }) {
  if (deleted.length === 0) return null;
  const back = answers["deleted"] === "bring_back";
  return (
    <section>
      <h2>Deleted here before</h2>
      <Choices
        name="deleted"
        legend="You deleted these once"
        row
        options={[
          { value: "leave_out", label: "Leave them out", checked: !back },
          { value: "bring_back", label: "Bring them back", checked: back },
        ]}
      />
      <ul>
        {deleted.map(({ place, line, when, file, mine }) => (
          <li key={place}>
            Line {line}: {file} {when}. {mine}
          </li>
        ))}
      </ul>
      {more.deleted > 0 ? <p>And {more.deleted} more.</p> : null}
    </section>
  );
}

function Fresh({ view: { fresh, counts } }: { readonly view: PreviewView }) {
  if (counts === null || fresh.length === 0) return null;
  const more = counts.fresh - fresh.length;
  return (
    <section>
      <h2>New</h2>
      <ul>
        {fresh.map((words, i) => (
          // Two may say the same.
          <li key={String(i)}>{words}</li>
        ))}
      </ul>
      {more > 0 ? <p>And {more} more.</p> : null}
    </section>
  );
}

function Columns({ view: { columns, answers } }: { readonly view: PreviewView }) {
  if (columns.length === 0) return null;
  return (
    <Disclosure summary="What each column was taken for">
      <Table
        caption="Columns of the file. Choose another meaning, and look again"
        columns={[{ name: "Column" }, { name: "Its name" }, { name: "Taken for" }, { name: "Another" }]}
        rows={columns.map(({ number, header, holds, name, choices }) => [
          String(number),
          header === "" ? "(none)" : header,
          holds,
          name === null ? (
            ""
          ) : (
            <select key={name} class="input" name={name} aria-label={`Another meaning of column ${number}`}>
              <option value="">as found</option>
              {choices.map(({ label, value }) => (
                <option key={value} value={value} selected={answers[name] === value}>
                  {label}
                </option>
              ))}
            </select>
          ),
        ])}
      />
    </Disclosure>
  );
}

/** A file that is not held any more: nothing of it was kept. */
export function goneFilePage(head: TankHead): Page {
  return {
    title: `Choose the file again, ${head.name}`,
    tank: head,
    here: null,
    body: (
      <>
        <h1>Choose the file again</h1>
        <Notice kind="note">
          <p>
            This file is not held here any more: a file that is looked at is held for two hours, and until the
            program is started anew. Nothing was added.
          </p>
        </Notice>
        <p>
          <a class="action" href={to.bringIn(head.id)}>
            Bring entries in
          </a>
        </p>
      </>
    ),
  };
}
