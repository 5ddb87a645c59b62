/**
 * Opening offline: the service worker is registered where browsers allow it (this machine or https), when the page is
 * idle. A page that it shows from its store says so in a line of its own, with the day it was seen.
 */
import { scriptAddress } from "./script-address.ts";
import { whenIdle } from "./when-idle.ts";

if (isSecureContext && "serviceWorker" in navigator) {
  whenIdle(() => {
    navigator.serviceWorker.register(scriptAddress("/service-worker.js")).catch((error: unknown) => {
      console.info("Grazewell will not open offline here:", error instanceof Error ? error.message : error);
    });
  });
}
