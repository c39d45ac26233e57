import { type TouchAnalysis, isAdvice } from '#action';
import { type KeyNumber, type State, states } from '#instrument';
import { useMemo, useRef } from 'react';
import { type Command, useCommands } from '../commands/registry.ts';

/** What the Action page can be told to do. */
export interface ActionDoings {
  readonly analysis: TouchAnalysis | undefined;
  readonly measured: readonly State[];
  readonly selected: KeyNumber | undefined;
  readonly canAsk: boolean;
  readonly onKey: (key: KeyNumber) => void;
  readonly onChoose: () => void;
  readonly onAsk: () => void;
  readonly onState: (state: State) => void;
}

/** The next key with something to act on, up or down from a key, round the ends of the keyboard. */
export function keyWithFinding({ keys }: TouchAnalysis, from: KeyNumber | undefined, direction: 1 | -1): KeyNumber | undefined {
  const found = keys.filter(({ findings }) => findings.some((finding) => !finding.withinUncertainty && !isAdvice(finding))).map(({ key }) => key);
  if (direction === 1) return found.find((key) => key > (from ?? 0)) ?? found[0];
  return found.findLast((key) => key < (from ?? Number.POSITIVE_INFINITY)) ?? found.at(-1);
}

/** Registers the commands of the Action page; they read what stands on it when they are told. */
export function useActionCommands(doings: ActionDoings): void {
  const latest = useRef(doings);
  latest.current = doings;
  const commands = useMemo((): readonly Command[] => {
    const now = (): ActionDoings => latest.current;
    const walk = (direction: 1 | -1) => (): void => {
      const { analysis, selected, onKey } = now();
      const key = analysis === undefined ? undefined : keyWithFinding(analysis, selected, direction);
      if (key !== undefined) onKey(key);
    };
    const hasFinding = (): boolean => {
      const { analysis } = now();
      return analysis !== undefined && keyWithFinding(analysis, undefined, 1) !== undefined;
    };
    const group = 'command.group.action';
    return [
      { id: 'action.next', label: 'command.action.next', group, shortcut: 'n', perform: walk(1), when: hasFinding },
      { id: 'action.previous', label: 'command.action.previous', group, shortcut: 'shift+n', perform: walk(-1), when: hasFinding },
      { id: 'action.choose', label: 'command.action.choose', group, shortcut: 'k', perform: () => { now().onChoose(); }, when: () => now().analysis !== undefined },
      { id: 'action.intent', label: 'command.action.intent', group, perform: () => { now().onAsk(); }, when: () => now().canAsk },
      ...states.map((state): Command => ({ id: `action.show.${state}`, label: `command.action.show.${state}`, group, perform: () => { now().onState(state); }, when: () => now().measured.includes(state) })),
    ];
  }, []);
  useCommands(commands);
}
