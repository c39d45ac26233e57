import { type PlanFigures, type PlanShifts, type PlannedKey, type TouchAnalysis, NO_SHIFTS, leastArmOf, planTouch } from '#action';
import type { Reading } from '#instrument';
import { type GatheredPlan, shiftsOf, touchPlanInputOf } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useReadings } from '../../api/use-readings.ts';
import { touchOf } from '../../api/use-touch.ts';
import { useKept } from '../../kept/kept.ts';
import { useLocale } from '../../language/use-say.ts';
import { type ReadShifts, type ShiftDraft, readShifts, shiftDraftOf } from './shift-draft.ts';

/** The plan of every key, with what is tried on it. */
export interface Plan {
  readonly gathered: GatheredPlan;
  readonly shifts: PlanShifts;
  readonly keys: readonly PlannedKey[];
  /** The touch as found, and the readings it rests on. */
  readonly touch: TouchAnalysis;
  readonly readings: readonly Reading[];
  /** The same keys with nothing shifted. */
  readonly unshifted: ReadonlyMap<number, PlanFigures>;
  /** True where a shift leaves no arm: then nothing is planned. */
  readonly isPastCentre: boolean;
}

/** What is tried, as typed, and what it says. */
export interface ShiftDesk {
  readonly draft: ShiftDraft;
  readonly read: ReadShifts;
  readonly set: (draft: ShiftDraft) => void;
  /** Goes back to what the terms state. */
  readonly drop: () => void;
  readonly isChanged: boolean;
}

/** Shifts being tried: they outlive a reload and write nothing until they are stated. */
export function useShifts(): ShiftDesk {
  const { id, cycle, action } = usePiano();
  const locale = useLocale();
  const stated = useMemo(() => shiftDraftOf(action, locale), [action, locale]);
  const [typed, setTyped] = useKept<ShiftDraft | null>(`wrestplank.shifts.${id}.${String(cycle)}`, null);
  const draft = typed ?? stated;
  const read = useMemo(() => readShifts(draft, locale), [draft, locale]);
  return { draft, read, set: setTyped, drop: () => { setTyped(null); }, isChanged: JSON.stringify(draft) !== JSON.stringify(stated) };
}

/** The plan: gathered when readings or terms change, worked out at each keystroke of what is tried. `undefined` until it was said what is to be even. */
export function usePlan({ terms: tried }: ReadShifts): Plan | undefined {
  const piano = usePiano();
  const readings = useReadings('found');
  const { instrument, cycle, intent, action } = piano;
  const gathered = useMemo(
    () => {
      if (intent === null) return undefined;
      const [list, touch] = [[...readings.values()], touchOf(piano, 'found', readings)];
      return { plan: touchPlanInputOf({ instrument, readings: list, cycle, intent, terms: action, touch }), touch, readings: list };
    },
    [instrument, readings, cycle, intent, action, piano],
  );
  const shifts = useMemo(() => shiftsOf({ ...tried, woodGPerMm3: action?.woodGPerMm3 ?? null }), [tried, action]);
  const unshifted = useMemo(() => new Map((gathered === undefined ? [] : planTouch(gathered.plan.keys, NO_SHIFTS)).map(({ plan: { key }, figures }) => [key, figures])), [gathered]);
  return useMemo(() => {
    if (gathered === undefined) return undefined;
    const { plan, touch, readings: list } = gathered;
    const isPastCentre = plan.keys.some(({ levers }) => leastArmOf(levers, shifts) <= 0);
    return { gathered: plan, touch, readings: list, shifts, unshifted, isPastCentre, keys: isPastCentre ? [] : planTouch(plan.keys, shifts) };
  }, [gathered, shifts, unshifted]);
}
