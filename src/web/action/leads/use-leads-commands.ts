import { useMemo, useRef } from 'react';
import { type Command, useCommands } from '../../commands/registry.ts';

/** What the page of the leads can be told to do. */
interface LeadsDoings {
  readonly canRun: boolean;
  readonly canWrite: boolean;
  readonly hasResult: boolean;
  readonly onRun: () => void;
  readonly onTerms: () => void;
  readonly onChoose: () => void;
}

/** Registers what can be called by name while the leads are looked at; it reads what stands there when it is told. */
export function useLeadsCommands(doings: LeadsDoings): void {
  const latest = useRef(doings);
  latest.current = doings;
  const commands = useMemo((): readonly Command[] => {
    const group = 'command.group.action';
    return [
      { id: 'leads.run', label: 'leads.run', group, perform: () => { latest.current.onRun(); }, when: () => latest.current.canRun },
      { id: 'leads.terms', label: 'leads.terms.change', group, perform: () => { latest.current.onTerms(); }, when: () => latest.current.canWrite },
      { id: 'action.choose', label: 'command.action.choose', group, shortcut: 'k', perform: () => { latest.current.onChoose(); }, when: () => latest.current.hasResult },
    ];
  }, []);
  useCommands(commands);
}
