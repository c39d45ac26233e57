import type { BellyAnalysis } from '#belly';
import { type KeyNumber, type State, states } from '#instrument';
import { useMemo, useRef } from 'react';
import { type Command, useCommands } from '../commands/registry.ts';
import type { StateBelly } from './state-belly.ts';

/** What the Belly page can be told to show. */
export const bellyViews = ['bearing', 'heights', 'recap', 'seen'] as const;
export type BellyView = (typeof bellyViews)[number];

/** What the Belly page can be told to do. */
export interface BellyDoings {
  readonly belly: StateBelly | undefined;
  readonly selected: KeyNumber | undefined;
  readonly canWrite: boolean;
  readonly onKey: (key: KeyNumber) => void;
  readonly onChoose: () => void;
  readonly onTerms: () => void;
  readonly onState: (state: State) => void;
  readonly onView: (view: BellyView) => void;
}

/** The next note of which something is found, round the ends of the keyboard. */
export function bearingToLookAt({ notes }: BellyAnalysis, from: KeyNumber | undefined, direction: 1 | -1): KeyNumber | undefined {
  const found = notes.filter(({ findings }) => findings.length > 0).map(({ key }) => key);
  if (direction === 1) return found.find((key) => key > (from ?? 0)) ?? found[0];
  return found.findLast((key) => key < (from ?? Number.POSITIVE_INFINITY)) ?? found.at(-1);
}

/** Registers the commands of the Belly page; they read what stands on it when they are told. */
export function useBellyCommands(doings: BellyDoings): void {
  const latest = useRef(doings);
  latest.current = doings;
  const commands = useMemo((): readonly Command[] => {
    const now = (): BellyDoings => latest.current;
    const next = (direction: 1 | -1): KeyNumber | undefined => {
      const { belly, selected } = now();
      return belly === undefined ? undefined : bearingToLookAt(belly.analysis, selected, direction);
    };
    const walk = (direction: 1 | -1) => (): void => {
      const key = next(direction);
      if (key !== undefined) now().onKey(key);
    };
    const group = 'command.group.belly';
    const viewKeys: Readonly<Record<BellyView, string>> = { bearing: 'v b', heights: 'v h', recap: 'v r', seen: 'v s' };
    return [
      { id: 'belly.next', label: 'command.belly.next', group, shortcut: 'n', perform: walk(1), when: () => next(1) !== undefined },
      { id: 'belly.previous', label: 'command.belly.previous', group, shortcut: 'shift+n', perform: walk(-1), when: () => next(1) !== undefined },
      { id: 'belly.choose', label: 'command.action.choose', group, shortcut: 'k', perform: () => { now().onChoose(); }, when: () => now().belly !== undefined },
      ...bellyViews.map((view): Command => ({ id: `belly.view.${view}`, label: `command.belly.view.${view}`, group, shortcut: viewKeys[view], perform: () => { now().onView(view); } })),
      { id: 'belly.terms', label: 'command.belly.terms', group, perform: () => { now().onTerms(); }, when: () => now().canWrite },
      ...states.map((state): Command => ({ id: `belly.show.${state}`, label: `command.belly.show.${state}`, group, perform: () => { now().onState(state); } })),
    ];
  }, []);
  useCommands(commands);
}
