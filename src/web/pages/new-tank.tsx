/** A new tank: its keeper and name, which may be left out, and the first question at once. */
import { fieldsOf } from "../../answers/questions/fields.ts";
import { QUESTIONS } from "../../answers/questions/questions.ts";
import { type Page, to } from "../page.ts";
import { ErrorSummary } from "../parts/error-summary.tsx";
import { Field } from "../parts/field.tsx";
import { errorOf, type Filled, FormFields, ReturnKey, summaryOf } from "./form-fields.tsx";

/** What stands where nobody said. */
export const NO_KEEPER = "Me";
export const NO_NAME = "My tank";

export interface NewTankView extends Filled {
  /** Sent with the form: however often it arrives, it makes one tank. */
  readonly once: string;
}

export function newTankPage({ values, doubts, once }: NewTankView): Page {
  const [question] = QUESTIONS;
  return {
    title: `${doubts.length > 0 ? "Error: " : ""}New tank`,
    tank: null,
    here: null,
    body: (
      <>
        <ErrorSummary errors={summaryOf(doubts)} />
        <h1>New tank</h1>
        <form method="post" action={to.newTank()} novalidate data-draft={to.newTank()}>
          <ReturnKey name="go" value="keep" />
          <input type="hidden" name="once" value={once} />
          <h2>{question!.title}</h2>
          <p>{question!.why}</p>
          <FormFields
            fields={fieldsOf(1)}
            values={values}
            doubts={doubts}
            focus={doubts.length > 0 ? null : "water"}
          />
          <h2>Whose is it?</h2>
          <Field
            name="keeper"
            label="Keeper's name or nickname"
            hint={`May be left empty: "${NO_KEEPER}" is taken`}
            value={values["keeper"] ?? ""}
            width="middle"
            autocomplete="nickname"
            error={errorOf("keeper", doubts)}
          />
          <Field
            name="name"
            label="Name of the tank"
            hint={`May be left empty: "${NO_NAME}" is taken`}
            value={values["name"] ?? ""}
            width="middle"
            error={errorOf("name", doubts)}
          />
          <p class="hint">If you are not sure of the water: {question!.notSure}.</p>
          <div class="actions">
            <button type="submit" class="first" name="go" value="keep">
              Keep and go on
            </button>
            <button type="submit" name="go" value="not_sure">
              I'm not sure
            </button>
            <a class="action" href={to.start()}>
              Back
            </a>
          </div>
        </form>
      </>
    ),
  };
}
