/** Bounds of what the API takes, beside those of a tank file and of a reading. */
export const MOST_ID_LETTERS = 200;
export const MOST_KEY_LETTERS = 200;
export const MOST_CHANGES = 20;
export const MOST_CHANGE_LETTERS = 200;
/** Readings in one answer. */
export const MOST_LISTED = 1000;
export const LEAST_MEMBERS = 20;
/** More are worked out on the command line, where nobody else waits. */
export const MOST_MEMBERS = 400;
