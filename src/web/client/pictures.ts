/**
 * The form of a picture with script: a large picture, or one of a kind that is not taken, is drawn smaller as JPEG before
 * it goes, where this browser can draw it; then it is sent, and where Grazewell can't be reached that is said beside the
 * button, the picture still chosen. Limits: a picture is not kept on the device; the outbox holds entries alone. Without
 * script the form is sent as it is.
 */
const MOST_SIDE_PIXELS = 2_000;
const SMALL_BYTES = 1_000_000;
const QUALITY = 0.85;
const PATIENCE_MS = 60_000;
const TAKEN: ReadonlySet<string> = new Set(["image/jpeg", "image/png", "image/webp"]);

for (const form of document.querySelectorAll<HTMLFormElement>("form[data-picture]")) {
  form.addEventListener("submit", (event) => {
    const [file] = inputOf(form)?.files ?? [];
    // None chosen: the server's own page says so, beside the field.
    if (file === undefined) return;
    event.preventDefault();
    if (form.ariaBusy === "true") return;
    form.ariaBusy = "true";
    void send(form, file).finally(() => {
      form.ariaBusy = null;
    });
  });
}

async function send(form: HTMLFormElement, file: File): Promise<void> {
  say(form, "Sending the picture ...");
  const picture = await smaller(file);
  const body = new FormData(form);
  body.set("picture", picture, picture.name);
  try {
    const response = await fetch(form.action, {
      method: "POST",
      body,
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    if (response.redirected && response.ok) {
      go(response.url);
      return;
    }
    if (response.status >= 500 || response.status === 429) {
      say(form, `Not kept yet (answer ${response.status}). ${HELD}`);
      return;
    }
  } catch {
    say(form, `Not kept yet: Grazewell can't be reached. ${HELD}`);
    return;
  }
  // What can't be taken is told by the form's own page, beside its field.
  put(form, picture);
  form.submit();
}

const HELD =
  "The entry itself is kept. Leave this page open and press the button again later: the picture is still chosen.";

/** The same page again is asked for anew, wherever in it the address leads. */
function go(address: string): void {
  const next = new URL(address);
  next.hash = "pictures";
  if (next.pathname === location.pathname && next.search === location.search) {
    history.replaceState(null, "", next);
    location.reload();
  } else location.assign(next);
}

/** The picture as it is where it is small, or can't be drawn here: what it is then is for the server to say. */
async function smaller(file: File): Promise<File> {
  try {
    const image = await createImageBitmap(file);
    const share = Math.min(1, MOST_SIDE_PIXELS / Math.max(image.width, image.height));
    if (share === 1 && file.size <= SMALL_BYTES && TAKEN.has(file.type)) return file;
    const canvas = document.createElement("canvas");
    canvas.width = Math.max(1, Math.round(image.width * share));
    canvas.height = Math.max(1, Math.round(image.height * share));
    const pen = canvas.getContext("2d");
    if (pen === null) return file;
    // What is see-through would come out black.
    pen.fillStyle = "#fff";
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(image, 0, 0, canvas.width, canvas.height);
    image.close();
    const drawn = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", QUALITY));
    return drawn === null || drawn.type !== "image/jpeg"
      ? file
      : new File([drawn], `${file.name.replace(/\.\w{1,5}$/, "")}.jpg`, { type: "image/jpeg" });
  } catch {
    return file;
  }
}

function put(form: HTMLFormElement, picture: File): void {
  const input = inputOf(form);
  if (input === null) return;
  const one = new DataTransfer();
  one.items.add(picture);
  input.files = one.files;
}

const inputOf = (form: HTMLFormElement): HTMLInputElement | null =>
  form.querySelector<HTMLInputElement>("input[type=file]");

function say(form: HTMLFormElement, words: string): void {
  const line = form.querySelector<HTMLElement>("[data-picture-said]");
  if (line !== null) line.textContent = words;
}
