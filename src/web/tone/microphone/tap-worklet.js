/* Runs in the thread of the sound card: hands on what the microphone takes, sample by sample, in pieces of 2048. */
const PIECE_FRAMES = 2048;

class Tap extends AudioWorkletProcessor {
  constructor() {
    super();
    this.filled = 0;
    this.piece = undefined;
  }

  process([input]) {
    const frames = input?.[0]?.length ?? 0;
    if (frames === 0) return true;
    if (this.piece?.length !== input.length) {
      this.piece = input.map(() => new Float32Array(PIECE_FRAMES));
      this.filled = 0;
    }
    input.forEach((channel, index) => { this.piece[index].set(channel, this.filled); });
    this.filled += frames;
    if (this.filled < PIECE_FRAMES) return true;
    this.port.postMessage(this.piece, this.piece.map(({ buffer }) => buffer));
    this.piece = undefined;
    return true;
  }
}

registerProcessor('tap', Tap);
