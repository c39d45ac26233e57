import type { KeyNumber } from '#instrument';
import { type KeyPoint, keyPlot } from '#plot';
import { memo, useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import { useSteady } from '../../ui/use-steady.ts';
import type { Plan } from './use-plan.ts';

const plotted = ['hammerWeightG', 'frontWeightG', 'downWeightG', 'upWeightG'] as const;
type Plotted = (typeof plotted)[number];

interface PlanPlotsProps {
  readonly plan: Plan;
  readonly widthPx: number;
  readonly selected: KeyNumber | undefined;
  readonly onSelect: (key: KeyNumber) => void;
}

/** Hammer, front, down and up weight over the same keys: as found against planned, with what is tried. */
export function PlanPlots(props: PlanPlotsProps) {
  return <div className="key-plots">{plotted.map((name) => <PlanPlot key={name} name={name} {...props} />)}</div>;
}

const PlanPlot = memo(function PlanPlot({ name, plan, widthPx, selected, onSelect }: PlanPlotsProps & { readonly name: Plotted }) {
  const say = useSay();
  const locale = useLocale();
  const { compass, intent } = usePiano();
  const found = useSteady(plan.keys.map(({ plan: { key, found: was } }): KeyPoint => ({ key, value: was[name] })), samePoints);
  const planned = useSteady(plan.keys.map(({ plan: { key }, figures }): KeyPoint => ({ key, value: figures[name] })), samePoints);
  const most = plan.keys[0]?.plan.mostFrontWeightG;
  const scene = useMemo(() => {
    const title = say(`quantity.${name}.name`);
    const least = name === 'upWeightG' && intent !== null && intent.upWeightMinG > 0 ? { limit: intent.upWeightMinG } : {};
    return keyPlot({
      compass, locale, widthPx, heightPx: 200, title, yLabel: title, unitSign: 'g', description: say('plan.plots.described', { what: title }),
      series: [{ state: 'found', label: say('state.found'), points: found }, { state: 'planned', label: say('state.planned'), points: planned }],
      ...least, ...(name === 'frontWeightG' && most !== undefined ? { limit: most } : {}),
    });
  }, [compass, found, intent, locale, most, name, planned, say, widthPx]);
  return <SceneView scene={scene} selected={selected} onKey={onSelect} />;
});

const samePoints = (one: readonly KeyPoint[], other: readonly KeyPoint[]): boolean =>
  one.length === other.length && one.every(({ key, value }, index) => other[index]?.key === key && other[index].value === value);
