export type { ProofInput, ProofInstrument, ProofSession, ProvedScale } from './input.ts';
export { proofInputOf } from './material.ts';
export type { ProofMaterial } from './material.ts';
export { buildProof } from './proof.ts';
