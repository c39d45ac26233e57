import type { KeyNumber, QuantityName } from '#instrument';
import { useCallback, useMemo } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useEnter, useReadings } from '../api/use-readings.ts';
import { useKept } from '../kept/kept.ts';
import { useLocale } from '../language/use-say.ts';
import { type Trial, entriesOf, misread, tried, untried } from './trial.ts';

/** Sizes being tried, and what can be done with them. They outlive a reload and write nothing until they are kept. */
export interface TrialDesk {
  readonly trial: Trial;
  readonly isEmpty: boolean;
  /** True while a typed size cannot be understood: it is put right before anything is kept. */
  readonly isMisread: boolean;
  readonly set: (key: KeyNumber, quantity: QuantityName, text: string, standing: Readonly<Partial<Record<QuantityName, string>>>) => void;
  /** Lays sizes of whole notes over what is tried. */
  readonly lay: (notes: Trial) => void;
  readonly drop: (key?: KeyNumber) => void;
  /** Writes sizes as planned at once, as one step, without trying them first. */
  readonly plan: (notes: Trial) => void;
  /** Writes everything tried as planned, as one step to be undone as one. */
  readonly keep: () => void;
}

const NOTHING: Trial = {};

export function useTrial(): TrialDesk {
  const { id, cycle } = usePiano();
  const locale = useLocale();
  const [trial, setTrial] = useKept<Trial>(`wrestplank.trial.${id}.${String(cycle)}`, NOTHING);
  const planned = useReadings('planned');
  const enter = useEnter();
  const set = useCallback<TrialDesk['set']>((key, quantity, text, standing) => { setTrial(tried(trial, { key, quantity, text, standing })); }, [setTrial, trial]);
  const drop = useCallback((key?: KeyNumber): void => { setTrial(key === undefined ? NOTHING : untried(trial, key)); }, [setTrial, trial]);
  const lay = useCallback((notes: Trial): void => { setTrial({ ...trial, ...notes }); }, [setTrial, trial]);
  const plan = useCallback((notes: Trial): void => {
    const entries = entriesOf(notes, planned.values());
    if (entries.length > 0) enter({ state: 'planned', sessionId: null }, entries);
  }, [enter, planned]);
  const keep = useCallback((): void => {
    plan(trial);
    setTrial(NOTHING);
  }, [plan, setTrial, trial]);
  return useMemo(() => ({ trial, isEmpty: Object.keys(trial).length === 0, isMisread: misread(trial, locale).length > 0, set, lay, drop, plan, keep }), [trial, locale, set, lay, drop, plan, keep]);
}
