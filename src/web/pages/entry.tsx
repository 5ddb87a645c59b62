/** One entry of the daybook: as typed, as read, correct it, take it away or bring it back, and what it was before. */
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { dateWords } from "../../answers/words.ts";
import { KIND_LABELS } from "../../contract/daybook/fields.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { Table } from "../parts/table.tsx";
import { type Arrived, ArrivedList } from "./arrived.tsx";
import { type DaybookLine, TakeOrBring } from "./daybook.tsx";
import { EntryFields, type FormScene } from "./entry-form.tsx";
import { ReturnKey, summaryOf } from "./form-fields.tsx";
import { Pictures, type PicturesView } from "./pictures.tsx";
import { type Clash, ClashNotice } from "./question.tsx";

export interface EntryVersion {
  /** When this version was written, in words. */
  readonly written: string;
  readonly by: string;
  readonly line: DaybookLine;
}

export interface EntryView {
  readonly head: TankHead;
  readonly line: DaybookLine;
  /** Name of a field and what was typed into it. */
  readonly typed: readonly (readonly [label: string, text: string])[];
  readonly read: readonly string[];
  readonly values: Values;
  readonly doubts: readonly FieldDoubt[];
  readonly clash: Clash | null;
  readonly scene: FormScene;
  /** The other half of a move: in which tank's daybook it stands, and under which id; null where there is none here. */
  readonly beside: { readonly tank: string; readonly entry: string; readonly name: string } | null;
  /** Null for kinds that take none. */
  readonly pictures: PicturesView | null;
  /** What an order was followed by; null for other kinds. */
  readonly arrived: readonly Arrived[] | null;
  /** Latest first. */
  readonly history: readonly EntryVersion[];
}

export function entryPage(view: EntryView): Page {
  const { head, line, typed, read, values, doubts, clash, history, scene, beside } = view;
  const { pictures, arrived } = view;
  const wrong = [...(pictures?.doubts ?? []), ...doubts];
  const address = to.entry(head.id, line.id);
  const when = dateWords(line.on);
  return {
    title: `${wrong.length > 0 ? "Error: " : ""}${KIND_LABELS[line.kind]} of ${when}, ${head.name}`,
    tank: head,
    here: "daybook",
    ...(pictures?.open === true ? { scripts: ["pictures"] } : {}),
    body: (
      <>
        <ErrorSummary errors={summaryOf(wrong)} />
        {clash === null ? null : <ClashNotice clash={clash} again={address} />}
        <h1>
          {KIND_LABELS[line.kind]}, {when}
        </h1>
        <p class="lead">{line.sentence}</p>
        {line.kept ? null : <p>This entry was taken away. It counts for nothing until it is brought back.</p>}
        {line.flag === null ? null : (
          <p>
            <strong>{line.flag.kind === "danger" ? "Dangerous." : "Unusual."}</strong> {line.flag.words}
          </p>
        )}
        {beside === null ? null : (
          <p>
            The same move in the daybook of <a href={to.entry(beside.tank, beside.entry)}>{beside.name}</a>.
            Both are corrected, taken away and brought back together.
          </p>
        )}
        <TakeOrBring tank={head.id} line={line} />
        <h2>As typed</h2>
        <dl class="facts">
          {typed.map(([label, text]) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
        {read.length === 0 ? null : (
          <>
            <h2>As read</h2>
            <ul>
              {read.map((words) => (
                <li key={words}>{words}</li>
              ))}
            </ul>
          </>
        )}
        {arrived === null ? null : (
          <section id="arrived">
            <h2>What came of it</h2>
            {arrived.length === 0 ? (
              <p>Nothing of that kind arrived since, by the daybook.</p>
            ) : (
              <ArrivedList tank={head.id} arrived={arrived} />
            )}
          </section>
        )}
        {pictures === null ? null : <Pictures {...pictures} />}
        <h2 id="correct">Correct it</h2>
        <form method="post" action={address} novalidate data-draft={address}>
          <ReturnKey name="go" value="correct" />
          <input type="hidden" name="version" value={line.version} />
          <EntryFields kind={line.kind} values={values} doubts={doubts} scene={scene} first={false} />
          <div class="actions">
            <button type="submit" class="first" name="go" value="correct">
              {clash === null ? "Keep the correction" : "Save what I typed"}
            </button>
            <a class="action" href={to.tank(head.id, "daybook")}>
              Leave it as it is
            </a>
          </div>
        </form>
        <Table
          caption="What it was, the latest first"
          columns={[{ name: "written" }, { name: "entry" }, { name: "day" }, { name: "by" }]}
          rows={history.map(({ written, by, line: version }) => [
            written,
            `${version.sentence}${version.kept ? "" : " Taken away."}`,
            dateWords(version.on),
            by,
          ])}
        />
      </>
    ),
  };
}
