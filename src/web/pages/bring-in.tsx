/** Bring entries in: choose a file or paste a table; what was brought in before, each undone in one step. */

import { type Page, type TankHead, to } from "../page.ts";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { Notice } from "../parts/notice.tsx";
import { many } from "./bring-in-words.ts";

export interface ActLine {
  readonly id: string;
  readonly file: string;
  /** When, in words; by whom. */
  readonly written: string;
  readonly by: string;
  readonly added: number;
  readonly changed: number;
  readonly broughtBack: number;
  /** When it was undone, in words; null while it stands. */
  readonly undone: string | null;
}

export interface BringInView {
  readonly head: TankHead;
  /** Latest first. */
  readonly acts: readonly ActLine[];
  /** What kept the last file from being looked at. */
  readonly refused: string | null;
  /** Just done: brought in, undone, or nothing to do; null otherwise. */
  readonly done: { readonly title: string; readonly words: string; readonly act: string | null } | null;
}

const actAddress = (tankId: string, act: string): string => `${to.bringIn(tankId)}/acts/${act}`;

export function bringInPage({ head, acts, refused, done }: BringInView): Page {
  const errors = refused === null ? [] : [{ field: "file", text: refused }];
  return {
    title: `${refused === null ? "" : "Error: "}Bring entries in, ${head.name}`,
    tank: head,
    here: null,
    body: (
      <>
        <ErrorSummary errors={errors} />
        {done === null ? null : (
          <Notice kind="done" title={done.title}>
            <p>{done.words}</p>
            <p class="beside-actions">
              <a href={to.tank(head.id, "daybook")}>Daybook</a>
              {done.act === null ? null : <UndoForm tank={head.id} act={done.act} what="Undo all of it" />}
            </p>
          </Notice>
        )}
        <h1>Bring entries in</h1>
        <p class="lead">
          From a spreadsheet saved as CSV, or a daybook that was taken out. You see first what the file would
          do; nothing is added before you say so, and nothing here is ever deleted by it.
        </p>
        <form method="post" action={to.bringIn(head.id)} enctype="multipart/form-data">
          <div class={refused === null ? "field" : "field wrong"}>
            <label for="file" class="label">
              File
            </label>
            <div class="hint" id="file-hint">
              CSV or JSON, up to 10 MiB and 100,000 rows
            </div>
            {refused === null ? null : (
              <div class="field-error" id="file-error">
                <p>
                  <span class="error-word">Can't be read yet: </span>
                  {refused}
                </p>
              </div>
            )}
            <div class="input-row">
              <input
                type="file"
                id="file"
                name="file"
                class="input full"
                accept=".csv,.txt,.tsv,.json,text/csv,application/json"
                aria-describedby={refused === null ? "file-hint" : "file-hint file-error"}
                aria-invalid={refused === null ? undefined : "true"}
              />
            </div>
          </div>
          <div class="field">
            <label for="pasted" class="label">
              Or paste a table
            </label>
            <div class="hint" id="pasted-hint">
              With its header: date;nitrate, say. Used where no file is chosen
            </div>
            <div class="input-row">
              <textarea
                id="pasted"
                name="pasted"
                class="input full"
                rows={4}
                aria-describedby="pasted-hint"
                spellcheck={false}
                data-draft={to.bringIn(head.id)}
              />
            </div>
          </div>
          <div class="actions">
            <button type="submit" class="first">
              Look at it first
            </button>
          </div>
        </form>
        <Acts tank={head.id} acts={acts} />
      </>
    ),
  };
}

function Acts({ tank, acts }: { readonly tank: string; readonly acts: readonly ActLine[] }) {
  return (
    <section>
      <h2>Brought in before</h2>
      {acts.length === 0 ? <p>Nothing yet.</p> : null}
      <ul class="plain-list">
        {acts.map((act) => (
          <li key={act.id}>
            <p>
              {act.written}, by {act.by}: <strong>{act.file}</strong>, {actWords(act)}
              {act.undone === null ? "" : `. Undone ${act.undone}`}
            </p>
            {act.undone === null ? (
              <UndoForm tank={tank} act={act.id} what="Undo" label={`Undo ${act.file} of ${act.written}`} />
            ) : null}
          </li>
        ))}
      </ul>
      <p>
        <a href={to.takeOut(tank)}>Take entries out</a>
      </p>
    </section>
  );
}

export function actWords({
  added,
  changed,
  broughtBack,
}: Pick<ActLine, "added" | "changed" | "broughtBack">): string {
  const parts = [
    `${many(added, "entry", "entries")} added`,
    changed === 0 ? "" : `${changed} changed`,
    broughtBack === 0 ? "" : `${broughtBack} brought back`,
  ];
  return parts.filter((part) => part !== "").join(", ");
}

interface UndoFormProps {
  readonly tank: string;
  readonly act: string;
  readonly what: string;
  readonly label?: string;
}

function UndoForm({ tank, act, what, label }: UndoFormProps) {
  return (
    <form method="post" action={actAddress(tank, act)} class="beside-actions">
      <button type="submit" class="plain" aria-label={label}>
        {what}
      </button>
    </form>
  );
}

export interface UndoAskView {
  readonly head: TankHead;
  readonly act: string;
  readonly file: string;
  /** Entries changed since it was brought in, in words. */
  readonly changed: readonly string[];
}

/** Before an act is undone of which entries were changed since. */
export function undoAskPage({ head, act, file, changed }: UndoAskView): Page {
  const count = many(changed.length, "entry was", "entries were");
  return {
    title: `Undo ${file}? ${head.name}`,
    tank: head,
    here: null,
    body: (
      <>
        <h1>Undo {file}?</h1>
        <p class="lead">
          {count} changed since. Keep {changed.length === 1 ? "it" : "those"}? All else that the file did is
          undone.
        </p>
        <ul>
          {changed.slice(0, MOST_SHOWN).map((words, i) => (
            // Two may say the same.
            <li key={String(i)}>{words}</li>
          ))}
        </ul>
        {changed.length > MOST_SHOWN ? <p>And {changed.length - MOST_SHOWN} more.</p> : null}
        <form method="post" action={actAddress(head.id, act)} class="actions">
          <button type="submit" class="first" name="answer" value="keep">
            Undo, and keep those as they are
          </button>
          <button type="submit" name="answer" value="undo">
            Undo those too
          </button>
          <a class="action" href={to.bringIn(head.id)}>
            Leave everything as it is
          </a>
        </form>
      </>
    ),
  };
}

const MOST_SHOWN = 50;
