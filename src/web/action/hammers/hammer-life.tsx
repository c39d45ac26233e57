import type { HammerWear } from '#action';
import { hammerLifeOfTerms } from '#workshop';
import type { ReactNode } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { useSay } from '../../language/use-say.ts';

type LifeOutput = 'hoursPlayed' | 'toReshapeHours' | 'leftHours' | 'leftYears' | 'reshapesLeft';

/** What is left of the hammers in hours and years; a range where the usual figures stand in. */
export function HammerLifePanel() {
  const say = useSay();
  const { action } = usePiano();
  const life = hammerLifeOfTerms(action);
  const use = action?.hammerUse ?? null;
  return (
    <section className="panel" aria-labelledby="hammer-life">
      <h2 id="hammer-life">{say('hammers.life')}</h2>
      {life === undefined ? <p className="soft">{say('hammers.life.unknown')}</p> : <LifeFigures life={life} />}
      {use !== null && <p>{say('hammers.life.byUse', { use })}</p>}
      {life !== undefined && <p className="soft small">{say('hammers.life.practice', { usual: life.usual.length > 0 ? 'some' : 'none' })}</p>}
      <p className="soft small">{say('hammers.life.reweigh')}</p>
    </section>
  );
}

function LifeFigures({ life: { least, most, wear } }: { readonly life: NonNullable<ReturnType<typeof hammerLifeOfTerms>> }) {
  const say = useSay();
  const one = (name: string, output: LifeOutput, value: number, decimals: number, behind: HammerWear): ReactNode =>
    <Figure value={value} decimals={decimals} story={() => ({ title: name, operation: 'hammer-life', output, input: { ...behind } })} />;
  const range = (name: string, output: LifeOutput, decimals: number): ReactNode => {
    const [low, high] = [least[output] ?? 0, most[output] ?? 0];
    const from = one(name, output, low, decimals, wear.least);
    return low.toFixed(decimals) === high.toFixed(decimals) ? from : <>{from}–{one(name, output, high, decimals, wear.most)}</>;
  };
  const rows: readonly (readonly [name: string, shown: ReactNode])[] = [
    [say('hammers.life.played'), <>{one(say('hammers.life.played'), 'hoursPlayed', least.hoursPlayed, 0, wear.least)} h</>],
    [say('hammers.life.toReshape'), most.toReshapeHours === 0 ? <strong>{say('hammers.life.due')}</strong> : <>{range(say('hammers.life.toReshape'), 'toReshapeHours', 0)} h</>],
    [say('hammers.life.left'), <>{range(say('hammers.life.left'), 'leftHours', 0)} h{least.leftYears !== undefined && <> · {say('hammers.life.inYears')} {range(say('hammers.life.left'), 'leftYears', 1)}</>}</>],
    [say('hammers.life.reshapes'), range(say('hammers.life.reshapes'), 'reshapesLeft', 0)],
  ];
  return (
    <dl className="even-figures">
      {rows.map(([name, shown]) => <div key={name}><dt>{name}</dt><dd>{shown}</dd></div>)}
    </dl>
  );
}
