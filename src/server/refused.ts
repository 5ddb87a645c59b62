/** Reasons for not doing what a request asks, each with its status and its words; failures.ts tells them. */
import { counted } from "../answers/words.ts";

/** Not answered because of who asks, or from where. */
export class RefusedRequest extends Error {
  readonly status: number;
  constructor(status: number, words: string) {
    super(words);
    this.status = status;
  }
}

const changes = (wait: string, most: number): string =>
  `More than ${most} changes in a minute. Wait ${wait}, then send it again; what you typed is kept.`;

export class TooMany extends Error {
  readonly waitSeconds: number;
  constructor(waitSeconds: number, most: number, words = changes) {
    super(words(counted(waitSeconds, "second"), most));
    this.waitSeconds = waitSeconds;
  }
}
