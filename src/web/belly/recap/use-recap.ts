import { type RecapPlan, type Spring, recapPlanOf } from '#belly';
import { newtonsPerMillimetre } from '#units';
import { type KeyedRecap, recapInputOf } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useReadingBook } from '../../api/use-readings.ts';
import { useLocale } from '../../language/use-say.ts';
import { scaleOf } from '../../strings/state-scale.ts';
import type { StateBelly } from '../state-belly.ts';
import type { RecapTargets } from './recap-draft.ts';

/** The recapping of a piano: the notes it starts from, and what it asks of each. */
export interface Recap {
  readonly notes: readonly KeyedRecap[];
  readonly plan: RecapPlan;
  /** The board, where its stiffness is stated. */
  readonly spring: Spring | undefined;
  /** Notes with heights that are left out, because no tension is known of them. */
  readonly withoutPull: readonly number[];
}

export function useRecap(found: StateBelly, targets: RecapTargets): Recap {
  const piano = usePiano();
  const locale = useLocale();
  const book = useReadingBook();
  return useMemo(() => {
    const { instrument, cycle, scale: terms } = piano;
    const plannedStrings = scaleOf(piano, 'planned', { book, locale }).analysis.notes;
    const readings = [...book.found.values(), ...book.planned.values()];
    const { notes, withoutPull } = recapInputOf({ material: { instrument, readings, cycle, terms, plannedStrings }, found: found.gathered, targetOf: targets.of });
    const spring = terms?.boardStiffnessNPerMm == null ? undefined : {
      stiffnessNPerMm: newtonsPerMillimetre(terms.boardStiffnessNPerMm),
      stiffnessUncertaintyNPerMm: terms.boardStiffnessUncertaintyNPerMm === null ? undefined : newtonsPerMillimetre(terms.boardStiffnessUncertaintyNPerMm),
    };
    return { notes, withoutPull, spring, plan: recapPlanOf(notes.map(({ note }) => note), spring) };
  }, [piano, locale, book, found, targets]);
}
