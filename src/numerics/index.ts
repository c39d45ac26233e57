export { solveSymmetricBanded } from './banded.ts';
export { carriedUncertaintiesOf } from './carry.ts';
export type { SymmetricBands } from './banded.ts';
export { noneDrawnProbability } from './hypergeometric.ts';
export { meanOf, medianOf, scaledMadOf, standardDeviationOf, sumOf } from './statistics.ts';
export { whittakerSmooth } from './whittaker.ts';
