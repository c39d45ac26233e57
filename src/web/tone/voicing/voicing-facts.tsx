import { noteNameOf } from '#instrument';
import type { VoicedFigure } from '#workshop';
import type { ReactNode } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { Figure } from '../../figure/figure.tsx';
import { useSay } from '../../language/use-say.ts';
import { voicedPrint } from './hammer-list.tsx';
import type { StateVoicing } from './state-voicing.ts';
import { strikesStory } from './voicing-stories.ts';

/** What hammers are judged by: the level, how well a strike repeats, how brightness grows, the microphone, and what was left out. */
export function VoicingFacts({ voicing: { gathered: { level, ladders, microphone, otherStrikes, bases } }, figure }: { readonly voicing: StateVoicing; readonly figure: VoicedFigure }) {
  const say = useSay();
  const { compass } = usePiano();
  const { decimals, sign } = voicedPrint[figure];
  const count = (basis: 'line' | 'moved' | 'as-struck'): number => [...bases.values()].filter((one) => one === basis).length;
  const line = (name: string, shown: ReactNode) => <div><dt>{name}</dt><dd>{shown}</dd></div>;
  const figureOf = (output: 'atLevelDb' | 'repeatability' | 'medianSlopePer10Db', name: string, digits: number, unit: string) => {
    const value = level?.softToLoud[output];
    return value !== undefined && line(name, <><Figure value={value} decimals={digits} story={() => strikesStory(name, output, ladders)} />{unit}</>);
  };
  return (
    <section className="panel" aria-labelledby="voicing-facts-title">
      <h2 id="voicing-facts-title">{say('tone.voicing.facts')}</h2>
      <dl className="even-figures">
        {figureOf('atLevelDb', say('tone.voicing.level'), 1, ' dB')}
        {figureOf('repeatability', say('tone.voicing.repeatability'), decimals + 1, sign)}
        {figureOf('medianSlopePer10Db', say('tone.voicing.slope'), decimals, sign)}
        {line(say('tone.voicing.microphone'), [microphone.place, microphone.device].map((part) => (part === '' ? say('tone.key.unknown') : part)).join(' · '))}
      </dl>
      {level !== undefined && <p className="soft small">{say('tone.voicing.basis', { line: count('line'), moved: count('moved'), asStruck: count('as-struck') })}</p>}
      {level !== undefined && level.left.length > 0 && <p className="soft small">{say('tone.voicing.left', { keys: level.left.map((key) => noteNameOf(compass, key)).join(', ') })}</p>}
      {otherStrikes > 0 && <p className="soft small">{say('tone.voicing.others', { count: otherStrikes })}</p>}
    </section>
  );
}
