import type { TouchAnalysis } from '#action';
import type { State } from '#instrument';
import type { ReactNode } from 'react';
import { usePiano } from '../api/piano.tsx';
import { useReadings } from '../api/use-readings.ts';
import { Figure } from '../figure/figure.tsx';
import { useFigures } from '../language/use-say.ts';
import { evennessStory } from './stories.ts';

/** Shows a figure that opens to the evenness of the row, or plainly where the row cannot be given whole. */
export function useEvenness(state: State, analysis: TouchAnalysis): (title: string, output: string, value: number, decimals: number, isWeight: boolean) => ReactNode {
  const figure = useFigures();
  const { intent } = usePiano();
  const readings = useReadings(state);
  return (title, output, value, decimals, isWeight) => {
    const story = evennessStory(title, output, analysis, intent, [...readings.values()]);
    const unit = isWeight ? ({ unit: 'g' } as const) : {};
    return story === undefined || story.input[output === 'insideGuarded' ? 'uncertainty' : 'values'] === undefined
      ? figure(value, decimals, unit.unit)
      : <Figure value={value} decimals={decimals} {...unit} story={() => story} />;
  };
}
