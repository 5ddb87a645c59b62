/** More of the same, on request: a native details element, open on paper. */
import type { ComponentChildren } from "preact";

interface DisclosureProps {
  readonly summary: ComponentChildren;
  readonly open?: boolean;
  readonly children: ComponentChildren;
}

export function Disclosure({ summary, open = false, children }: DisclosureProps) {
  return (
    <details class="disclosure" open={open}>
      <summary>{summary}</summary>
      <div class="disclosed">{children}</div>
    </details>
  );
}
