import { pointNear, tradeOffPlot } from '#plot';
import { type CandidateFigures, type RescaleProblem, type ScaleAnalysis, roughnessOf } from '#strings';
import { useMemo } from 'react';
import { useFigures, useLocale, useSay } from '../../language/use-say.ts';
import { frameOf } from '../../leaves/scene-frame.ts';
import { Marks } from '../../leaves/scene-view.tsx';
import { useWidth } from '../../leaves/use-width.ts';
import { Choice } from '../../ui/choice.tsx';
import type { RescaleRun } from './use-rescale.ts';

interface TradeOffProps {
  readonly runs: readonly RescaleRun[];
  readonly standing: ScaleAnalysis;
  /** Place among the runs. */
  readonly chosen: number;
  readonly onChoose: (place: number) => void;
}

/** The honest trade-off between even tension and even inharmonicity: a curve to choose from by click or arrows. */
export function TradeOff({ runs, standing, chosen, onChoose }: TradeOffProps) {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const [widthPx, ref] = useWidth(520);
  const points = useMemo(() => runs.flatMap(({ problem, result }, place) => {
    if (!result.ok) return [];
    const bends = bendsOf(problem, result.value.choices);
    return bends === undefined ? [] : [{ ...bends, place, label: String(place + 1) }];
  }), [runs]);
  const scene = useMemo(() => {
    const problem = runs[0]?.problem;
    const stands = problem === undefined ? undefined : bendsOf(problem, standing.notes.flatMap(({ key, figures }) => (figures === undefined ? [] : [{ key, ...figures }])));
    return tradeOffPlot({
      points, chosen: points.findIndex(({ place }) => place === chosen), locale, widthPx, heightPx: 280, title: say('rescale.tradeOff'), description: say('rescale.tradeOff.described', { count: points.length }),
      xLabel: say('rescale.tradeOff.x'), yLabel: say('rescale.tradeOff.y'), ...(stands === undefined ? {} : { standing: { ...stands, label: say('rescale.tradeOff.standing') } }),
    });
  }, [chosen, locale, points, runs, say, standing, widthPx]);
  if (points.length === 0) return null;
  return (
    <section className="panel" aria-labelledby="rescale-trade-off">
      <h2 id="rescale-trade-off">{say('rescale.tradeOff')}</h2>
      <p className="soft small">{say('rescale.tradeOff.about')}</p>
      <div ref={ref}>
        <svg
          className="scene scene-pressable" {...frameOf(scene)} role="img" aria-label={`${scene.title}. ${scene.description}`}
          onPointerUp={(event) => {
            const box = event.currentTarget.getBoundingClientRect();
            const near = pointNear(scene, ((event.clientX - box.left) * scene.widthPx) / box.width, ((event.clientY - box.top) * scene.heightPx) / box.height);
            const place = near === undefined ? undefined : points[near]?.place;
            if (place !== undefined) onChoose(place);
          }}
        >
          <Marks scene={scene} />
        </svg>
      </div>
      <Choice
        label={say('rescale.tradeOff.choose')} value={String(chosen)} onChange={(place) => { onChoose(Number(place)); }}
        options={points.map(({ place, x, y, label }) => ({ value: String(place), label: <><span aria-hidden="true">{label}</span><span className="visually-hidden">{say('rescale.tradeOff.point', { point: label, x: figure(x, 2), y: figure(y, 2) })}</span></> }))}
      />
      <p role="status">{points.filter(({ place }) => place === chosen).map(({ x, y, label }) => say('rescale.tradeOff.point', { point: label, x: figure(x, 2), y: figure(y, 2) }))}</p>
    </section>
  );
}

/** Bends of tension and inharmonicity over what the problem counts, in per cent: its notes, without the breaks where they do not count. */
function bendsOf({ notes }: RescaleProblem, figures: readonly (Pick<CandidateFigures, 'tensionN' | 'inharmonicityB'> & { readonly key: number })[]): { readonly x: number; readonly y: number } | undefined {
  const byKey = new Map(figures.map((one) => [one.key, one]));
  const skipped = new Set(notes.flatMap(({ weights }, place) => (weights === undefined ? [] : [place])));
  const [x, y] = (['tensionN', 'inharmonicityB'] as const).map((name) => roughnessOf(notes.map(({ key }) => byKey.get(key)?.[name]), skipped));
  return x === undefined || y === undefined ? undefined : { x: 100 * x, y: 100 * y };
}
