import { useMemo, useRef } from 'react';
import { type Command, useCommands } from '../../commands/registry.ts';

/** What the plan can be told to do. */
export interface PlanDoings {
  readonly canWrite: boolean;
  readonly canKeep: boolean;
  readonly isTried: boolean;
  readonly onTerms: () => void;
  readonly onKeep: () => void;
  readonly onDrop: () => void;
  readonly onChoose: () => void;
}

/** Registers the commands of the plan; they read what stands on it when they are told. */
export function usePlanCommands(doings: PlanDoings): void {
  const latest = useRef(doings);
  latest.current = doings;
  const commands = useMemo((): readonly Command[] => {
    const group = 'command.group.action';
    return [
      { id: 'plan.terms', label: 'command.plan.terms', group, perform: () => { latest.current.onTerms(); }, when: () => latest.current.canWrite },
      { id: 'plan.keep', label: 'command.plan.keep', group, perform: () => { latest.current.onKeep(); }, when: () => latest.current.canWrite && latest.current.canKeep },
      { id: 'plan.drop', label: 'command.plan.drop', group, perform: () => { latest.current.onDrop(); }, when: () => latest.current.isTried },
      { id: 'plan.choose', label: 'command.action.choose', group, shortcut: 'k', perform: () => { latest.current.onChoose(); } },
    ];
  }, []);
  useCommands(commands);
}
