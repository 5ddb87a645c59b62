/** Runs work after the page has been painted and the browser has nothing more urgent to do. */
export function whenIdle(work: () => void): void {
  const idle = () =>
    "requestIdleCallback" in globalThis
      ? requestIdleCallback(work, { timeout: 4000 })
      : setTimeout(work, 300);
  if (document.readyState === "complete") idle();
  else addEventListener("load", idle, { once: true });
}
