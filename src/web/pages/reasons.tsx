/** Animals by what stands for or against them: those with one and the same reason stand together under it. */
import type { Grouped } from "../../answers/animals/fit-words.ts";
import { plain } from "../../answers/sentence.ts";
import { to } from "../page.ts";
import { Sentence } from "./sentence.tsx";

interface ReasonsProps {
  readonly tank: string;
  readonly groups: readonly Grouped[];
}

export function Reasons({ tank, groups }: ReasonsProps) {
  return (
    <dl class="reasons">
      {groups.map(({ reason, rows }) => (
        <div key={plain(reason)}>
          <dt>
            {rows.map(({ id, name }, i) => (
              <span key={id}>
                {i === 0 ? null : ", "}
                <a href={to.animal(tank, id)}>{name}</a>
              </span>
            ))}
          </dt>
          <dd>
            <Sentence of={reason} />
          </dd>
        </div>
      ))}
    </dl>
  );
}
