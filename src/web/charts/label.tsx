/**
 * Words in a drawing. They are HTML on the page's own ground rather than SVG text, so that a line behind them does not
 * run through them and their contrast can be measured by a tool as any other text's.
 */
interface LabelProps {
  readonly x: number;
  /** Baseline. */
  readonly y: number;
  readonly anchor?: "start" | "middle" | "end";
  readonly kind?: "plain" | "small" | "strong";
  readonly children: string;
}

/** Room for a character, generous; what is left over lets the pointer through. */
const CHARACTER = 10;
const HEIGHT = 22;
const ABOVE_BASELINE = 16;

export function Label({ x, y, anchor = "start", kind = "plain", children }: LabelProps) {
  const width = children.length * CHARACTER + 8;
  const left = anchor === "start" ? x : anchor === "end" ? x - width : x - width / 2;
  return (
    <foreignObject x={left} y={y - ABOVE_BASELINE} width={width} height={HEIGHT}>
      <div class={`words ${kind} ${anchor}`}>
        <span>{children}</span>
      </div>
    </foreignObject>
  );
}
