import type { Result } from '#result';
import { type KeyChange, toneChangeOf } from '#tone';
import { type StateTone, type WorkedSound, comparedStateOf, standOutsOf, stateTonesOf } from '#workshop';
import type { ProvedSound, ProvedTone } from './input.ts';

/** The sound of both states, as far as any note was heard; nothing where none was. */
export function toneOfMaterial(sounds: readonly WorkedSound[], cycle: number): ProvedTone | undefined {
  const states = stateTonesOf(sounds.filter(({ recording }) => recording.cycle === cycle))
    .flatMap((tone): readonly ProvedSound[] => (tone.state === 'planned' ? [] : [{ ...tone, state: tone.state, standOuts: standOutsOf(tone) }]));
  const [before, after] = states;
  if (before === undefined) return undefined;
  if (after === undefined) return { states };
  const changes = changesOf(before, after);
  return { states, changes: changes.ok ? changes.value : 'moved' };
}

function changesOf(before: StateTone, after: StateTone): Result<readonly KeyChange[]> | { readonly ok: false } {
  const [was, is] = [comparedStateOf(before), comparedStateOf(after)];
  return was === undefined || is === undefined ? { ok: false } : toneChangeOf(was, is);
}
