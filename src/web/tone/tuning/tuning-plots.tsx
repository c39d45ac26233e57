import { type KeyNumber, keysOf } from '#instrument';
import { pitchPlot, unisonPlot } from '#plot';
import { memo, useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import type { Tuning } from './use-tuning.ts';

interface TuningPlotsProps {
  readonly tuning: Tuning;
  readonly widthPx: number;
  readonly selected: KeyNumber | undefined;
  readonly onSelect: (key: KeyNumber) => void;
}

/** Pitch over the curve, and under it the spread of the unisons where any was read; the chosen key is laid over them. */
export const TuningPlots = memo(function TuningPlots({ tuning, widthPx, selected, onSelect }: TuningPlotsProps) {
  const say = useSay();
  const locale = useLocale();
  const { compass, tuning: terms } = usePiano();
  const scenes = useMemo(() => {
    const labelled = tuning.read.map((one) => ({ ...one, label: say(`state.${one.state}`) }));
    const curve = keysOf(compass).map((key) => tuning.targets.get(key)?.offsetCt);
    const pitches = labelled.filter((one) => one.pitches.size > 0).map(({ state, label, pitches: heard }) => ({ state, label, cents: new Map([...heard].map(([key, { offsetCt, uncertaintyCt }]) => [key, { value: offsetCt, uncertainty: uncertaintyCt === undefined ? undefined : 2 * uncertaintyCt }] as const)) }));
    const unisons = labelled.filter((one) => one.unisons.size > 0).map(({ state, label, unisons: spread }) => ({ state, label, cents: new Map([...spread].map(([key, value]) => [key, { value }] as const)) }));
    const shared = { compass, locale, widthPx };
    const [pitch, unison] = [say('tuning.plot.pitch'), say('tuning.plot.unison')];
    const named = (list: readonly { readonly label: string }[]): string => list.map(({ label }) => label).join(', ');
    return [
      pitchPlot({ ...shared, heightPx: 280, curve, read: pitches, toleranceCt: terms?.curveToleranceCt ?? undefined, title: pitch, yLabel: pitch, description: pitches.length === 0 ? say('tuning.plot.curveAlone') : say('tuning.plot.pitch.described', { states: named(pitches) }) }),
      ...(unisons.length === 0 ? [] : [unisonPlot({ ...shared, heightPx: 190, read: unisons, toleranceCt: terms?.unisonToleranceCt ?? undefined, title: unison, yLabel: unison, description: say('tuning.plot.unison.described', { states: named(unisons) }) })]),
    ];
  }, [compass, locale, say, terms, tuning, widthPx]);
  return <div className="key-plots">{scenes.map((scene) => <SceneView key={scene.title} scene={scene} selected={selected} onKey={onSelect} />)}</div>;
});
