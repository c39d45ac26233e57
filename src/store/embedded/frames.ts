/** The first message of a session has no type byte: four bytes of length, then the protocol version. */
const HEAD = { startup: 4, later: 5 } as const;

/** Cuts a stream of bytes into whole messages of the PostgreSQL wire protocol, since the engine takes no part ones. */
export class Frames {
  #held: Uint8Array = new Uint8Array(0);
  #started = false;

  /** Forgets what came so far: a new session begins. */
  reset(): void {
    this.#held = new Uint8Array(0);
    this.#started = false;
  }

  /** The whole messages that are there with these bytes; a part one is held until its rest comes. */
  take(bytes: Uint8Array): readonly Uint8Array[] {
    this.#held = this.#held.length === 0 ? bytes : joined([this.#held, bytes]);
    const whole: Uint8Array[] = [];
    for (let length = this.#next(); length > 0; length = this.#next()) {
      whole.push(this.#held.subarray(0, length));
      this.#held = this.#held.subarray(length);
      this.#started = true;
    }
    return whole;
  }

  #next(): number {
    const head = this.#started ? HEAD.later : HEAD.startup;
    if (this.#held.length < head) return 0;
    const view = new DataView(this.#held.buffer, this.#held.byteOffset);
    const length = this.#started ? 1 + view.getUint32(1) : view.getUint32(0);
    return this.#held.length < length ? 0 : length;
  }
}

/** Several pieces as one. */
export function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
