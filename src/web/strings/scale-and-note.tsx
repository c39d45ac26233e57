import type { KeyNumber } from '#instrument';
import { scaleSignsOf } from '#plot';
import { useMemo } from 'react';
import { KeysWithPlots } from '../keys/keys-with-plots.tsx';
import { useSay } from '../language/use-say.ts';
import { Assumed } from './assumed.tsx';
import { LoadsTable } from './loads-table.tsx';
import { NotePanel } from './note-panel.tsx';
import { ScalePlots } from './scale-plots.tsx';
import type { StateScale } from './state-scale.ts';
import { keyToLookAt } from './strings-commands.ts';
import type { TrialDesk } from './use-trial.ts';

interface ScaleAndNoteProps {
  readonly scales: readonly StateScale[];
  readonly shown: StateScale;
  readonly selected: KeyNumber | undefined;
  readonly trial: TrialDesk;
  readonly onKey: (key: KeyNumber) => void;
}

/** The keys marked by what is asked, the four figures over the same keys, and beside them the note chosen, the loads and what was assumed. */
export function ScaleAndNote({ scales, shown, selected, trial, onKey }: ScaleAndNoteProps) {
  const say = useSay();
  const { analysis } = shown;
  const signs = useMemo(() => scaleSignsOf(analysis), [analysis]);
  const first = keyToLookAt(analysis, undefined, 1);
  return (
    <KeysWithPlots
      signs={signs} selected={selected} onKey={onKey} keysLabel={say('strings.keyboard')} plotsLabel={say('strings.plots')}
      plots={(widthPx) => <ScalePlots scales={scales} widthPx={widthPx} selected={selected} onSelect={onKey} />}
    >
      {selected === undefined ? (
        <section className="panel">
          <h2>{say('action.choose')}</h2>
          <p>{say('strings.pick')}</p>
          {first !== undefined && <p><button type="button" className="button" onClick={() => { onKey(first); }}>{say('strings.first')}</button></p>}
        </section>
      ) : (
        <NotePanel keyNumber={selected} scales={scales} state={shown.state} trial={trial} onKey={onKey} />
      )}
      <LoadsTable scales={scales} />
      <Assumed scale={shown} />
    </KeysWithPlots>
  );
}
