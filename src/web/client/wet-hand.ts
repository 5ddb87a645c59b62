/**
 * Wet hand with script: rows open panels of the same page, keys write into its field, and what was kept is said on top
 * with one press to undo it. The panel stands in the address, so a phone's way back leads to the rows.
 */
import type { OutboxEnded } from "./outbox.ts";
import { OUTBOX_NEWS, tellNews } from "./outbox-send.ts";
import { dropEntry, entriesWaiting, type OutboxEntry } from "./outbox-store.ts";

const root = document.querySelector<HTMLElement>("[data-wet-hand]");
const panels = [...document.querySelectorAll<HTMLElement>("[data-wet-panel]")];
const said = document.querySelector<HTMLElement>("[data-wet-said]");

const nameOf = (panel: HTMLElement): string => panel.dataset["wetPanel"] ?? "";

function open(name: string, moveFocus: boolean): void {
  const known = panels.some((panel) => nameOf(panel) === name) ? name : "home";
  for (const panel of panels) panel.hidden = nameOf(panel) !== known;
  // A panel has a heading of its own, and the room is the thumb's.
  root?.querySelector("h1")?.classList.toggle("unseen", known !== "home");
  if (!moveFocus) return;
  const panel = panels.find((one) => nameOf(one) === known);
  scrollTo(0, 0);
  (panel?.querySelector<HTMLElement>("h2") ?? root?.querySelector("h1"))?.focus({ preventScroll: true });
}

/** What was typed and not kept is found again where it was typed. */
function unfinished(): string | null {
  for (const panel of panels) {
    const field = panel.querySelector<HTMLInputElement>("input[type=text]");
    if (field !== null && field.value !== field.defaultValue) return nameOf(panel);
  }
  return null;
}

root?.addEventListener("click", (event) => {
  if (!(event.target instanceof Element)) return;
  const row = event.target.closest<HTMLElement>("[data-wet-go]");
  if (row !== null) {
    event.preventDefault();
    said?.replaceChildren();
    waits = null;
    location.hash = row.dataset["wetGo"] ?? "home";
    return;
  }
  const key = event.target.closest<HTMLElement>("[data-wet-key], [data-wet-value]");
  const field = key?.closest("form")?.querySelector<HTMLInputElement>("input[type=text]");
  if (key === null || field === undefined || field === null) return;
  const { wetKey, wetValue } = key.dataset;
  if (wetValue !== undefined) field.value = wetValue;
  else field.value = wetKey === "delete" ? field.value.slice(0, -1) : field.value + (wetKey ?? "");
  // Drafts and the entry's key listen for typing.
  field.dispatchEvent(new Event("input", { bubbles: true }));
});

root?.addEventListener("outbox-ended", (event) => {
  const { entry, ended } = (event as CustomEvent<OutboxEnded>).detail;
  // What can't be read is told by the form's own page, beside its field.
  if (ended.kind === "refused" || ended.kind === "other") return;
  event.preventDefault();
  const form = event.target as HTMLFormElement;
  form.reset();
  location.hash = "home";
  open("home", false);
  waits = null;
  if (ended.kind === "kept") {
    say(
      ended.danger === null ? `Kept: ${ended.sentence}` : `Danger. ${ended.sentence} ${ended.danger}`,
      ended.danger !== null,
      undoForm(entry.tank, ended.id, ended.version),
    );
  } else {
    say(
      `Kept on this device: ${entry.words}. It is sent when Grazewell can be reached.`,
      false,
      button("Undo", () => void takeOut(entry)),
    );
    waits = entry;
    void tellSent();
  }
});

/** The entry of which it is said that it waits; null once anything else is said. */
let waits: OutboxEntry | null = null;
const isWaiting = async ({ key }: OutboxEntry): Promise<boolean> =>
  (await entriesWaiting()).some((one) => one.key === key);

if ("indexedDB" in globalThis)
  new BroadcastChannel(OUTBOX_NEWS).addEventListener("message", () => void tellSent());

/** What was said to wait may be sent by any tab, or by the worker. */
async function tellSent(): Promise<void> {
  const own = waits;
  if (own === null || (await isWaiting(own)) || waits !== own) return;
  waits = null;
  say(`Sent, and in the daybook: ${own.words}.`, false, null);
}

async function takeOut(entry: OutboxEntry): Promise<void> {
  if (!(await isWaiting(entry))) return await tellSent();
  waits = null;
  await dropEntry(entry.key);
  tellNews();
  say(`Taken out: ${entry.words}.`, false, null);
}

addEventListener("hashchange", () => open(location.hash.slice(1), true));
open(location.hash.slice(1) || (unfinished() ?? "home"), false);

function say(words: string, danger: boolean, undo: HTMLElement | null): void {
  if (said === null) return;
  const line = document.createElement("p");
  line.textContent = words;
  if (danger) line.className = "caution";
  said.replaceChildren(line, ...(undo === null ? [] : [undo]));
  if (danger) {
    const link = document.createElement("a");
    link.className = "action";
    link.href = "/something-is-wrong";
    link.textContent = "What to do first";
    said.append(link);
  }
  scrollTo(0, 0);
}

function button(words: string, pressed: () => void): HTMLButtonElement {
  const made = document.createElement("button");
  made.type = "button";
  made.textContent = words;
  made.addEventListener("click", pressed);
  return made;
}

/** As on the daybook: a form of one press. */
function undoForm(tank: string, id: string, version: number): HTMLFormElement {
  const form = document.createElement("form");
  form.method = "post";
  form.action = `/tanks/${tank}/daybook/entries/${id}`;
  for (const [name, value] of Object.entries({ version: String(version), go: "take_away" })) {
    const input = document.createElement("input");
    input.type = "hidden";
    input.name = name;
    input.value = value;
    form.append(input);
  }
  const undo = document.createElement("button");
  undo.textContent = "Undo";
  form.append(undo);
  return form;
}
