/** The body of a page alone, with its title: what a client module puts into a page that is open already. */
import { renderToString } from "preact-render-to-string";
import type { Page } from "./page.ts";
import { TankId } from "./parts/tank-context.ts";

export const renderPart = ({ title, tank, body }: Page): string =>
  `<!doctype html>${renderToString(
    <>
      <title>{`${title} – Grazewell`}</title>
      <TankId.Provider value={tank?.id ?? null}>{body}</TankId.Provider>
    </>,
  )}`;
