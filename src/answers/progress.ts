/** Hears of long work: words for a person and the share done, 0 to 1. Throwing in it stops the work. */
export type Progress = (doing: string, share: number) => void;
