import type { FigureStory } from '../../figure/figure-store.ts';
import type { Recap } from './use-recap.ts';

/** How the height a note’s bridge is to have under load was made. */
export function loadedStory(title: string, { notes }: Recap, index: number): FigureStory {
  const { now: _, unloadedNowMm: __, doubt, ...note } = notes[index]?.note ?? {};
  return { title, operation: 'bearing-recap', output: 'bridgeHeightMm', input: { ...note, ...doubt } };
}

/** How the heights to cut to were made: all notes at once, since the board goes down under all of them. */
export function slackStory(title: string, { notes, spring }: Recap): FigureStory {
  return {
    title, operation: 'bearing-plan', output: 'unloadedHeightsMm',
    input: { notes: notes.map(({ note: { now: _, unloadedNowMm: __, doubt: ___, bridgeHeightMm: ____, ...note } }) => note), stiffnessNPerMm: spring?.stiffnessNPerMm },
  };
}

/** How the angle left without cutting was made: the slack bridge under the strings to come. */
export function uncutStory(title: string, { notes, plan, spring }: Recap): FigureStory {
  return {
    title, operation: 'bearing-settle', output: 'totalsDeg',
    input: {
      notes: notes.map(({ note: { now: _, unloadedNowMm: __, doubt: ___, targetTotalDeg: ____, ...note } }, index) => ({ ...note, bridgeHeightMm: plan.rows[index]?.slack?.nowMm ?? note.bridgeHeightMm })),
      stiffnessNPerMm: spring?.stiffnessNPerMm,
    },
  };
}
