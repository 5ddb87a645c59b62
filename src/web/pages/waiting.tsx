/**
 * A tank's page while its answers are being worked out: says so at once, is filled where script runs, and has a link
 * that waits where it does not.
 */
import type { Page, TankHead, TankPage } from "../page.ts";

export interface WaitingView {
  readonly head: TankHead;
  readonly here: TankPage | null;
  /** Name of what is being worked out: "Larder". */
  readonly what: string;
  /** This page's own address, with its query. */
  readonly address: string;
}

export function waitingPage({ head, here, what, address }: WaitingView): Page {
  const joined = address.includes("?") ? `${address}&` : `${address}?`;
  return {
    title: `${what} of ${head.name}: being worked out`,
    tank: head,
    here,
    body: (
      <div class="awaiting" data-await data-src={`${joined}part=1`}>
        <h1>
          {what} of {head.name}
        </h1>
        <p role="status">It is being worked out, which takes a few seconds.</p>
        <p>
          <a href={`${joined}wait=1`}>Wait for it</a>
        </p>
      </div>
    ),
  };
}
