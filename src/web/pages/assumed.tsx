/** What was taken because nobody said, each with the way to say it. */
import { askedAt, factName } from "./fact-questions.ts";

interface AssumedProps {
  readonly tank: string;
  /** Fields of the facts. */
  readonly fields: readonly string[];
}

export function Assumed({ tank, fields }: AssumedProps) {
  return (
    <section>
      <h2>What is assumed</h2>
      {fields.length === 0 ? (
        <p>Nothing that you could have told.</p>
      ) : (
        <>
          <p>
            {fields.length === 1 ? "One fact was" : `${fields.length} facts were`} assumed with a wide band,
            as nobody said. Each link leads to where you can say it.
          </p>
          <ul class="assumed">
            {fields.map((field) => (
              <li key={field}>
                <a href={askedAt(tank, field)}>{factName(field)}</a>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
