/**
 * The working of a figure opens over the page: one tap or key press, Escape or the button closes it, the focus goes
 * back to the figure. Links to further workings, sources and parameters go on inside, with a way back.
 * Without script, with a modifier key or with another button the link leads to the working's own page.
 */
import { fetchPart, withQuery } from "./part.ts";

/** Addresses that go on inside the dialog; any other link leaves the page. */
const INSIDE =
  /^\/(?:tanks\/[^/]+\/(?:what-if\/)?working|(?:tanks\/[^/]+\/)?sums\/[^/]+\/working|sources|parameters)\//;

interface Over {
  readonly dialog: HTMLDialogElement;
  readonly content: HTMLElement;
  readonly back: HTMLButtonElement;
  readonly alone: HTMLAnchorElement;
}

let over: Over | null = null;
let opener: HTMLElement | null = null;
/** Addresses opened in this dialog, the one in view last. */
let opened: string[] = [];
let asking: AbortController | null = null;

document.addEventListener("click", (event) => {
  if (event.defaultPrevented || event.button !== 0) return;
  if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
  const link = event.target instanceof Element ? event.target.closest("a") : null;
  if (link === null || link.target !== "" || link.hasAttribute("download")) return;
  const inside = over?.content.contains(link) === true;
  if (link.origin !== location.origin || !INSIDE.test(link.pathname)) return;
  if (!inside && link.dataset["figure"] === undefined) return;
  event.preventDefault();
  if (!inside) opener = link;
  void show(`${link.pathname}${link.search}`, inside ? [...opened] : []);
});

async function show(address: string, before: readonly string[]): Promise<void> {
  over ??= make();
  const { dialog, content, back, alone } = over;
  asking?.abort();
  asking = new AbortController();
  const { signal } = asking;
  opened = [...before, address];
  back.hidden = opened.length < 2;
  alone.href = address;
  if (!dialog.open) {
    say("Opening the working ...");
    dialog.showModal();
  }
  content.ariaBusy = "true";
  try {
    const { fragment } = await fetchPart(withQuery(address, "part", "1"), signal);
    content.replaceChildren(fragment);
  } catch (error) {
    if (signal.aborted) return;
    say(`The working could not be opened: ${error instanceof Error ? error.message : String(error)}.`);
  }
  content.ariaBusy = "false";
  content.scrollTop = 0;
  const heading = content.querySelector<HTMLElement>("h1, h2");
  if (heading === null) return;
  heading.id ||= "over-heading";
  heading.tabIndex = -1;
  dialog.setAttribute("aria-labelledby", heading.id);
  heading.focus();
}

function say(words: string): void {
  const line = document.createElement("p");
  line.textContent = words;
  line.role = "status";
  over?.content.replaceChildren(line);
}

function make(): Over {
  const dialog = document.createElement("dialog");
  dialog.className = "over";
  dialog.ariaLabel = "Working";
  const bar = document.createElement("div");
  bar.className = "over-bar";
  const back = button("Back", () => void show(opened.at(-2)!, opened.slice(0, -2)));
  const alone = document.createElement("a");
  alone.textContent = "Open as a page";
  const close = button("Close", () => dialog.close());
  bar.append(back, alone, close);
  const content = document.createElement("div");
  content.className = "over-content";
  dialog.append(bar, content);
  dialog.addEventListener("close", () => {
    asking?.abort();
    content.replaceChildren();
    dialog.removeAttribute("aria-labelledby");
    if (opener?.isConnected === true) opener.focus();
    opener = null;
  });
  // A tap beside it closes it; a tap inside lands on something of its own.
  dialog.addEventListener("click", (event) => {
    if (event.target === dialog) dialog.close();
  });
  document.body.append(dialog);
  return { dialog, content, back, alone };
}

function button(words: string, pressed: () => void): HTMLButtonElement {
  const made = document.createElement("button");
  made.type = "button";
  made.className = "plain";
  made.textContent = words;
  made.addEventListener("click", pressed);
  return made;
}
