/** Numbers of flags that several commands share. */
import { InvalidArgumentError } from "commander";

const LEAST_MEMBERS = 20;
const MOST_MEMBERS = 2000;

/** @throws InvalidArgumentError outside 20 to 2000 */
export function memberCount(text: string): number {
  const count = Number(text);
  if (Number.isInteger(count) && count >= LEAST_MEMBERS && count <= MOST_MEMBERS) return count;
  throw new InvalidArgumentError(
    `must be a whole number from ${LEAST_MEMBERS} to ${MOST_MEMBERS}; 200 is usual.`,
  );
}

/** @throws InvalidArgumentError where it is no whole number from 0 to 2^31 */
export function seedNumber(text: string): number {
  const seed = Number(text);
  if (/^\d+$/.test(text) && seed < 2 ** 31) return seed;
  throw new InvalidArgumentError("must be a whole number from 0 to 2147483647.");
}
