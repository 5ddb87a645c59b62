/**
 * Who may ask, and what every answer carries. The page runs on the keeper's own machine without accounts: whatever
 * else the browser has open must not reach it. So the name asked for must be this machine's own (another name that
 * points here is refused), and a change must come from this page or from a program that is no browser.
 * Limits: no accounts yet; the server listens on loopback alone (listen.ts).
 */
import type { IncomingHttpHeaders } from "node:http";

/** No inline anything, nothing from elsewhere; WebAssembly for the solver. The same for every answer. */
export const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "form-action 'self'",
  "base-uri 'none'",
  "object-src 'none'",
  "frame-ancestors 'none'",
  "require-trusted-types-for 'script'",
].join("; ");

/** No HSTS: the page is served over plain http on loopback. */
export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  "content-security-policy": CONTENT_POLICY,
  "x-content-type-options": "nosniff",
  "referrer-policy": "no-referrer",
  "permissions-policy":
    "accelerometer=(), autoplay=(), camera=(), clipboard-read=(), display-capture=(), fullscreen=(self), geolocation=(), gyroscope=(), magnetometer=(), microphone=(), midi=(), payment=(), publickey-credentials-get=(), screen-wake-lock=(), serial=(), usb=(), xr-spatial-tracking=()",
  "cross-origin-opener-policy": "same-origin",
  "cross-origin-resource-policy": "same-origin",
  "x-frame-options": "DENY",
};

const LOOPBACK_NAMES: ReadonlySet<string> = new Set(["localhost", "127.0.0.1", "[::1]"]);

/** The machine's own name in a Host header or an origin, without its port; null where it is another's. */
function loopbackAuthority(authority: string): string | null {
  const match = /^(\[[0-9a-f:]+\]|[a-z0-9.-]+)(?::(\d{1,5}))?$/i.exec(authority);
  if (match === null || !LOOPBACK_NAMES.has(match[1]!.toLowerCase())) return null;
  return authority.toLowerCase();
}

export const isLoopbackName = (host: string): boolean =>
  LOOPBACK_NAMES.has(host.toLowerCase()) || host === "::1";

export interface Refused {
  readonly status: 403 | 421;
  readonly why: string;
}

const ELSEWHERE: Refused = {
  status: 403,
  why: "This was asked from another site's page. Open the page itself and do it there.",
};

/** Why a request is not answered; null where it may be. */
export function refusedRequest(method: string, headers: IncomingHttpHeaders): Refused | null {
  const host = loopbackAuthority(headers.host ?? "");
  if (host === null) {
    return {
      status: 421,
      why: "This page answers to its own machine's name alone: ask for 127.0.0.1 or localhost.",
    };
  }
  const changes = method !== "GET" && method !== "HEAD";
  const site = headers["sec-fetch-site"];
  // Told no referrer, a browser sends this very page's forms from the origin "null": then it says where they stand.
  const origin = headers.origin === "null" && site === "same-origin" ? undefined : headers.origin;
  if (origin !== undefined && origin.toLowerCase() !== `http://${host}`) {
    return ELSEWHERE;
  }
  const fromElsewhere = site === "cross-site" || site === "same-site";
  // A link from elsewhere may open a page here: that shows it to the keeper alone, and changes nothing.
  const opensPage =
    !changes && headers["sec-fetch-mode"] === "navigate" && headers["sec-fetch-dest"] === "document";
  if (fromElsewhere && !opensPage) {
    return ELSEWHERE;
  }
  return null;
}
