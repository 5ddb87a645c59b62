/**
 * The outbox on a page. A form that adds an entry (`data-outbox`: its kind) puts it here first, under a key made when its
 * first letter was typed, and then sends it: whatever is cut after that, the entry is in the daybook once. How many wait
 * is said on every page; `data-outbox-list` lists them.
 * Limits: without a database in the browser a form is sent the plain way, and its draft is all that is kept.
 */
import { forgetDrafts } from "./drafts.ts";
import { localInstant } from "./local-instant.ts";
import { listOutbox } from "./outbox-list.ts";
import { type Ended, OUTBOX_NEWS, sendOwn, sendWaiting, tellNews } from "./outbox-send.ts";
import { entriesWaiting, keepEntry, type OutboxEntry } from "./outbox-store.ts";

/** What became of a form's entry, told to who drew the form: `detail` of the event `outbox-ended`. */
export interface OutboxEnded {
  readonly entry: OutboxEntry;
  readonly ended: Ended;
}

const KEY_PREFIX = "outbox-key:";
const AGAIN_MS = 15_000;

const forms = [...document.querySelectorAll<HTMLFormElement>("form[data-outbox]")];

for (const form of forms) {
  const known = localStorage.getItem(keyName(form));
  if (known !== null) field(form, "once").value = known;
  form.addEventListener("input", () => keyOf(form));
}

document.addEventListener("submit", take, { capture: true });

if ("indexedDB" in globalThis) {
  new BroadcastChannel(OUTBOX_NEWS).addEventListener("message", () => void show());
  addEventListener("online", () => void sendWaiting());
  setInterval(() => void sendIfAny(), AGAIN_MS);
  void show().then(sendIfAny);
}

async function sendIfAny(): Promise<void> {
  const waiting = await entriesWaiting().catch(() => []);
  if (waiting.some(({ state }) => state === "waiting")) await sendWaiting();
}

function take(event: SubmitEvent): void {
  const form = event.target;
  if (!(form instanceof HTMLFormElement) || form.dataset["outbox"] === undefined) return;
  if (form.dataset["plain"] !== undefined || !("indexedDB" in globalThis)) return;
  event.preventDefault();
  // The second tap of two: the first is on its way.
  if (form.ariaBusy === "true") return;
  form.ariaBusy = "true";
  const entry = entryOf(form, event.submitter);
  void keepAndSend(form, entry).finally(() => {
    form.ariaBusy = null;
  });
}

async function keepAndSend(form: HTMLFormElement, typed: OutboxEntry): Promise<void> {
  let kept = typed;
  try {
    kept = await underItsKey(typed);
    await keepEntry(kept);
  } catch {
    sendPlain(form, typed);
    return;
  }
  forgetDrafts(form);
  localStorage.removeItem(keyName(form));
  field(form, "once").value = "";
  tellNews();
  const ended = await sendOwn(kept);
  if (ended.kind === "not_reached") askForSync();
  const told = new CustomEvent<OutboxEnded>("outbox-ended", {
    detail: { entry: kept, ended },
    cancelable: true,
    bubbles: true,
  });
  if (!form.dispatchEvent(told)) return;
  if (ended.kind === "kept") location.assign(ended.next);
  else if (ended.kind === "refused") sendPlain(form, kept);
  else {
    form.reset();
    sayKept(form);
  }
}

/** The entry of that key waits with other words already: this one is another. */
async function underItsKey(entry: OutboxEntry): Promise<OutboxEntry> {
  const before = (await entriesWaiting()).find(({ key }) => key === entry.key);
  const other =
    before !== undefined &&
    before.state === "waiting" &&
    JSON.stringify(before.fields) !== JSON.stringify(entry.fields);
  return other ? { ...entry, key: crypto.randomUUID() } : entry;
}

function entryOf(form: HTMLFormElement, submitter: HTMLElement | null): OutboxEntry {
  const sent = new FormData(form, submitter);
  const fields = [...sent].flatMap(([name, value]): [string, string][] =>
    typeof value === "string" && name !== "once" && value !== "" ? [[name, value]] : [],
  );
  return {
    key: keyOf(form),
    tank: form.dataset["tank"] ?? "",
    form: new URL(form.action).pathname,
    kind: form.dataset["outbox"] ?? "",
    words: wordsOf(form, fields),
    typedAt: localInstant(new Date()),
    fields,
    state: "waiting",
    doubts: [],
  };
}

/** "Nitrate: 5": what the form is for and what was typed, for who looks at the list. */
function wordsOf(form: HTMLFormElement, fields: readonly (readonly [string, string])[]): string {
  const hidden = new Set(
    [...form.querySelectorAll<HTMLInputElement>("input[type=hidden]")].map(({ name }) => name),
  );
  const typed = fields
    .filter(([name]) => !hidden.has(name) && !/^(unit|observed|kit_step)$/.test(name))
    .map(([, value]) => value);
  return `${form.dataset["words"] ?? ""}: ${typed.join(", ").replaceAll("_", " ")}`.slice(0, 160);
}

/** Made with the first letter, the same until the entry is kept: also when the tab was lost in between. */
function keyOf(form: HTMLFormElement): string {
  const input = field(form, "once");
  if (localStorage.getItem(keyName(form)) !== null && input.value !== "") return input.value;
  // A form that came back with doubts keeps the key it was sent under.
  if (form.dataset["key"] === undefined || input.value === "") input.value = crypto.randomUUID();
  try {
    localStorage.setItem(keyName(form), input.value);
  } catch {
    // Nothing to do: the form itself holds it.
  }
  return input.value;
}

function keyName(form: HTMLFormElement): string {
  return `${KEY_PREFIX}${form.dataset["draft"] ?? location.pathname}`;
}

function field(form: HTMLFormElement, name: string): HTMLInputElement {
  const found = form.querySelector<HTMLInputElement>(`input[name="${name}"]`);
  if (found === null) throw new Error(`Cannot keep an entry: its form has no ${name}`);
  return found;
}

/** As without script: the server's own page says what can't be read, beside its field. */
function sendPlain(form: HTMLFormElement, entry: OutboxEntry): void {
  const plain = document.createElement("form");
  plain.method = "post";
  plain.action = form.action;
  plain.dataset["plain"] = "";
  plain.hidden = true;
  for (const [name, value] of [...entry.fields, ["once", entry.key] as const]) {
    const input = document.createElement("input");
    input.type = "hidden";
    input.name = name;
    input.value = value;
    plain.append(input);
  }
  document.body.append(plain);
  plain.submit();
}

function sayKept(form: HTMLFormElement): void {
  const line = document.createElement("p");
  line.className = "outbox-said";
  line.tabIndex = -1;
  line.setAttribute("role", "status");
  line.textContent = "Kept on this device. It is sent when Grazewell can be reached.";
  for (const earlier of form.parentElement?.querySelectorAll(".outbox-said") ?? []) earlier.remove();
  form.before(line);
  line.focus();
}

/** The worker sends what waits even when no page is open, where the browser can. */
function askForSync(): void {
  if (!("serviceWorker" in navigator)) return;
  void navigator.serviceWorker.getRegistration().then(async (registration) => {
    const { sync } = (registration ?? {}) as { sync?: { register(tag: string): Promise<void> } };
    await sync?.register(OUTBOX_NEWS).catch(() => undefined);
  });
}

/** How many wait, on top of every page; and the list of them, where the page has one. */
async function show(): Promise<void> {
  const entries = await entriesWaiting().catch(() => []);
  forgetSentDrafts(entries);
  listOutbox(entries);
}

/** A tab lost between keeping an entry and forgetting its draft: the draft is that entry, and no second one. */
function forgetSentDrafts(entries: readonly OutboxEntry[]): void {
  for (const form of forms) {
    const key = localStorage.getItem(keyName(form));
    const own = entries.find((entry) => entry.key === key && entry.state === "waiting");
    if (own === undefined || form.ariaBusy === "true") continue;
    if (JSON.stringify(entryOf(form, null).fields) !== JSON.stringify(own.fields)) continue;
    forgetDrafts(form);
    localStorage.removeItem(keyName(form));
    form.reset();
  }
}
