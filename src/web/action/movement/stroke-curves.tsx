import type { KeyStroke, StrokeMeasures, StrokePosition } from '#action';
import { strokeCurve } from '#plot';
import { useFigures, useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';

interface StrokeCurvesProps {
  readonly stroke: KeyStroke;
  readonly measures: StrokeMeasures;
  readonly dropMm: number | undefined;
  readonly at: StrokePosition;
  readonly widthPx: number;
}

const ARMS = ['keyBackMm', 'wippenHeelMm', 'wippenJackMm', 'rollerMm', 'hammerMm'] as const;
type CurveName = 'rise' | 'ratio' | (typeof ARMS)[number];
const CURVES: readonly CurveName[] = ['rise', 'ratio', ...ARMS];

function valueOf(curve: CurveName, { hammerRiseMm, rates }: StrokePosition): number | undefined {
  if (curve === 'rise') return hammerRiseMm;
  return curve === 'ratio' ? rates?.actionRatio : rates?.[curve];
}

/** Rise, ratio and lever arms over the travel of the key; let-off, bottom and drop marked, and where the stroke stands. */
export function StrokeCurves({ stroke, measures, dropMm, at, widthPx }: StrokeCurvesProps) {
  const say = useSay();
  const figure = useFigures();
  const locale = useLocale();
  const perRow = widthPx > 700 ? 2 : 1;
  const curveWidth = Math.floor((widthPx - 16 * (perRow - 1)) / perRow);
  const places = [...(stroke.letOff.edgeTravelMm > measures.dipMm ? [] : [{ x: stroke.letOff.edgeTravelMm, label: say('movement.letOff') }]), { x: measures.dipMm, label: say('movement.bottom') }];
  const measured = { x: stroke.measured.edgeTravelMm, label: say('movement.measured') };
  const levels: Partial<Readonly<Record<CurveName, readonly { readonly y: number; readonly label: string }[]>>> = {
    rise: dropMm === undefined ? [] : [{ y: measures.blowMm - measures.letOffMm - dropMm, label: say('movement.drop') }],
    ratio: [{ y: stroke.levers.actionRatio, label: say('movement.ofLevers') }],
  };
  return (
    <>
      <h3>{say('movement.curves')}</h3>
      <div className="stroke-curves">
        {CURVES.map((curve) => {
          const what = say(`movement.curve.${curve}`);
          const points = stroke.positions.map((position) => ({ x: position.edgeTravelMm, y: valueOf(curve, position) }));
          const known = points.flatMap(({ y }) => y ?? []);
          const description = say('movement.curve.described', { what, first: figure(known[0] ?? 0, 2), last: figure(known.at(-1) ?? 0, 2) });
          return (
            <SceneView key={curve} scene={strokeCurve({
              points, places: curve === 'ratio' ? [measured, ...places] : places, levels: levels[curve] ?? [], at: { x: at.edgeTravelMm, y: valueOf(curve, at) }, xLabel: say('movement.curve.x'), yLabel: what, title: what, description, locale, widthPx: curveWidth, heightPx: 190,
            })} />
          );
        })}
      </div>
    </>
  );
}
