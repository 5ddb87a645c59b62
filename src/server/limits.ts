/**
 * Every bound of the server, in one place; docs/limits.md is written from it, and checks/http tries one below and one
 * above each. A bound that belongs to reading a tank file (sizes of texts, of lists) is the contract's.
 */

const KIB = 1024;
const MIB = 1024 * KIB;
const SECOND_MS = 1000;

export const LIMITS = {
  /** Of one request. */
  bodyBytes: MIB,
  /** Of one request that brings a file in: beyond the file's own bound, so that the page can say how big it is. */
  fileBytes: 24 * MIB,
  jsonDepth: 20,
  headerBytes: 16 * KIB,
  /** Of one part of an address, such as a tank's id. */
  addressPartLetters: 200,
  /** From a request's first byte to its last. */
  requestMs: 30 * SECOND_MS,
  /** From a connection's first byte to the end of a request's head: who is slower is cut. */
  headMs: 10 * SECOND_MS,
  /** A connection on which nothing goes either way: longer than a tank takes to be worked out. */
  silenceMs: 210 * SECOND_MS,
  /** A connection kept for a further request. */
  keepAliveMs: 60 * SECOND_MS,
  /** Connections at once. */
  connections: 500,
  /** Writes from one client. */
  writesPerMinute: 120,
  /** Askings of one calendar's address, and of addresses that are none, all together. */
  feedsPerMinute: 20,
  unknownFeedsPerMinute: 60,
  /** One tank worked out: past this it is given up, and its thread ended. */
  answerMs: 180 * SECOND_MS,
  answerHeapMib: 1024,
  /** Answers kept, so that they need not be worked out again. */
  answersKept: 60,
  /** Tanks that wait to be worked out. */
  answersWaiting: 100,
  /** From the word to stop until connections are cut. */
  drainMs: 5 * SECOND_MS,
  tanks: 2000,
} as const;
