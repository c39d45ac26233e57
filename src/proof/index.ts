export type { ProofInput, ProofInstrument, ProofSession } from './input.ts';
export { buildProof } from './proof.ts';
