import type { TouchAnalysis } from '#action';
import { type State, noteNameOf } from '#instrument';
import type { FigureName } from '#report';
import { evennessStory, touchWeightStory } from '../action/stories.ts';
import type { Piano } from '../api/piano.tsx';
import type { ReadingBook } from '../api/reading-book.ts';
import { bearingStory, isBearingOutput } from '../belly/bearing-stories.ts';
import { bellyOf } from '../belly/state-belly.ts';
import type { FigureStory } from '../figure/figure-store.ts';
import type { TellerOf } from '../report/report-view.tsx';
import { scaleOf } from '../strings/state-scale.ts';
import { stringStory } from '../strings/stories.ts';

/** What the figures of a proof on screen are opened from. */
export interface BehindProof {
  readonly piano: Piano;
  readonly book: ReadingBook;
  readonly touch: (state: State) => TouchAnalysis | null;
  readonly locale: string;
}

/** How each derived figure of a proof was made: by the stories its own page tells. */
export function proofTellers(behind: BehindProof): TellerOf {
  return (figure) => {
    // A single key or string that shows a figure can tell of it; a row only where its steps and doubt are known, an angle unless it was read as it is.
    if (figure.of === 'keys' || figure.of === 'bearing') {
      const story = tell(figure, behind);
      return story === undefined ? undefined : () => story;
    }
    return () => {
      const story = tell(figure, behind);
      if (story === undefined) throw new Error(`nothing stands behind ${figure.what}`);
      return story;
    };
  };
}

function tell({ of, state, output, what, key = 0 }: FigureName, { piano, book, touch, locale }: BehindProof): FigureStory | undefined {
  const { compass, intent, scale: terms } = piano;
  const own = () => [...book[state].values()];
  switch (of) {
    case 'keys': {
      const analysis = touch(state);
      const story = analysis === null ? undefined : evennessStory(what, output, analysis, intent, own());
      return output === 'insideGuarded' && story?.input['uncertainty'] === undefined ? undefined : story;
    }
    case 'touch': {
      const ofKey = touch(state)?.keys.find((one) => one.key === key);
      return ofKey === undefined ? undefined : touchWeightStory(`${what}, ${noteNameOf(compass, key)}`, output, { touch: ofKey, readings: own() });
    }
    case 'string': {
      const { analysis, readings } = scaleOf(piano, state, { book, locale });
      const note = analysis.notes.find((one) => one.key === key);
      return note === undefined ? undefined : stringStory(what, output, { note, state, terms, readings, compass });
    }
    case 'bearing': {
      const { analysis, readings } = bellyOf(piano, state, { book, locale });
      const note = analysis.notes.find((one) => one.key === key);
      return note === undefined || !isBearingOutput(output) ? undefined : bearingStory(what, output, { note, state, readings, compass });
    }
  }
}
