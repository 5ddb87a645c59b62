/**
 * What the outbox holds, drawn: the count on top of every page, and where `data-outbox-list` stands, a line an entry with
 * what was typed, why it was not taken, and what can be done: mend it in its form, or take it out.
 */
import { sendWaiting, tellNews } from "./outbox-send.ts";
import { dropEntry, type OutboxEntry } from "./outbox-store.ts";

export function listOutbox(entries: readonly OutboxEntry[]): void {
  showCount(entries);
  const list = document.querySelector<HTMLElement>("[data-outbox-list]");
  if (list === null) return;
  list.hidden = entries.length === 0;
  const heading = document.createElement("h2");
  heading.textContent = "Not in the daybook yet";
  const lines = document.createElement("ul");
  lines.className = "outbox-lines";
  lines.append(...entries.map(lineOf));
  list.replaceChildren(heading, lines);
  if (!entries.some(({ state }) => state === "waiting")) return;
  list.append(button("Send now", () => void sendWaiting(), "send"));
}

const counted = (count: number, one: string, more: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${more}`;

function showCount(entries: readonly OutboxEntry[]): void {
  const refused = entries.filter(({ state }) => state === "refused").length;
  const waiting = entries.length - refused;
  const words = [
    ...(waiting === 0 ? [] : [`${counted(waiting, "entry waits", "entries wait")} to be sent`]),
    ...(refused === 0 ? [] : [`${counted(refused, "entry", "entries")} could not be read yet`]),
  ];
  const known = document.querySelector<HTMLElement>(".outbox-count");
  if (words.length === 0) {
    known?.remove();
    return;
  }
  const line = known ?? document.createElement("p");
  line.className = "outbox-count";
  line.setAttribute("role", "status");
  const link = document.createElement("a");
  link.href = `/tanks/${entries[0]?.tank ?? ""}/wet-hand#outbox`;
  link.textContent = words.join(", ");
  if (line.textContent !== link.textContent) line.replaceChildren(link);
  if (known === null) document.querySelector("main")?.prepend(line);
}

function lineOf(entry: OutboxEntry): HTMLElement {
  const line = document.createElement("li");
  const words = document.createElement("p");
  words.textContent = `${entry.words} (typed ${entry.typedAt.slice(0, 16).replace("T", ", ")})`;
  line.append(words);
  for (const doubt of entry.doubts) {
    const why = document.createElement("p");
    why.className = "field-error";
    why.textContent = doubt;
    line.append(why);
  }
  const actions = document.createElement("div");
  actions.className = "beside-actions";
  if (entry.state === "refused") actions.append(mendForm(entry));
  actions.append(
    button(
      "Take it out",
      () => void dropEntry(entry.key).then(tellNews),
      "plain",
      `Take it out: ${entry.words}`,
    ),
  );
  line.append(actions);
  return line;
}

/** Its form, with what was typed and what can't be read: as the server answers a form. */
function mendForm(entry: OutboxEntry): HTMLFormElement {
  const form = document.createElement("form");
  form.method = "post";
  form.action = entry.form;
  for (const [name, value] of [...entry.fields, ["once", entry.key] as const]) {
    const input = document.createElement("input");
    input.type = "hidden";
    input.name = name;
    input.value = value;
    form.append(input);
  }
  const mend = document.createElement("button");
  mend.textContent = "Mend it";
  mend.setAttribute("aria-label", `Mend it: ${entry.words}`);
  form.append(mend);
  return form;
}

function button(words: string, pressed: () => void, kind: string, label = words): HTMLButtonElement {
  const made = document.createElement("button");
  made.type = "button";
  made.className = kind;
  made.textContent = words;
  if (label !== words) made.setAttribute("aria-label", label);
  made.addEventListener("click", pressed);
  return made;
}
