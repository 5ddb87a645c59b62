/**
 * The what-if while a keeper types: takes over the body that the server drew, answers when a step is pressed or a field
 * is left, keeps the change in the page's address. Nothing is saved, and nothing is drawn between two letters: what
 * comes meanwhile waits until typing rests.
 */
import { hydrate } from "preact";
import { useMemo, useRef, useState } from "preact/hooks";
import { to } from "../page.ts";
import { WhatIfBody, type WhatIfBodyView } from "../pages/what-if/body.tsx";
import type { FieldActions } from "../pages/what-if/step-field.tsx";
import { changeParts, queryOf, stepped, type Typed, typedOf } from "../pages/what-if/typed.ts";
import { TankId } from "../parts/tank-context.ts";
import { WhatIfAnswers } from "./what-if-answers.ts";

/** Steps come in quick rows: the last of them is asked. So do letters. */
const REST_MS = 350;

/** The body, and what is being done now. */
type LiveView = WhatIfBodyView & { readonly doing: string };

interface LiveProps {
  readonly first: WhatIfBodyView;
}

function Live({ first }: LiveProps) {
  const [view, setView] = useState<LiveView>({ ...first, doing: "" });
  /** What is typed at this moment: events come faster than drawings. */
  const typed = useRef<Typed>(first.typed);
  /** Null: an answer was dropped, so the same is asked again. */
  const asked = useRef<string | null>(queryOf(first.typed));
  const typedAt = useRef(-REST_MS);
  const rest = useRef(0);
  const drawing = useRef(0);
  /** What has come and is not drawn yet. */
  const come = useRef<Partial<LiveView>>({});
  /** After so long, and not before typing rests. */
  const atRest = (timer: { current: number }, act: () => void, ms = 0): void => {
    clearTimeout(timer.current);
    const wait = Math.max(ms, typedAt.current + REST_MS - performance.now());
    if (wait <= 0) act();
    else timer.current = window.setTimeout(() => atRest(timer, act), wait);
  };
  /** Draws anew. Always with what is typed by now: the fields hold it, and an older text would overwrite it. */
  const draw = (changes: Partial<LiveView> = {}) => {
    clearTimeout(drawing.current);
    const all = { ...come.current, ...changes };
    come.current = {};
    setView((now) => ({ ...now, ...all, typed: typed.current }));
  };
  const drawAtRest = (changes: Partial<LiveView>) => {
    come.current = { ...come.current, ...changes };
    atRest(drawing, draw);
  };
  const answers = useMemo(
    () =>
      new WhatIfAnswers(first.tank, {
        doing: (doing) => drawAtRest({ doing }),
        beside: (beside, besideTyped) => drawAtRest({ beside, besideTyped, faults: {} }),
        faults: (faults) => drawAtRest({ doing: "", faults }),
      }),
    [first.tank],
  );

  const put = (name: string, text: string) => {
    typed.current = { ...typed.current, [name]: text };
  };
  const work = (again = false) => {
    clearTimeout(rest.current);
    const query = queryOf(typed.current);
    if (query === asked.current && !again) return;
    asked.current = query;
    history.replaceState(null, "", `${to.tank(first.tank, "what-if")}${query === "" ? "" : `?${query}`}`);
    const { parts, faults } = changeParts(typed.current, first.today);
    const read = parts.length > 0 && Object.keys(faults).length === 0;
    if (read) {
      draw({ faults });
      answers.ask({ parts, typed: typed.current });
    } else {
      answers.drop();
      draw({ faults, beside: null, doing: "" });
    }
  };
  const soon = () => atRest(rest, work, REST_MS);
  const actions: FieldActions = {
    typed: (name, text) => {
      put(name, text);
      typedAt.current = performance.now();
      // What is being worked out is of an older text, and would slow the letters: it is asked anew at the end of typing.
      if (answers.drop()) {
        asked.current = null;
        drawAtRest({ doing: "" });
      }
    },
    step: (name, by) => {
      put(name, stepped(name, typed.current[name] ?? "", by, first.today));
      draw();
      soon();
    },
    left: soon,
    sent: (fix) => {
      typedAt.current = -REST_MS;
      if (fix !== null) typed.current = typedOf({ ...typed.current, [fix.name]: fix.text });
      draw();
      work(true);
    },
  };
  return (
    <TankId.Provider value={first.tank}>
      <WhatIfBody view={view} actions={actions} doing={view.doing} />
    </TankId.Provider>
  );
}

const place = document.querySelector<HTMLElement>("[data-what-if]");
const { view } = place?.dataset ?? {};
if (place !== null && view !== undefined) {
  hydrate(<Live first={JSON.parse(view) as WhatIfBodyView} />, place);
}
