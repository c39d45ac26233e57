import { type PlanFigures, type PlannedKey, STROKES_MS, keyLevelEffectOf } from '#action';
import { noteNameOf } from '#instrument';
import { type UnitId, millimetres } from '#units';
import type { ReactNode } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import type { FigureStory } from '../../figure/figure-store.ts';
import { useFigures, useSay } from '../../language/use-say.ts';
import { type PlanBehind, frontStory, hammerStory, massStory, regulationStory, shiftStory, standingStory, strokeStory, weightRatioStory } from './plan-stories.ts';
import type { Plan } from './use-plan.ts';

interface Row {
  readonly name: RowName;
  readonly unit?: UnitId;
  readonly decimals: number;
  readonly of: (figures: PlanFigures) => number | undefined;
  readonly found?: (key: PlannedKey) => number | undefined;
  readonly story?: (title: string, key: PlannedKey) => FigureStory | undefined;
}

/** What follows for one key; words under `plan.row.<name>`. */
type RowName =
  | 'weightRatio' | 'distanceRatio' | 'keyRatio' | 'wippenRatio' | 'hammerRatio' | 'hammerWeight' | 'standingBalance' | 'standingDown'
  | 'standingUp' | 'frontWeight' | 'downWeight' | 'upWeight' | 'balanceWeight' | 'friction' | 'effectiveMass' | 'hammerMass' | 'softForce' | 'hardForce' | 'returnTime'
  | 'dipNeeded' | 'blowNeeded' | 'blow' | 'aftertouch' | 'level' | 'shank' | 'strikeShift';

const rowsOf = (behind: PlanBehind): readonly Row[] => [
  { name: 'weightRatio', decimals: 2, of: ({ weightRatio }) => weightRatio, story: (title, key) => weightRatioStory(title, key, behind) },
  { name: 'distanceRatio', decimals: 2, of: ({ distanceRatio }) => distanceRatio, story: (title, key) => shiftStory(title, 'actionRatio', key, behind.shifts) },
  { name: 'keyRatio', decimals: 3, of: ({ keyRatio }) => keyRatio, story: (title, key) => shiftStory(title, 'keyRatio', key, behind.shifts) },
  { name: 'wippenRatio', decimals: 3, of: ({ wippenRatio }) => wippenRatio, story: (title, key) => shiftStory(title, 'wippenRatio', key, behind.shifts) },
  { name: 'hammerRatio', decimals: 2, of: ({ hammerRatio }) => hammerRatio, story: (title, key) => shiftStory(title, 'hammerRatio', key, behind.shifts) },
  { name: 'hammerWeight', unit: 'g', decimals: 2, of: ({ hammerWeightG }) => hammerWeightG, found: ({ plan }) => plan.found.hammerWeightG, story: (title, key) => hammerStory(title, key, behind) },
  { name: 'frontWeight', unit: 'g', decimals: 1, of: ({ frontWeightG }) => frontWeightG, found: ({ plan }) => plan.found.frontWeightG, story: (title, key) => frontStory(title, 'frontWeightG', key) },
  { name: 'downWeight', unit: 'g', decimals: 1, of: ({ downWeightG }) => downWeightG, found: ({ plan }) => plan.found.downWeightG, story: (title, key) => frontStory(title, 'downWeightG', key) },
  { name: 'upWeight', unit: 'g', decimals: 1, of: ({ upWeightG }) => upWeightG, found: ({ plan }) => plan.found.upWeightG, story: (title, key) => frontStory(title, 'upWeightG', key) },
  { name: 'balanceWeight', unit: 'g', decimals: 1, of: ({ balanceWeightG }) => balanceWeightG, found: ({ plan }) => plan.found.balanceWeightG },
  { name: 'friction', unit: 'g', decimals: 1, of: ({ frictionG }) => frictionG, found: ({ plan }) => plan.found.frictionG },
  { name: 'standingBalance', unit: 'g', decimals: 1, of: ({ standing }) => standing?.balanceWeightG, story: (title, key) => standingStory(title, 'balanceWeightG', key, behind) },
  { name: 'standingDown', unit: 'g', decimals: 1, of: ({ standing }) => standing?.downWeightG, story: (title, key) => standingStory(title, 'downWeightG', key, behind) },
  { name: 'standingUp', unit: 'g', decimals: 1, of: ({ standing }) => standing?.upWeightG, story: (title, key) => standingStory(title, 'upWeightG', key, behind) },
  { name: 'effectiveMass', unit: 'g', decimals: 0, of: ({ mass }) => mass?.effectiveMassG, story: (title, key) => massStory(title, 'effectiveMassG', key, behind) },
  { name: 'hammerMass', unit: 'g', decimals: 0, of: ({ mass }) => mass?.hammerG, story: (title, key) => massStory(title, 'hammerG', key, behind) },
  { name: 'softForce', unit: 'N', decimals: 2, of: ({ strokes }) => strokes?.softN, story: (title, key) => strokeStory(title, 'forceN', STROKES_MS.soft, key) },
  { name: 'hardForce', unit: 'N', decimals: 1, of: ({ strokes }) => strokes?.hardN, story: (title, key) => strokeStory(title, 'forceN', STROKES_MS.hard, key) },
  { name: 'returnTime', unit: 's', decimals: 3, of: ({ strokes }) => (strokes?.returnMs === undefined ? undefined : strokes.returnMs / 1000), story: (title, key) => strokeStory(title, 'returnMs', STROKES_MS.soft, key) },
  { name: 'blow', unit: 'mm', decimals: 1, of: ({ regulation }) => regulation?.blowMm },
  { name: 'aftertouch', unit: 'mm', decimals: 2, of: ({ regulation }) => regulation?.aftertouchMm, story: (title, key) => regulationStory(title, 'aftertouchMm', key) },
  { name: 'dipNeeded', unit: 'mm', decimals: 2, of: ({ regulation }) => regulation?.dipNeededMm, story: (title, key) => regulationStory(title, 'dipMm', key) },
  { name: 'blowNeeded', unit: 'mm', decimals: 1, of: ({ regulation }) => regulation?.blowNeededMm, story: (title, key) => regulationStory(title, 'blowMm', key) },
  { name: 'level', unit: 'mm', decimals: 2, of: ({ top }) => top?.levelChangeMm },
  { name: 'shank', unit: 'deg', decimals: 2, of: ({ strike }) => strike?.shankDeg },
  { name: 'strikeShift', unit: 'mm', decimals: 2, of: ({ strike }) => strike?.strikeShiftMm },
];

/** Everything that follows for one key: as found, as planned with nothing moved, and with what is tried. */
export function Consequences({ plan, planned }: { readonly plan: Plan; readonly planned: PlannedKey }) {
  const say = useSay();
  const figure = useFigures();
  const { compass, action } = usePiano();
  const { key } = planned.plan;
  const before = plan.unshifted.get(key);
  const none = <span className="soft">–</span>;
  return (
    <>
      <div className="table-wrap plan-consequences">
        <table className="figures-table">
          <thead>
            <tr>
              <th scope="col"><span className="visually-hidden">{say('action.figure')}</span></th>
              <th scope="col">{say('state.found')}</th>
              <th scope="col">{say('plan.column.plan')}</th>
              <th scope="col">{say('plan.column.tried')}</th>
              <th scope="col">{say('plan.column.change')}</th>
            </tr>
          </thead>
          <tbody>
            {rowsOf({ ...plan, terms: action }).flatMap(({ name, unit, decimals, of, found, story }) => {
              const [then, now, was] = [of(planned.figures), before === undefined ? undefined : of(before), found?.(planned)];
              if (then === undefined && now === undefined) return [];
              const label = say(`plan.row.${name}`);
              const told = then === undefined ? undefined : story?.(`${label}, ${noteNameOf(compass, key)}`, planned);
              const shown = (value: number | undefined): ReactNode => (value === undefined ? none : figure(value, decimals, unit));
              return [(
                <tr key={name}>
                  <th scope="row">{label}</th>
                  <td>{found === undefined ? null : shown(was)}</td>
                  <td>{shown(now)}</td>
                  <td>{then !== undefined && told !== undefined ? <Figure value={then} decimals={decimals} {...(unit === undefined ? {} : { unit })} story={() => told} /> : shown(then)}</td>
                  <td>{then === undefined || now === undefined || Math.abs(then - now) < 0.5 * 10 ** -decimals ? none : figure(then - now, decimals, unit, true)}</td>
                </tr>
              )];
            })}
          </tbody>
        </table>
      </div>
      <Relevel planned={planned} />
    </>
  );
}

/** What levelling again takes where new key tops raise the key, and what that does to the dip. */
function Relevel({ planned: { plan: { regulation, inertia }, figures: { top } } }: { readonly planned: PlannedKey }) {
  const say = useSay();
  const figure = useFigures();
  if (top === undefined || regulation === undefined || Math.abs(top.levelChangeMm) < 0.005) return null;
  const back = inertia?.bar?.keyBackLengthMm;
  if (back === undefined) return <p className="soft small">{say('plan.relevel.back')}</p>;
  const { keyEdgeMm, frontPinMm } = regulation;
  const out = millimetres(top.levelChangeMm / (1 + keyEdgeMm / back));
  const way = (thickness: number) => ({ way: thickness > 0 ? 'thinner' : 'thicker', by: figure(Math.abs(thickness), 2, 'mm') });
  const effect = frontPinMm === undefined ? undefined : keyLevelEffectOf({ balancePunchingMm: out, keyEdgeMm, backRestMm: back, frontPinMm });
  return (
    <p className="soft small">
      {say('plan.relevel', way(out))}{' '}
      {effect === undefined ? say('plan.relevel.pin') : say('plan.relevel.dip', { dip: figure(effect.dipChangeMm, 2, 'mm', true), ...way(0 - effect.frontPunchingMm) })}
    </p>
  );
}
