import { type PlottedScale, type ScaleFigure, scalePlot } from '#plot';
import type { ScaleAnalysis } from '#strings';
import { percent } from '#units';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import { useWidth } from '../../leaves/use-width.ts';

interface PlanPlotsProps {
  readonly plans: readonly { readonly name: string; readonly sizes: unknown; readonly analysis: ScaleAnalysis }[];
}

const FIGURES: readonly ScaleFigure[] = ['tension', 'inharmonicity', 'breaking'];

/** Plans over the same keys: as found by its ring, the first plan by its diamond, the second by a wedge. */
export function PlanPlots({ plans }: PlanPlotsProps) {
  const say = useSay();
  const locale = useLocale();
  const { compass, scale: terms } = usePiano();
  const [widthPx, ref] = useWidth(520);
  const scenes = useMemo(() => {
    const firstPlan = plans.findIndex(({ sizes }) => sizes !== undefined);
    const scales = plans.map(({ name, sizes, analysis }, place): PlottedScale => ({ state: sizes === undefined ? 'found' : place === firstPlan ? 'planned' : 'rival', label: name, scale: withoutDoubt(analysis) }));
    const asked = { ...(terms?.leastBreakingPct == null ? {} : { leastPct: percent(terms.leastBreakingPct) }), ...(terms?.mostBreakingPct == null ? {} : { mostPct: percent(terms.mostBreakingPct) }) };
    return FIGURES.map((figure) => {
      const name = say(`strings.figure.${figure}`);
      return scalePlot({ figure, scales, asked, compass, locale, widthPx, heightPx: 210, title: name, description: say('strings.plots.described', { what: name, states: scales.map(({ label }) => label).join(', ') }), yLabel: name });
    });
  }, [compass, locale, plans, say, terms, widthPx]);
  return <div ref={ref} className="key-plots" role="group" aria-label={say('rescale.compare.plots')}>{scenes.map((scene) => <SceneView key={scene.title} scene={scene} />)}</div>;
}

/** Where plans are held against each other, the doubt of their sizes is the same in all: it would only cover them. */
function withoutDoubt(analysis: ScaleAnalysis): ScaleAnalysis {
  return { ...analysis, notes: analysis.notes.map((note) => {
    if (note.figures === undefined) return note;
    const { uncertainty: _, ...figures } = note.figures;
    return { ...note, figures };
  }) };
}
