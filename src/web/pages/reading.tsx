/** One reading: correct it, take it away or bring it back, and what it was before. Every version is kept. */
import { saidOf } from "../../answers/bench/latest.ts";
import type { FieldDoubt } from "../../answers/questions/doubts.ts";
import type { Values } from "../../answers/questions/prefill.ts";
import { dateWords } from "../../answers/words.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { Table } from "../parts/table.tsx";
import { unitSigns } from "../parts/text.ts";
import { ReturnKey, summaryOf } from "./form-fields.tsx";
import { type Clash, ClashNotice } from "./question.tsx";
import { ReadingFields } from "./reading-form.tsx";
import { type ReadingLine, readingWords, TakeOrBring } from "./readings.tsx";

export interface ReadingVersion extends ReadingLine {
  /** When this version was written, in words. */
  readonly written: string;
  readonly by: string;
}

export interface ReadingView {
  readonly head: TankHead;
  readonly line: ReadingLine;
  readonly values: Values;
  readonly doubts: readonly FieldDoubt[];
  readonly clash: Clash | null;
  /** Latest first. */
  readonly history: readonly ReadingVersion[];
}

export function readingPage({ head, line, values, doubts, clash, history }: ReadingView): Page {
  const { id, version, on, kept, body } = line;
  const words = readingWords(body);
  const address = to.reading(head.id, id);
  return {
    title: `${doubts.length > 0 ? "Error: " : ""}${words} of ${dateWords(on)}, ${head.name}`,
    tank: head,
    here: "daybook",
    body: (
      <>
        <ErrorSummary errors={summaryOf(doubts)} />
        {clash === null ? null : <ClashNotice clash={clash} again={address} />}
        <h1>
          {words}, {dateWords(on)}
        </h1>
        {kept ? null : <p>This reading was taken away. It counts for nothing until it is brought back.</p>}
        {body.said === null ? null : <p>{unitSigns(saidOf(body.said))}.</p>}
        <h2>Correct it</h2>
        <form method="post" action={address} novalidate data-draft={address}>
          <ReturnKey name="go" value="correct" />
          <input type="hidden" name="version" value={version} />
          <ReadingFields quantity={body.quantity} values={values} doubts={doubts} />
          <div class="actions">
            <button type="submit" class="first" name="go" value="correct">
              {clash === null ? "Keep the correction" : "Save what I typed"}
            </button>
            <a class="action" href={to.tank(head.id, "readings")}>
              Leave it as it is
            </a>
          </div>
        </form>
        <h2>{kept ? "Take it away" : "Bring it back"}</h2>
        <TakeOrBring tank={head.id} id={id} version={version} kept={kept} />
        <Table
          caption="What it was, the latest first"
          columns={[{ name: "written" }, { name: "reading" }, { name: "measured on" }, { name: "by" }]}
          rows={history.map((one) => [
            one.written,
            `${unitSigns(one.body.text)}${one.kept ? "" : ", taken away"}`,
            dateWords(one.on),
            one.by,
          ])}
        />
      </>
    ),
  };
}
