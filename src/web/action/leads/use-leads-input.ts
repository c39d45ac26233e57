import { useMemo } from 'react';
import type { Reading } from '#instrument';
import { type GatheredLeads, keyLeadsInputOf } from '#workshop';
import { usePiano } from '../../api/piano.tsx';
import { useReadings } from '../../api/use-readings.ts';
import { useTouch } from '../../api/use-touch.ts';

/** What the leads of this piano are worked out from, and the readings it was gathered from. */
export function useLeadsInput(): { readonly gathered: GatheredLeads; readonly readings: readonly Reading[] } {
  const { instrument, cycle, intent, action } = usePiano();
  const [found, planned] = [useReadings('found'), useReadings('planned')];
  const touch = useTouch('found');
  return useMemo(() => {
    const readings = [...found.values(), ...planned.values()];
    return { readings, gathered: keyLeadsInputOf({ instrument, readings, cycle, intent, terms: action, touch }) };
  }, [instrument, cycle, intent, action, found, planned, touch]);
}
