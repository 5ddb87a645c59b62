/**
 * Offers this device's time zone beside the field, as a question: nothing is filled in until the button is pressed. A
 * device may stand elsewhere than the tank.
 */
for (const place of document.querySelectorAll<HTMLElement>("[data-zone-for]")) {
  const field = document.querySelector<HTMLInputElement>(`#${place.dataset["zoneFor"] ?? ""}`);
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  if (field === null || !zone || field.value === zone) continue;
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = `Use ${zone}`;
  button.addEventListener("click", () => {
    field.value = zone;
    field.focus();
    place.replaceChildren();
  });
  place.append(`This device says ${zone}. Does the tank stand there? `, button);
}

export {};
