/**
 * Slots whose content takes the server a while: `data-await` marks one, `data-src` is the part's address. So is the plan
 * beside a question, `data-plan-part`: as answered so far; what is typed counts once it is sent, nothing is guessed.
 * Filled where it stands; what could not be worked out is said in place of "it is being worked out", with a way to ask
 * again, and the heading stays.
 */
import { fetchPart } from "./part.ts";

function fillSlots(within: ParentNode): void {
  for (const slot of within.querySelectorAll<HTMLElement>("[data-await], [data-plan-part]")) void fill(slot);
}

async function fill(slot: HTMLElement): Promise<void> {
  const address = slot.dataset["src"] ?? slot.dataset["planPart"];
  if (address === undefined || address === "" || slot.ariaBusy === "true") return;
  slot.ariaBusy = "true";
  try {
    const { fragment, title } = await fetchPart(address);
    // The slot was the whole page: its name was "being worked out" until now.
    if (slot.querySelector("h1") !== null && title !== "") document.title = title;
    slot.replaceChildren(fragment);
    delete slot.dataset["await"];
    delete slot.dataset["planPart"];
    // A part may have slots of its own.
    fillSlots(slot);
    slot.dispatchEvent(new CustomEvent("grazewell:filled", { bubbles: true }));
  } catch (error) {
    const again = document.createElement("button");
    again.type = "button";
    again.textContent = "Ask again";
    again.addEventListener("click", () => void fill(slot));
    const words = `Not worked out: ${error instanceof Error ? error.message : String(error)}. `;
    (slot.querySelector("p[role=status]") ?? slot).replaceChildren(words, again);
  } finally {
    slot.ariaBusy = "false";
  }
}

fillSlots(document);
