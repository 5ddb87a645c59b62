/**
 * What keeps a form from being kept, at the top of the page: takes the focus, and each line leads to its field in the
 * same words as beside it. Renders nothing where nothing is wrong.
 */
export interface FormError {
  /** Id of the field's input. */
  readonly field: string;
  readonly text: string;
}

interface ErrorSummaryProps {
  readonly errors: readonly FormError[];
}

export function ErrorSummary({ errors }: ErrorSummaryProps) {
  if (errors.length === 0) return null;
  return (
    <div
      class="error-summary"
      role="alert"
      tabIndex={-1}
      data-focus-first
      aria-labelledby="error-summary-title"
    >
      <h2 id="error-summary-title">
        {errors.length === 1 ? "One entry" : `${errors.length} entries`} can't be read yet
      </h2>
      <ul>
        {errors.map(({ field, text }) => (
          <li key={field}>
            <a href={`#${field}`}>{text}</a>
          </li>
        ))}
      </ul>
    </div>
  );
}
