import type { KeyNumber, Reading } from '#instrument';
import { type KeySign, leadMap } from '#plot';
import type { LeadedKey } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { KeysWithPlots } from '../../keys/keys-with-plots.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import { HoleLegend } from './hole-legend.tsx';
import { holesOf } from './key-strip-view.tsx';
import { LeadKeyPanel } from './lead-key-panel.tsx';
import type { LeadAnswer } from './leads-jobs.ts';

interface KeysWithLeadsProps {
  readonly keys: readonly LeadedKey[];
  readonly answers: readonly LeadAnswer[];
  readonly readings: readonly Reading[];
  readonly selected: KeyNumber | undefined;
  readonly onKey: (key: KeyNumber) => void;
}

/** The keys marked by what came of them, their leads drawn over them to scale, and the key chosen. */
export function KeysWithLeads({ keys, answers, readings, selected, onKey }: KeysWithLeadsProps) {
  const say = useSay();
  const signs = useMemo(() => new Map(answers.map((answer): [KeyNumber, KeySign] => [answer.key, signOf(answer, keys)])), [answers, keys]);
  const first = selected ?? answers.find(({ feasible }) => !feasible)?.key ?? answers[0]?.key ?? 1;
  const hasExchanged = useMemo(() => answers.some((answer) => holesIn(answer, keys).some(({ use }) => use === 'exchange')), [answers, keys]);
  return (
    <KeysWithPlots signs={signs} selected={first} onKey={onKey} keysLabel={say('leads.keys')} plotsLabel={say('leads.map')} plots={(widthPx) => <LeadMap keys={keys} answers={answers} widthPx={widthPx} selected={first} onKey={onKey} />}>
      <LeadKeyPanel keyNumber={first} leaded={keys.find(({ key }) => key === first)} answer={answers.find(({ key }) => key === first)} readings={readings} onKey={onKey} />
      <HoleLegend hasExchanged={hasExchanged} />
    </KeysWithPlots>
  );
}

function holesIn(answer: LeadAnswer, keys: readonly LeadedKey[]): ReturnType<typeof holesOf> {
  const leaded = keys.find(({ key }) => key === answer.key);
  return leaded === undefined ? [] : holesOf(answer, leaded);
}

function signOf({ key, feasible, proven, frontWeightG }: LeadAnswer, keys: readonly LeadedKey[]): KeySign {
  if (feasible) return proven ? 'inside' : 'work';
  const target = keys.find((one) => one.key === key)?.question.targetFrontWeightG ?? 0;
  return frontWeightG < target ? 'under' : 'over';
}

interface LeadMapProps extends Pick<KeysWithLeadsProps, 'keys' | 'answers' | 'onKey'> {
  readonly widthPx: number;
  readonly selected: KeyNumber;
}

function LeadMap({ keys, answers, widthPx, selected, onKey }: LeadMapProps) {
  const say = useSay();
  const locale = useLocale();
  const { compass } = usePiano();
  const scene = useMemo(() => {
    const byKey = new Map(keys.map((leaded) => [leaded.key, leaded]));
    const drawn = answers.flatMap((answer) => {
      const leaded = byKey.get(answer.key);
      return leaded === undefined ? [] : [{ key: answer.key, holes: holesOf(answer, leaded) }];
    });
    const all = drawn.flatMap(({ holes }) => holes);
    const count = (uses: readonly string[]): number => all.filter(({ use }) => uses.includes(use)).length;
    return leadMap({ compass, keys: drawn, widthPx, locale, title: say('leads.map'), yLabel: say('leads.map.y'), description: say('leads.map.described', { leads: count(['refill', 'trim', 'exchange', 'new']), holes: count(['new']), plugs: count(['plug']) }) });
  }, [keys, answers, widthPx, locale, compass, say]);
  return <SceneView scene={scene} selected={selected} onKey={onKey} />;
}
