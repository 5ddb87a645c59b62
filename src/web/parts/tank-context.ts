/** Which tank a page speaks of, for parts deep in it that link to a figure's working. Set by the layout. */
import { createContext } from "preact";

export const TankId = createContext<string | null>(null);

/**
 * Where the working of a figure is, for parts that show another course than today's: a what-if's figures have workings
 * of their own, and so have a sum's, which may belong to no tank. Null for today's.
 */
export const WorkingOf = createContext<((tank: string | null, figure: string) => string) | null>(null);
