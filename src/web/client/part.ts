/**
 * A part of a page, fetched: the browser reads the document by itself, so no text becomes HTML by a script's hand
 * (the content policy forbids that), and nothing in it runs.
 */

export interface Part {
  /** Ready to be put into this page. */
  readonly fragment: DocumentFragment;
  /** Of the document it came in; empty where it had none. */
  readonly title: string;
}

/** Rejects with words for a person. */
export function fetchPart(address: string, signal?: AbortSignal): Promise<Part> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open("GET", address);
    request.responseType = "document";
    request.onload = () => {
      const sent = request.response instanceof Document ? request.response : null;
      const body = sent?.body ?? null;
      if (body === null) return reject(new Error(`the answer could not be read (${request.status})`));
      if (request.status >= 400)
        return reject(new Error(wordsOf(body) ?? `the answer was ${request.status}`));
      const fragment = document.createDocumentFragment();
      // A whole page was sent where a part was asked for: its main part is meant.
      const from = body.querySelector("main") ?? body;
      fragment.append(...[...from.childNodes].map((node) => document.adoptNode(node)));
      resolve({ fragment, title: sent?.title ?? "" });
    };
    request.onerror = () => reject(new Error("Grazewell can't be reached just now"));
    request.onabort = () => reject(new DOMException("dropped for a newer question", "AbortError"));
    signal?.addEventListener("abort", () => request.abort(), { once: true });
    request.send();
  });
}

/** Heading and paragraphs, a sentence each, the last without its stop; its links lead elsewhere and are left out. */
function wordsOf(body: HTMLElement): string | null {
  const said = [...(body.querySelector("main") ?? body).querySelectorAll("h1, p")].map((element) =>
    (element.textContent ?? "")
      .replaceAll(/\s+/g, " ")
      .replace(/[.\s]+$/, "")
      .trim(),
  );
  const text = said.filter((sentence) => sentence !== "").join(". ");
  return text === "" || text.length > 300 ? null : text;
}

/** An address with `name=value` in its query, once. */
export function withQuery(address: string, name: string, value: string): string {
  const url = new URL(address, location.href);
  url.searchParams.set(name, value);
  return `${url.pathname}${url.search}`;
}
