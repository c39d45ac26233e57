import type { KeyNumber } from '#instrument';
import { bearingSignsOf } from '#plot';
import { useMemo } from 'react';
import { KeysWithPlots } from '../keys/keys-with-plots.tsx';
import { useSay } from '../language/use-say.ts';
import { BearingLoads } from './bearing-loads.tsx';
import { BearingPanel } from './bearing-panel.tsx';
import { BearingPlots } from './bearing-plots.tsx';
import { bearingToLookAt } from './belly-commands.ts';
import { LeftOpen } from './left-open.tsx';
import type { StateBelly } from './state-belly.ts';

interface BellyAndNoteProps {
  readonly bellies: readonly StateBelly[];
  readonly shown: StateBelly;
  readonly selected: KeyNumber | undefined;
  readonly onKey: (key: KeyNumber) => void;
}

/** The keys marked by their bearing, its figures over the same keys, and beside them the note chosen, the loads and what was left open. */
export function BellyAndNote({ bellies, shown, selected, onKey }: BellyAndNoteProps) {
  const say = useSay();
  const { analysis, gathered } = shown;
  const signs = useMemo(() => bearingSignsOf(analysis, gathered.input.asked), [analysis, gathered]);
  const first = bearingToLookAt(analysis, undefined, 1);
  return (
    <KeysWithPlots
      signs={signs} selected={selected} onKey={onKey} keysLabel={say('belly.keyboard')} plotsLabel={say('belly.plots')}
      plots={(widthPx) => <BearingPlots bellies={bellies} widthPx={widthPx} selected={selected} onSelect={onKey} />}
    >
      {selected === undefined ? (
        <section className="panel">
          <h2>{say('action.choose')}</h2>
          <p>{say('belly.pick')}</p>
          {first !== undefined && <p><button type="button" className="button" onClick={() => { onKey(first); }}>{say('belly.first')}</button></p>}
        </section>
      ) : (
        <BearingPanel keyNumber={selected} bellies={bellies} state={shown.state} onKey={onKey} />
      )}
      <BearingLoads bellies={bellies} />
      <LeftOpen belly={shown} />
    </KeysWithPlots>
  );
}
