/**
 * The what-if while a keeper types: takes over the body that the server drew, answers when a step is pressed or a field
 * is left, keeps the change in the page's address. Nothing is saved.
 */
import { hydrate } from "preact";
import { useMemo, useRef, useState } from "preact/hooks";
import { to } from "../page.ts";
import { WhatIfBody, type WhatIfBodyView } from "../pages/what-if/body.tsx";
import type { FieldActions } from "../pages/what-if/step-field.tsx";
import { changeParts, queryOf, stepped, type Typed, typedOf } from "../pages/what-if/typed.ts";
import { TankId } from "../parts/tank-context.ts";
import { WhatIfAnswers } from "./what-if-answers.ts";

/** Steps come in quick rows: the last of them is asked. */
const REST_MS = 350;

interface LiveProps {
  readonly first: WhatIfBodyView;
}

function Live({ first }: LiveProps) {
  const [view, setView] = useState(first);
  const [doing, setDoing] = useState("");
  /** What is typed at this moment: events come faster than drawings. */
  const typed = useRef<Typed>(first.typed);
  const asked = useRef(queryOf(first.typed));
  const rest = useRef(0);
  /** Draws anew. Always with what is typed by now: the fields hold it, and an older text would overwrite it. */
  const draw = (changes: Partial<WhatIfBodyView>) =>
    setView((now) => ({ ...now, ...changes, typed: typed.current }));
  const answers = useMemo(
    () =>
      new WhatIfAnswers(first.tank, {
        doing: setDoing,
        beside: (beside, besideTyped) => draw({ beside, besideTyped, faults: {} }),
        faults: (faults) => {
          setDoing("");
          draw({ faults });
        },
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
    draw(read ? { faults } : { faults, beside: null });
    if (read) answers.ask({ parts, typed: typed.current });
    else {
      answers.drop();
      setDoing("");
    }
  };
  const soon = () => {
    clearTimeout(rest.current);
    rest.current = window.setTimeout(work, REST_MS);
  };
  const actions: FieldActions = {
    typed: put,
    step: (name, by) => {
      put(name, stepped(name, typed.current[name] ?? "", by, first.today));
      draw({});
      soon();
    },
    left: soon,
    sent: (fix) => {
      if (fix !== null) typed.current = typedOf({ ...typed.current, [fix.name]: fix.text });
      draw({});
      work(true);
    },
  };
  return (
    <TankId.Provider value={first.tank}>
      <WhatIfBody view={view} actions={actions} doing={doing} />
    </TankId.Provider>
  );
}

const place = document.querySelector<HTMLElement>("[data-what-if]");
const { view } = place?.dataset ?? {};
if (place !== null && view !== undefined) {
  hydrate(<Live first={JSON.parse(view) as WhatIfBodyView} />, place);
}
