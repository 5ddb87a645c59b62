/**
 * A page that says one thing: not found, not taken, not now, a fault of ours. Plain words, what to do, no metaphor;
 * nothing that was typed elsewhere is lost by it.
 */
import type { Page } from "../page.ts";
import { to } from "../page.ts";

export interface MessageView {
  readonly heading: string;
  readonly lines: readonly string[];
  /** Another way on, before the list of tanks. */
  readonly link?: { readonly href: string; readonly words: string };
}

export function messagePage({ heading, lines, link }: MessageView): Page {
  return {
    title: heading,
    tank: null,
    here: null,
    body: (
      <>
        <h1>{heading}</h1>
        {lines.map((line) => (
          <p key={line}>{line}</p>
        ))}
        <ul>
          {link === undefined ? null : (
            <li>
              <a href={link.href}>{link.words}</a>
            </li>
          )}
          <li>
            <a href={to.start()}>All tanks</a>
          </li>
        </ul>
      </>
    ),
  };
}

export const notFoundPage = (what: string): Page =>
  messagePage({
    heading: "Not found",
    lines: [`There is no ${what} here. It may have been taken away, or the address was cut short.`],
  });
