/** Reasons for not doing what a request asks, each with its status and its words; failures.ts tells them. */

/** Not answered because of who asks, or from where. */
export class RefusedRequest extends Error {
  readonly status: number;
  constructor(status: number, words: string) {
    super(words);
    this.status = status;
  }
}

export class TooMany extends Error {
  readonly status = 429;
  readonly waitSeconds: number;
  constructor(waitSeconds: number, most: number, what: string) {
    const wait = waitSeconds === 1 ? "1 second" : `${waitSeconds} seconds`;
    super(`More than ${most} ${what} in a minute. Wait ${wait}, then send it again; what you typed is kept.`);
    this.waitSeconds = waitSeconds;
  }
}
