import { type PlanFigures, type PlanShifts, type PlannedKey, NO_SHIFTS, leastArmOf, planTouch } from '#action';
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
    () => (intent === null ? undefined : touchPlanInputOf({ instrument, readings: [...readings.values()], cycle, intent, terms: action, touch: touchOf(piano, 'found', readings) })),
    [instrument, readings, cycle, intent, action, piano],
  );
  const shifts = useMemo(() => shiftsOf({ ...tried, woodGPerMm3: action?.woodGPerMm3 ?? null }), [tried, action]);
  const unshifted = useMemo(() => new Map((gathered === undefined ? [] : planTouch(gathered.keys, NO_SHIFTS)).map(({ plan: { key }, figures }) => [key, figures])), [gathered]);
  return useMemo(() => {
    if (gathered === undefined) return undefined;
    const isPastCentre = gathered.keys.some(({ levers }) => leastArmOf(levers, shifts) <= 0);
    return { gathered, shifts, unshifted, isPastCentre, keys: isPastCentre ? [] : planTouch(gathered.keys, shifts) };
  }, [gathered, shifts, unshifted]);
}
