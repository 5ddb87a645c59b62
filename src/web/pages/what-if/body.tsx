/** The what-if's form and, below it, its answers beside today's. One component for server and browser. */
import type { ComponentChildren } from "preact";
import { to } from "../../page.ts";
import { ErrorSummary } from "../../parts/error-summary.tsx";
import { WorkingOf } from "../../parts/tank-context.ts";
import type { BesideView } from "./beside.ts";
import { Beside } from "./beside.tsx";
import { type FieldActions, type FieldView, StepField } from "./step-field.tsx";
import { type Faults, queryOf, type TodayValues, type Typed } from "./typed.ts";

export interface WhatIfBodyView {
  readonly tank: string;
  readonly groups: readonly { readonly legend: string; readonly fields: readonly FieldView[] }[];
  readonly today: TodayValues;
  readonly typed: Typed;
  readonly faults: Faults;
  readonly beside: BesideView | null;
  /** What `beside` was worked out from; in the browser, fields may have changed since. */
  readonly besideTyped: Typed;
}

interface WhatIfBodyProps {
  readonly view: WhatIfBodyView;
  /** Null on the server. */
  readonly actions: FieldActions | null;
  /** What is being done now, in words. */
  readonly doing?: string;
}

export function WhatIfBody({ view, actions, doing = "" }: WhatIfBodyProps) {
  const { tank, groups, typed, faults, beside } = view;
  const errors = Object.entries(faults).map(([field, { text }]) => ({ field, text }));
  return (
    <>
      <ErrorSummary errors={errors} />
      <form
        method="get"
        action={to.tank(tank, "what-if")}
        class="what-if-form"
        onSubmit={(event) => {
          if (actions === null) return;
          event.preventDefault();
          const { submitter } = event;
          const fix = submitter instanceof HTMLButtonElement && submitter.name !== "" ? submitter : null;
          actions.sent(fix === null ? null : { name: fix.name, text: fix.value });
        }}
      >
        {groups.map(({ legend, fields }) => (
          <fieldset key={legend} class="what-if-group">
            <legend>{legend}</legend>
            {fields.map((field) => (
              <StepField
                key={field.name}
                field={field}
                value={typed[field.name] ?? ""}
                fault={faults[field.name]}
                actions={actions}
              />
            ))}
          </fieldset>
        ))}
        <div class="actions">
          <button type="submit" class="first">
            Work it out
          </button>
          <a class="action" href={to.tank(tank, "what-if")}>
            As it is today
          </a>
        </div>
      </form>
      <p class="what-if-doing" role="status">
        {doing}
      </p>
      {beside === null ? null : (
        <section class="what-if-beside">
          <OfChange view={view} members={beside.members}>
            <Beside
              view={beside}
              more={actions === null && beside.members < 200 ? <Refine view={view} /> : null}
            />
          </OfChange>
        </section>
      )}
    </>
  );
}

/** Figures in it open workings of the changed tank. */
function OfChange({
  view: { tank, besideTyped },
  members,
  children,
}: {
  readonly view: WhatIfBodyView;
  readonly members: number;
  readonly children: ComponentChildren;
}) {
  const query = queryOf(besideTyped, { runs: String(members) });
  return (
    <WorkingOf.Provider value={(_, figure) => to.whatIfWorking(tank, figure, query)}>
      {children}
    </WorkingOf.Provider>
  );
}

const Refine = ({ view: { tank, typed } }: { readonly view: WhatIfBodyView }) => (
  <a href={`${to.tank(tank, "what-if")}?${queryOf(typed, { runs: "200" })}`}>Refine it with two hundred</a>
);
