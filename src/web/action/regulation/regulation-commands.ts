import { type State, states } from '#instrument';
import type { KeyNumber } from '#instrument';
import type { MessageKey } from '#text';
import { useMemo, useRef } from 'react';
import { type Command, useCommands } from '../../commands/registry.ts';

/** What a view of keys with findings can be told to do. */
export interface FindingDoings {
  /** Keys with something found, bass to treble. */
  readonly found: readonly KeyNumber[];
  readonly selected: KeyNumber | undefined;
  readonly canWrite: boolean;
  readonly onKey: (key: KeyNumber) => void;
  readonly onChoose: () => void;
  readonly onTerms: () => void;
  readonly onState: (state: State) => void;
  /** Opens the sheet to print, where there is one. */
  readonly onSheet?: () => void;
}

/** The next key of a list, round its ends. */
export function keyAfter(found: readonly KeyNumber[], from: KeyNumber | undefined, direction: 1 | -1): KeyNumber | undefined {
  if (direction === 1) return found.find((key) => key > (from ?? 0)) ?? found[0];
  return found.findLast((key) => key < (from ?? Number.POSITIVE_INFINITY)) ?? found.at(-1);
}

/** Registers the commands of the views of regulation and hammers; they read what stands on the page when they are told. */
export function useFindingCommands(name: string, terms: MessageKey, doings: FindingDoings): void {
  const latest = useRef(doings);
  latest.current = doings;
  const commands = useMemo((): readonly Command[] => {
    const now = (): FindingDoings => latest.current;
    const walk = (direction: 1 | -1) => (): void => {
      const key = keyAfter(now().found, now().selected, direction);
      if (key !== undefined) now().onKey(key);
    };
    const group = 'command.group.action';
    const hasFound = (): boolean => now().found.length > 0;
    return [
      { id: `${name}.next`, label: 'command.regulation.next', group, shortcut: 'n', perform: walk(1), when: hasFound },
      { id: `${name}.previous`, label: 'command.regulation.previous', group, shortcut: 'shift+n', perform: walk(-1), when: hasFound },
      { id: `${name}.choose`, label: 'command.action.choose', group, shortcut: 'k', perform: () => { now().onChoose(); } },
      { id: `${name}.terms`, label: terms, group, perform: () => { now().onTerms(); }, when: () => now().canWrite },
      { id: `${name}.sheet`, label: 'command.regulation.sheet', group, perform: () => { now().onSheet?.(); }, when: () => now().onSheet !== undefined },
      ...states.map((state): Command => ({ id: `${name}.show.${state}`, label: `command.action.show.${state}`, group, perform: () => { now().onState(state); } })),
    ];
  }, [name, terms]);
  useCommands(commands);
}
