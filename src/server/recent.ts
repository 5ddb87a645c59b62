/** A map that keeps the values asked for most lately, at most so many. */
export class Recent<Value> {
  readonly #most: number;
  readonly #values = new Map<string, Value>();

  constructor(most: number) {
    this.#most = most;
  }

  has(key: string): boolean {
    return this.#values.has(key);
  }

  get(key: string): Value | undefined {
    const value = this.#values.get(key);
    if (value !== undefined) this.set(key, value);
    return value;
  }

  set(key: string, value: Value): void {
    // A map keeps the order of entry: the oldest is the first.
    this.#values.delete(key);
    this.#values.set(key, value);
    for (const oldest of this.#values.keys()) {
      if (this.#values.size <= this.#most) break;
      this.#values.delete(oldest);
    }
  }
}
