import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useLocale } from '../../language/use-say.ts';
import { onKey, useDesk } from '../desk.tsx';
import { readKept, useKept, writeKept } from '../../kept/kept.ts';
import { cellIdOf } from '../sheet/sheet-row.ts';
import { useRows } from '../sheet/use-sheet.ts';
import { type WalkChoice, planOf, usualChoice } from './walk-choice.ts';
import { changePlan, keyAt, keysDone, startWalk, walkStep } from './walk-machine.ts';
import type { WalkContext, WalkEvent, WalkPlan, WalkState } from './walk-state.ts';

/** A walk over the keys of the desk's state. */
export interface Walk {
  readonly choice: WalkChoice;
  readonly choose: (choice: WalkChoice) => void;
  readonly plan: WalkPlan;
  readonly state: WalkState;
  readonly done: number;
  readonly send: (event: WalkEvent) => void;
  readonly context: WalkContext;
}

interface KeptWalk {
  readonly key: number | null;
  readonly draft: string;
  readonly remark: string;
}

/** Runs the walk: what it takes goes to the desk, and where it stands outlives a reload with everything typed. */
export function useWalk(): Walk {
  const { id, compass, cycle } = usePiano();
  const locale = useLocale();
  const { state: of, sheet, session, write } = useDesk();
  const rows = useRows(sheet, of);
  const place = `wrestplank.walk.${id}.${String(cycle)}.${of}`;
  const [choice, choose] = useKept<WalkChoice>(`${place}.choice`, usualChoice);
  const repeats = session.current?.repeats ?? 1;
  const plan = useMemo(() => planOf(choice, compass, repeats, locale), [choice, compass, repeats, locale]);
  const context = useMemo((): WalkContext => ({ plan, standing: (key, slot) => sheet.row(of, key).cells.get(cellIdOf(slot.quantity, slot.repeat))?.reading }), [plan, sheet, of]);
  const [state, setState] = useState<WalkState>(() => resume(context, readKept<KeptWalk | null>(sessionStorage, place, null)));
  const now = useRef({ state, plan });

  const show = useCallback(
    (next: WalkState): void => {
      now.current = { ...now.current, state: next };
      writeKept(sessionStorage, place, { key: keyAt(next, now.current.plan) ?? null, draft: next.draft, remark: next.remark } satisfies KeptWalk);
      setState(next);
    },
    [place],
  );
  useEffect(() => {
    if (now.current.plan === plan) return;
    const carried = changePlan(now.current.state, now.current.plan, context);
    now.current = { state: carried, plan };
    show(carried);
  }, [plan, context, show]);
  const send = useCallback(
    (event: WalkEvent): void => {
      const step = walkStep(now.current.state, event, context);
      show(step.state);
      write(step.writes.map(({ slot, ...rest }) => onKey({ ...rest, ...slot })));
    },
    [context, show, write],
  );
  // eslint-disable-next-line react-hooks/exhaustive-deps -- the rows are what the context reads through the sheet
  const done = useMemo(() => keysDone(context), [context, rows]);
  return { choice, choose, plan, state, done, send, context };
}

/** The walk where it was left, with what was typed and not yet taken. */
function resume(context: WalkContext, kept: KeptWalk | null): WalkState {
  const fresh = startWalk(context);
  if (kept === null) return fresh;
  const there = kept.key === null ? fresh : walkStep(fresh, { type: 'goTo', key: kept.key }, context).state;
  return { ...there, draft: kept.draft, remark: kept.remark };
}
