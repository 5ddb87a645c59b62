/** All eight questions on one sheet, for who knows the answers, and the facts that no question asks. One save. */
import { fieldsOf, MORE } from "../../answers/questions/fields.ts";
import { QUESTIONS } from "../../answers/questions/questions.ts";
import { type Page, type TankHead, to } from "../page.ts";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { type Filled, FormFields, ReturnKey, summaryOf } from "./form-fields.tsx";
import { type Clash, ClashNotice } from "./question.tsx";

export interface SingleFormView extends Filled {
  readonly head: TankHead;
  readonly version: number;
  readonly clash: Clash | null;
  readonly spareLines: number;
}

export function singleFormPage({ head, version, values, doubts, clash, spareLines }: SingleFormView): Page {
  const address = to.singleForm(head.id);
  const draw = (question: number) => (
    <FormFields
      fields={fieldsOf(question)}
      values={values}
      doubts={doubts}
      focus={question === 1 && doubts.length === 0 ? "water" : null}
      spareLines={spareLines}
      compact
    />
  );
  return {
    title: `${doubts.length > 0 ? "Error: " : ""}All questions on one form, ${head.name}`,
    tank: head,
    here: "questions",
    body: (
      <>
        <ErrorSummary errors={summaryOf(doubts)} />
        {clash === null ? null : <ClashNotice clash={clash} again={address} />}
        <h1>All questions on one form</h1>
        <p class="lead">
          What you leave empty is taken as not known, with a wide range.{" "}
          <a href={to.question(head.id, 1)}>One question a page</a> says why each is asked.
        </p>
        <form class="single-form" method="post" action={address} novalidate data-draft={address}>
          <ReturnKey name="go" value="keep" />
          <input type="hidden" name="version" value={version} />
          {QUESTIONS.map((question, i) => (
            <section key={question.flag} aria-labelledby={`part-${question.flag}`}>
              <h2 id={`part-${question.flag}`}>
                {i + 1}. {question.title}
              </h2>
              {draw(i + 1)}
              {i === 0 ? <WaterUnsure checked={(values["water_unsure"] ?? "") !== ""} /> : null}
            </section>
          ))}
          <section aria-labelledby="part-more">
            <h2 id="part-more">What else you know</h2>
            {draw(MORE)}
          </section>
          <div class="actions">
            <button type="submit" class="first" name="go" value="keep">
              {clash === null ? "Keep all" : "Save what I typed"}
            </button>
            <button type="submit" name="go" value="more_lines">
              More lines for animals
            </button>
            <a class="action" href={to.tank(head.id)}>
              Leave it as it was
            </a>
          </div>
        </form>
      </>
    ),
  };
}

/** Water is the one answer that a plan can't do without; not knowing is an answer. */
function WaterUnsure({ checked }: { readonly checked: boolean }) {
  return (
    <div class="field">
      <div class="choice">
        <input type="checkbox" id="water_unsure" name="water_unsure" value="yes" checked={checked} />
        <label for="water_unsure">I'm not sure of either: {QUESTIONS[0]!.notSure}</label>
      </div>
    </div>
  );
}
