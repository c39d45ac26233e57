import type { KeyNumber, State } from '#instrument';
import { type KeySign, voicingSignsOf } from '#plot';
import { type StateTone, type VoicedFigure, voicedFigures } from '#workshop';
import { useMemo, useState } from 'react';
import { KeysWithPlots } from '../../keys/keys-with-plots.tsx';
import { useSay } from '../../language/use-say.ts';
import { Choice } from '../../ui/choice.tsx';
import { StateChoice } from '../state-choice.tsx';
import { WhenHeard } from '../when-heard.tsx';
import { HammerList } from './hammer-list.tsx';
import { voicingOf } from './state-voicing.ts';
import { StrikesPanel } from './strikes-panel.tsx';
import { VoicingFacts } from './voicing-facts.tsx';
import { VoicingPlots } from './voicing-plots.tsx';
import '../../action/action.css';

/** The hammers as they sound: bright and dull ones at one level, beyond what striking again explains, and each key from soft to loud. */
export function VoicingView() {
  return <WhenHeard>{(tones) => <Voicing tones={tones} />}</WhenHeard>;
}

function Voicing({ tones }: { readonly tones: readonly StateTone[] }) {
  const say = useSay();
  const [state, setState] = useState<State>('finished');
  const [figure, setFigure] = useState<VoicedFigure>('brightness');
  const [selected, select] = useState<KeyNumber>();
  const voicings = useMemo(() => tones.flatMap((tone) => voicingOf(tone, figure) ?? []), [figure, tones]);
  const shown = voicings.find((voicing) => voicing.state === state) ?? voicings.at(-1);
  const signs = useMemo((): ReadonlyMap<KeyNumber, KeySign> => (shown?.map === undefined ? new Map() : voicingSignsOf(shown.map)), [shown]);
  return (
    <>
      <div className="row">
        <Choice label={say('tone.voicing.by')} value={figure} options={voicedFigures.map((value) => ({ value, label: say(`tone.figure.${value}`) }))} onChange={setFigure} />
        {shown !== undefined && <StateChoice tones={tones} shown={shown.state} onState={setState} />}
      </div>
      {shown === undefined ? <p>{say('tone.nothingHeard')}</p> : (
        <KeysWithPlots
          signs={signs} selected={selected} onKey={select} keysLabel={say('tone.voicing.keyboard')} plotsLabel={say('tone.voicing.plots')}
          plots={(widthPx) => <VoicingPlots figure={figure} shown={shown} voicings={voicings} widthPx={widthPx} selected={selected} onSelect={select} />}
        >
          {selected === undefined ? <p className="soft">{say('tone.voicing.chooseKey')}</p> : <StrikesPanel keyNumber={selected} figure={figure} voicings={voicings} onKey={select} />}
          <HammerList voicing={shown} figure={figure} onKey={select} />
          <VoicingFacts voicing={shown} figure={figure} />
        </KeysWithPlots>
      )}
    </>
  );
}
