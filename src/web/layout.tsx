/**
 * Puts a page into a document: head, the tank's name and its pages, the way to "Something is wrong" from everywhere,
 * what every answer says of itself, and the foot that is printed. No script or style stands in it (content policy);
 * blocks of JSON are data.
 */
import type { ComponentChildren } from "preact";
import { renderToString } from "preact-render-to-string";
import { STATEMENT } from "../answers/statement.ts";
import { dateWords } from "../answers/words.ts";
import { PAGE_GROUPS, type Page, type TankHead, type TankPage, to } from "./page.ts";
import { Mark } from "./parts/mark.tsx";
import { TankId } from "./parts/tank-context.ts";

/** Addresses of built files, hashed names and all. */
export interface Assets {
  /** The one style sheet. */
  readonly css: string;
  /** Client module's name, as a page names it → its address. */
  readonly scripts: Readonly<Record<string, string>>;
  /** The mark as SVG, and as PNG for the home screen of a phone. */
  readonly icon: string;
  readonly touchIcon: string;
  readonly manifest: string;
}

/** What paper says of where and when. */
export interface Asked {
  /** As a keeper would type it. */
  readonly address: string;
  /** ISO date. */
  readonly today: string;
}

const PAGE_NAMES: Readonly<Record<TankPage, string>> = {
  bench: "Bench",
  daybook: "Daybook",
  larder: "Larder",
  waves: "Waves",
  ahead: "Weeks ahead",
  trends: "Trends",
  heads: "Heads",
  growths: "What is this?",
  animals: "Animals",
  readings: "Readings",
  "what-if": "What if",
  almanac: "Almanac",
  errands: "Errands",
  weeks: "Weeks 1 to 26",
  "start-up": "Start-up",
  sums: "Water sums",
  feeding: "Feeding",
  arrivals: "Arrivals",
  sheet: "Sheet",
  questions: "Questions",
};

/** Said wherever a demonstration tank is named. */
const INVENTED = "an invented tank";

export function renderDocument(page: Page, assets: Assets, asked: Asked | null = null): string {
  // A sheet of specimens is drawn without the build.
  const always = "everywhere" in assets.scripts ? ["everywhere"] : [];
  const scripts = [...always, ...(page.scripts ?? [])].map((name) => {
    const address = assets.scripts[name];
    if (address === undefined) throw new Error(`Cannot render "${page.title}": no client module ${name}`);
    return address;
  });
  return `<!doctype html>${renderToString(
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <title>{`${page.title} – Grazewell`}</title>
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        {/* Fonts wait for it: asked for at once, they share its line and the first words come later. */}
        <link rel="stylesheet" href={assets.css} />
        <meta name="theme-color" content="#F7F4EC" media="(prefers-color-scheme: light)" />
        <meta name="theme-color" content="#141A1F" media="(prefers-color-scheme: dark)" />
        <link rel="icon" href={assets.icon} type="image/svg+xml" />
        <link rel="apple-touch-icon" href={assets.touchIcon} />
        <link rel="manifest" href={assets.manifest} />
        {scripts.map((address) => (
          <script key={address} type="module" src={address} />
        ))}
      </head>
      <body>
        <a class="skip" href="#main">
          Skip to the page
        </a>
        <TankId.Provider value={page.tank?.id ?? null}>
          <Top tank={page.tank} here={page.here} />
          <main id="main" tabIndex={-1}>
            {page.body}
          </main>
        </TankId.Provider>
        <Foot asked={asked} />
      </body>
    </html>,
  )}`;
}

function Top({ tank, here }: { readonly tank: TankHead | null; readonly here: TankPage | null }) {
  return (
    <header class="top">
      <div class="top-row">
        <a class="brand" href={to.start()}>
          <Mark />
          <span>Grazewell</span>
        </a>
        <a class="wrong-link" href={to.wrong(tank?.id)}>
          Something is wrong
        </a>
      </div>
      {tank === null ? null : (
        <>
          <div class="tank-row">
            <p class="tank-name">
              <a href={to.tank(tank.id)}>{tank.name}</a>
            </p>
            <p class="tank-keeper">
              {[tank.keeper === "" ? null : `kept by ${tank.keeper}`, tank.demonstration ? INVENTED : null]
                .filter((part) => part !== null)
                .join(" · ")}
            </p>
          </div>
          <nav class="pages" aria-label="Pages of this tank">
            <details class="pages-narrow">
              <summary>
                {here === null ? null : <strong>{PAGE_NAMES[here]}</strong>}
                <span class="pages-more">{here === null ? "Pages of this tank" : "other pages"}</span>
              </summary>
              <PageLinks tank={tank.id} here={here} />
            </details>
            <div class="pages-wide">
              <PageLinks tank={tank.id} here={here} />
            </div>
          </nav>
        </>
      )}
    </header>
  );
}

function PageLinks({ tank, here }: { readonly tank: string; readonly here: TankPage | null }) {
  return (
    <dl class="page-groups">
      {PAGE_GROUPS.map(({ name, pages }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            <ul>
              {pages.map((page) => (
                <li key={page}>
                  <a href={to.tank(tank, page)} aria-current={page === here ? "page" : undefined}>
                    {PAGE_NAMES[page]}
                  </a>
                </li>
              ))}
            </ul>
          </dd>
        </div>
      ))}
    </dl>
  );
}

function Foot({ asked }: { readonly asked: Asked | null }): ComponentChildren {
  return (
    <footer class="foot">
      <p>{STATEMENT}</p>
      <ul class="foot-links">
        <li>
          <a href={to.sources()}>Sources</a>
        </li>
        <li>
          <a href={to.guide()}>Field guide</a>
        </li>
        <li>
          <a href={to.start()}>All tanks</a>
        </li>
        <li>
          <a href={to.round()}>Round</a>
        </li>
      </ul>
      {asked === null ? null : (
        <p class="printed">
          {dateWords(asked.today)}. {asked.address}
        </p>
      )}
    </footer>
  );
}
