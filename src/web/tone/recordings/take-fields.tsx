import { recordedContents } from '#instrument';
import { useSay } from '../../language/use-say.ts';
import { StateMark } from '../../leaves/state-mark.tsx';
import { Choice } from '../../ui/choice.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import type { WorkedRecording } from '../use-recordings.ts';
import { OfferedField } from './offered-field.tsx';
import type { Take } from './take.ts';

interface TakeFieldsProps {
  readonly take: Take;
  readonly onChange: (change: Partial<Take>) => void;
  /** Kept before: their places and microphones are offered again. */
  readonly earlier: readonly WorkedRecording[];
}

/** Sound is of the piano as found or as finished; a plan cannot be heard. */
const heardStates = ['found', 'finished'] as const;

/** What is recorded, and with what: asked once for many recordings. */
export function TakeFields({ take, onChange, earlier }: TakeFieldsProps) {
  const say = useSay();
  const offered = (field: 'place' | 'device'): readonly string[] => [...new Set(earlier.map(({ recording }) => recording[field]).filter((text) => text !== ''))];
  return (
    <>
      <div className="fields">
        <Choice label={say('readings.state')} value={take.state} options={heardStates.map((value) => ({ value, label: <StateMark state={value} /> }))} onChange={(state) => { onChange({ state }); }} />
        <SelectField label={say('recording.field.contents')} value={take.contents} options={recordedContents.map((value) => ({ value, label: say(`recording.contents.${value}`) }))} onChange={(contents) => { onChange({ contents }); }} />
        <OfferedField label={say('recording.field.place')} value={take.place} offered={offered('place')} hint={say('tone.place.hint')} onChange={(place) => { onChange({ place }); }} />
        <OfferedField label={say('recording.field.device')} value={take.device} offered={offered('device')} hint={say('tone.device.hint')} onChange={(device) => { onChange({ device }); }} />
      </div>
      <p className="soft small">{say(`tone.contents.${take.contents}`)}</p>
    </>
  );
}
