export { solveSymmetricBanded } from './banded.ts';
export { carriedUncertaintiesOf } from './carry.ts';
export type { SymmetricBands } from './banded.ts';
export { powerOfTwoFrom, realSpectrumOf, signalOf, spectrumOf } from './fourier.ts';
export type { ComplexList } from './fourier.ts';
export { noneDrawnProbability } from './hypergeometric.ts';
export type { Samples } from './samples.ts';
export { meanOf, medianOf, scaledMadOf, standardDeviationOf, sumOf } from './statistics.ts';
export { whittakerSmooth } from './whittaker.ts';
