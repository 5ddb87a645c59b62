/**
 * What if: a change tried on paper, its larder, plan and weeks ahead beside today's. Nothing is saved.
 * Works by GET without script; with it, `client/what-if` takes the same body over and answers while fields change.
 */
import type { Page, TankHead } from "../page.ts";
import { WhatIfBody, type WhatIfBodyView } from "./what-if/body.tsx";

export interface WhatIfView {
  readonly head: TankHead;
  readonly body: WhatIfBodyView;
}

export function whatIfPage({ head, body }: WhatIfView): Page {
  const failed = Object.keys(body.faults).length > 0;
  const changes = body.beside?.changes.join("; ");
  return {
    title: `${failed ? "Error: " : ""}What if${changes === undefined ? "?" : ` ${changes}?`} ${head.name}`,
    tank: head,
    here: "what-if",
    scripts: ["what-if"],
    body: (
      <>
        <h1>What if?</h1>
        <p class="gloss">
          A change tried on paper: what the tank would make as food, whom it would carry, how the weeks could
          go. Nothing is saved, and the tank stays as it is.
        </p>
        <div data-what-if data-view={JSON.stringify(body)}>
          <WhatIfBody view={body} actions={null} />
        </div>
      </>
    ),
  };
}
