export { demoProof } from './demo-proof.ts';
export type { ProofInput, ProofInstrument, ProofSession, ProvedBelly, ProvedScale } from './input.ts';
export { provedParts } from './input.ts';
export { hasAnythingToProve, proofInputOf } from './material.ts';
export type { ProofMaterial } from './material.ts';
export { buildProof } from './proof.ts';
