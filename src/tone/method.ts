/** Version of the method behind every figure of a recording: it rises whenever the same recording could give another figure. */
export const TONE_METHOD = 2;
