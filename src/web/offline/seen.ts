/** What is said of a page that is shown without a connection. Text in, text out: no cache and no event here. */

/**
 * A kept page with the line that says when it was seen, as the first thing of its main part; as the last where nothing
 * may stand before what is to be done.
 */
export async function withSeenLine(kept: Response, where: "first" | "last" = "first"): Promise<Response> {
  const headers = headersOfText(kept);
  const html = seenOn(await kept.text(), seenWords(kept.headers.get("date")), where);
  return new Response(html, { status: 200, headers });
}

/** Of a text that is written out anew, uncompressed. */
export function headersOfText(kept: Response): Headers {
  const headers = new Headers(kept.headers);
  for (const name of ["content-encoding", "content-length", "etag"]) headers.delete(name);
  return headers;
}

export const seenOn = (html: string, when: string, where: "first" | "last" = "first"): string =>
  withLine(html, `Seen on ${when}; not connected now.`, where);

/** A page worked out without a connection; `known`: when what a tank knows was fetched. */
export const workedOutHere = (html: string, known: { readonly when: string } | null): string =>
  withLine(
    html,
    known === null
      ? "Not connected now: worked out on this device."
      : `Not connected now: worked out on this device, with what the tank's page knew on ${known.when}.`,
    "first",
  );

function withLine(html: string, words: string, where: "first" | "last"): string {
  const line = `<p class="seen-line" role="status">${words}</p>`;
  if (where === "last") return html.replace("</main>", () => `${line}</main>`);
  return html.replace(/<main\b[^>]*>/, (main) => main + line);
}

/** "26 Nov 2026, 22:14", in this machine's zone; "an earlier day" where the answer had no date. */
export function seenWords(date: string | null): string {
  const at = new Date(date ?? "");
  if (Number.isNaN(at.getTime())) return "an earlier day";
  const day = at.toLocaleDateString("en-GB", { day: "numeric", month: "short", year: "numeric" });
  return `${day}, ${at.toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" })}`;
}

export const NOT_SEEN_POLICY =
  "default-src 'none'; style-src 'self'; font-src 'self'; base-uri 'none'; frame-ancestors 'none'";

export function notSeenPage(sheet: string | null, crisis: string): string {
  const style = sheet === null ? "" : `<link rel="stylesheet" href="${new URL(sheet).pathname}">`;
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Not connected – Grazewell</title><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark">${style}</head><body><main id="main"><h1>Not connected, and not seen before</h1><p>Grazewell can't be reached just now, and this page was not opened on this device before. Start Grazewell, or go back to a page that you saw.</p><p><a href="${crisis}">Something is wrong</a></p></main></body></html>`;
}
