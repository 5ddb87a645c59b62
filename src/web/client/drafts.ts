/**
 * What is typed is kept in this browser as it is typed, until it has been saved: a closed tab, a lost network or an
 * ended session takes nothing. A form, or one field, asks for it with `data-draft`; its value names the draft where
 * two addresses share one form.
 * Limits: one browser. Where what is kept on the server has changed since, the typed text is offered, not put in.
 */
const PREFIX = "draft:";
/** The drafts that a form sent, in this tab: told apart from others once an answer has come. */
const SENT = "drafts-sent";

type Control = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;

interface Draft {
  /** What the field held when the page came. */
  readonly base: string;
  readonly typed: string;
}

const controls = [
  ...document.querySelectorAll<Control>(
    ":is(input, textarea, select)[data-draft], form[data-draft] :is(input, textarea, select)",
  ),
].filter((control) => control.name !== "" && control.type !== "hidden" && control.type !== "submit");

forgetSaved();

/** A form that could not be saved comes back with what was typed, which is no more kept than before. */
const unsaved = document.querySelector("[aria-invalid=true], .error-summary") !== null;
/** What is kept of each: as the page came with it, since a browser may have put in other values by now. */
const bases = new Map(
  controls.map((control) => [control, (unsaved ? draftOf(control)?.base : null) ?? valueAsSent(control)]),
);

for (const control of controls) restore(control);

document.addEventListener("input", keep);
document.addEventListener("change", keep);
document.addEventListener("submit", ({ target, defaultPrevented }) => {
  // What the outbox took is its own to forget.
  if (!(target instanceof HTMLFormElement) || defaultPrevented) return;
  const keys = controls.filter((control) => control.form === target).map(keyOf);
  if (keys.length > 0) store(sessionStorage, SENT, JSON.stringify(keys));
});

/** What was typed into a form is kept elsewhere now. */
export function forgetDrafts(form: HTMLFormElement): void {
  for (const control of controls) if (control.form === form) localStorage.removeItem(keyOf(control));
}

function keep({ target }: Event): void {
  const control = controls.find((one) => one === target);
  if (control === undefined) return;
  // The others of a group of radio buttons change without an event of their own.
  for (const one of controls.filter((other) => other.form === control.form && other.name === control.name)) {
    const base = bases.get(one) ?? "";
    const typed = typedIn(one);
    if (typed === base) localStorage.removeItem(keyOf(one));
    else store(localStorage, keyOf(one), JSON.stringify({ base, typed } satisfies Draft));
  }
}

function restore(control: Control): void {
  const draft = draftOf(control);
  const base = bases.get(control) ?? "";
  if (draft === null) return;
  if (draft.typed === base) localStorage.removeItem(keyOf(control));
  else if (unsaved) return;
  else if (draft.base === base) put(control, draft.typed);
  else if (!isTicked(control) && draft.typed !== "") offer(control, draft);
}

/** A form that was saved answers with the address of another page; one that was not comes back as its own answer. */
function forgetSaved(): void {
  const sent = sessionStorage.getItem(SENT);
  if (sent === null) return;
  sessionStorage.removeItem(SENT);
  const [came] = performance.getEntriesByType("navigation") as PerformanceNavigationTiming[];
  if (came === undefined || came.type !== "navigate" || came.redirectCount === 0) return;
  for (const key of JSON.parse(sent) as string[]) localStorage.removeItem(key);
}

function offer(control: Control, draft: Draft): void {
  const line = document.createElement("p");
  line.className = "draft-note";
  line.textContent = `You typed "${draft.typed}" here and did not save it. Since then this was changed. `;
  const back = document.createElement("button");
  back.type = "button";
  back.className = "plain";
  back.textContent = "Put it back";
  back.addEventListener("click", () => {
    put(control, draft.typed);
    control.dispatchEvent(new Event("input", { bubbles: true }));
    line.remove();
    control.focus();
  });
  line.append(back);
  (control.closest(".input-row") ?? control).after(line);
}

function keyOf(control: Control): string {
  const name = control.dataset["draft"] || control.form?.dataset["draft"] || location.pathname;
  return `${PREFIX}${name}:${control.name}${isTicked(control) ? `=${control.value}` : ""}`;
}

function isTicked(control: Control): control is HTMLInputElement {
  return control instanceof HTMLInputElement && (control.type === "checkbox" || control.type === "radio");
}

function valueAsSent(control: Control): string {
  if (isTicked(control)) return control.defaultChecked ? "yes" : "no";
  if (control instanceof HTMLSelectElement) {
    return ([...control.options].find((option) => option.defaultSelected) ?? control.options[0])?.value ?? "";
  }
  return control.defaultValue;
}

function typedIn(control: Control): string {
  return isTicked(control) ? (control.checked ? "yes" : "no") : control.value;
}

function put(control: Control, typed: string): void {
  if (isTicked(control)) control.checked = typed === "yes";
  else control.value = typed;
}

function draftOf(control: Control): Draft | null {
  const kept = localStorage.getItem(keyOf(control));
  if (kept === null) return null;
  const draft = JSON.parse(kept) as Partial<Draft> | null;
  return typeof draft?.base === "string" && typeof draft.typed === "string"
    ? { base: draft.base, typed: draft.typed }
    : null;
}

/** A full or closed storage keeps nothing; typing goes on. */
function store(where: Storage, key: string, value: string): void {
  try {
    where.setItem(key, value);
  } catch {
    // Nothing to do: the field itself still holds what was typed.
  }
}
