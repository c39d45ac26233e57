export { meanOf, medianOf, scaledMadOf, standardDeviationOf, sumOf } from './statistics.ts';
