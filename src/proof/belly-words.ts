import { compassOf, noteNameOf } from '#instrument';
import type { TableBlock } from '#report';
import type { ProofInput, ProvedBelly } from './input.ts';

/** The first column and one for each state. */
export function stateColumns(label: string, bellies: readonly ProvedBelly[], { say }: ProofInput): TableBlock['columns'] {
  return [{ label, align: 'start', width: 3 }, ...bellies.map(({ state }) => ({ label: say(`proof.state.${state}`), align: 'start', width: 3.6 } as const))];
}

/** Name and keys of a section. */
export function sectionWords({ name, firstKey, lastKey }: { readonly name: string; readonly firstKey: number; readonly lastKey: number }, { instrument }: ProofInput): string {
  return `${name} ${noteNameOf(compassOf(instrument), firstKey)}–${noteNameOf(compassOf(instrument), lastKey)}`;
}
