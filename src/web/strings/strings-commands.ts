import { type KeyNumber, type State, states } from '#instrument';
import type { AnalysedNote, ScaleAnalysis } from '#strings';
import { useMemo, useRef } from 'react';
import { type Command, useCommands } from '../commands/registry.ts';
import type { StateScale } from './state-scale.ts';
import type { TrialDesk } from './use-trial.ts';

/** What the Strings page can be told to do. */
export interface StringsDoings {
  readonly scale: StateScale | undefined;
  readonly selected: KeyNumber | undefined;
  readonly trial: TrialDesk;
  readonly canWrite: boolean;
  readonly onKey: (key: KeyNumber) => void;
  readonly onChoose: () => void;
  readonly onTerms: () => void;
  readonly onState: (state: State) => void;
  readonly onView: () => void;
  readonly onRescale: () => void;
}

const callsFor = ({ fault, issues, verdict }: AnalysedNote): boolean => fault !== undefined || issues.length > 0 || (verdict !== undefined && verdict.side !== 'within');

/** The next note outside what is asked, or whose sizes make no string, round the ends of the keyboard. */
export function keyToLookAt({ notes }: ScaleAnalysis, from: KeyNumber | undefined, direction: 1 | -1): KeyNumber | undefined {
  const found = notes.filter(callsFor).map(({ key }) => key);
  if (direction === 1) return found.find((key) => key > (from ?? 0)) ?? found[0];
  return found.findLast((key) => key < (from ?? Number.POSITIVE_INFINITY)) ?? found.at(-1);
}

/** Registers the commands of the Strings page; they read what stands on it when they are told. */
export function useStringsCommands(doings: StringsDoings): void {
  const latest = useRef(doings);
  latest.current = doings;
  const commands = useMemo((): readonly Command[] => {
    const now = (): StringsDoings => latest.current;
    const next = (direction: 1 | -1): KeyNumber | undefined => {
      const { scale, selected } = now();
      return scale === undefined ? undefined : keyToLookAt(scale.analysis, selected, direction);
    };
    const walk = (direction: 1 | -1) => (): void => {
      const key = next(direction);
      if (key !== undefined) now().onKey(key);
    };
    const group = 'command.group.strings';
    const isTrying = (): boolean => now().canWrite && !now().trial.isEmpty;
    return [
      { id: 'strings.next', label: 'command.strings.next', group, shortcut: 'n', perform: walk(1), when: () => next(1) !== undefined },
      { id: 'strings.previous', label: 'command.strings.previous', group, shortcut: 'shift+n', perform: walk(-1), when: () => next(1) !== undefined },
      { id: 'strings.choose', label: 'command.action.choose', group, shortcut: 'k', perform: () => { now().onChoose(); }, when: () => now().scale !== undefined },
      { id: 'strings.view', label: 'command.strings.view', group, shortcut: 'v', perform: () => { now().onView(); } },
      { id: 'strings.rescale', label: 'command.strings.rescale', group, perform: () => { now().onRescale(); }, when: () => now().scale !== undefined },
      { id: 'strings.terms', label: 'command.strings.terms', group, perform: () => { now().onTerms(); }, when: () => now().canWrite },
      { id: 'strings.keep', label: 'command.strings.keep', group, perform: () => { now().trial.keep(); }, when: () => isTrying() && !now().trial.isMisread },
      { id: 'strings.drop', label: 'command.strings.drop', group, perform: () => { now().trial.drop(); }, when: isTrying },
      ...states.map((state): Command => ({ id: `strings.show.${state}`, label: `command.strings.show.${state}`, group, perform: () => { now().onState(state); } })),
    ];
  }, []);
  useCommands(commands);
}
