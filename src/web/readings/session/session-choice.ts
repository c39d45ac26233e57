import type { State, WeighingSession } from '#instrument';
import { useCallback, useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { readKept, writeKept } from '../../kept/kept.ts';

/** Which weighing session new figures of a state belong to. */
export interface SessionChoice {
  /** Sessions of this state, oldest first. */
  readonly sessions: readonly WeighingSession[];
  /** Null when figures go without: how they were weighed is then not stated. */
  readonly current: WeighingSession | null;
  /** False until a session was opened, chosen or declined: until then weights are held. */
  readonly decided: boolean;
  /** Takes the answer; figures held for it go out with it. */
  readonly choose: (id: string | null) => void;
}

const NO_SESSION = 'none';

/** The choice is kept on this device by piano, stay and state; the newest session counts until another is chosen. */
export function useSessionChoice(state: State): SessionChoice {
  const { id, cycle, sessions: all } = usePiano();
  const key = `wrestplank.session.${id}.${String(cycle)}.${state}`;
  const [chosen, setChosen] = useState<{ readonly key: string; readonly id: string | null }>({ key: '', id: null });
  const wanted = chosen.key === key ? chosen.id : readKept<string | null>(localStorage, key, null);
  const sessions = useMemo(() => all.filter((session) => session.state === state), [all, state]);
  const choose = useCallback(
    (sessionId: string | null): void => {
      writeKept(localStorage, key, sessionId ?? NO_SESSION);
      setChosen({ key, id: sessionId ?? NO_SESSION });
    },
    [key],
  );
  return useMemo(() => {
    const named = sessions.find((session) => session.id === wanted);
    const current = wanted === NO_SESSION ? null : (named ?? sessions.at(-1) ?? null);
    return { sessions, current, decided: current !== null || wanted === NO_SESSION, choose };
  }, [sessions, wanted, choose]);
}
