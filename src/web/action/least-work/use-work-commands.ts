import type { KeyNumber } from '#instrument';
import { useMemo, useRef } from 'react';
import { type Command, useCommands } from '../../commands/registry.ts';
import { keyAfter } from '../regulation/regulation-commands.ts';

/** What the least work can be told to do. */
export interface WorkDoings {
  /** Keys with work planned or out of reach, bass to treble. */
  readonly worked: readonly KeyNumber[];
  readonly selected: KeyNumber | undefined;
  readonly canWrite: boolean;
  readonly canTake: boolean;
  readonly onKey: (key: KeyNumber) => void;
  readonly onChoose: () => void;
  readonly onTerms: () => void;
  readonly onTake: () => void;
}

/** Registers the commands of the least work; they read what stands on the page when they are told. */
export function useWorkCommands(doings: WorkDoings): void {
  const latest = useRef(doings);
  latest.current = doings;
  const commands = useMemo((): readonly Command[] => {
    const now = (): WorkDoings => latest.current;
    const walk = (direction: 1 | -1) => (): void => {
      const key = keyAfter(now().worked, now().selected, direction);
      if (key !== undefined) now().onKey(key);
    };
    const group = 'command.group.action';
    const hasWork = (): boolean => now().worked.length > 0;
    return [
      { id: 'leastWork.next', label: 'command.leastWork.next', group, shortcut: 'n', perform: walk(1), when: hasWork },
      { id: 'leastWork.previous', label: 'command.leastWork.previous', group, shortcut: 'shift+n', perform: walk(-1), when: hasWork },
      { id: 'leastWork.choose', label: 'command.action.choose', group, shortcut: 'k', perform: () => { now().onChoose(); } },
      { id: 'leastWork.terms', label: 'command.leastWork.terms', group, perform: () => { now().onTerms(); }, when: () => now().canWrite },
      { id: 'leastWork.take', label: 'command.leastWork.take', group, perform: () => { now().onTake(); }, when: () => now().canTake },
    ];
  }, []);
  useCommands(commands);
}
