/** Which tank a page speaks of, for parts deep in it that link to a figure's working. Set by the layout. */
import { createContext } from "preact";

export const TankId = createContext<string | null>(null);
