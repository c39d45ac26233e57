import { type QuantityName, type Reading, type State, keyOfNote, keyCountOf, quantityNames, quantityOf, states } from '#instrument';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { call } from '../api/client.ts';
import { usePiano } from '../api/piano.tsx';
import { sayMaybe, useLocale, useMoments, useSay } from '../language/use-say.ts';
import { useWriter } from '../people/use-writer.ts';
import { ProblemNote } from '../shell/problem-note.tsx';
import { Choice } from '../ui/choice.tsx';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import { sayReading } from './say-event.ts';

/** Every reading ever kept at one place, the superseded and withdrawn ones too. */
export function HistoryLookup() {
  const say = useSay();
  const { id, cycle, compass } = usePiano();
  const [state, setState] = useState<State>('found');
  const [quantity, setQuantity] = useState<QuantityName>('downWeightG');
  const [typed, setTyped] = useState('');
  const { scope } = quantityOf(quantity);
  const key = keyOfNote(compass, typed) ?? (/^\d+$/u.test(typed) ? Number(typed) : undefined);
  const index = scope === 'key' ? key : scope === 'colour' ? (typed === 'sharp' ? 1 : 0) : 0;
  const isThere = index !== undefined && (scope !== 'key' || (index >= 1 && index <= keyCountOf(compass)));
  return (
    <div className="history">
      <Choice label={say('story.history.state')} value={state} options={states.map((value) => ({ value, label: say(`state.${value}`) }))} onChange={setState} />
      <div className="fields">
        <SelectField
          label={say('story.history.quantity')}
          value={quantity}
          options={quantityNames.map((value) => ({ value, label: sayMaybe(say, `quantity.${value}.name`) }))}
          onChange={(next) => { setQuantity(next); setTyped(''); }}
        />
        {scope === 'key' && <Field label={say('story.history.key')} value={typed} onChange={setTyped} hint={say('story.history.key.hint')} error={typed === '' || isThere ? undefined : say('story.history.key.none')} />}
        {scope === 'colour' && (
          <SelectField
            label={say('story.history.colour')}
            value={typed === 'sharp' ? 'sharp' : 'natural'}
            options={[{ value: 'natural', label: say('colour.natural') }, { value: 'sharp', label: say('colour.sharp') }]}
            onChange={setTyped}
          />
        )}
      </div>
      {isThere && <HistoryRows id={id} cycle={cycle} state={state} quantity={quantity} index={index} />}
    </div>
  );
}

interface HistoryRowsProps {
  readonly id: string;
  readonly cycle: number;
  readonly state: State;
  readonly quantity: QuantityName;
  readonly index: number;
}

function HistoryRows({ id, cycle, state, quantity, index }: HistoryRowsProps) {
  const say = useSay();
  const locale = useLocale();
  const moment = useMoments();
  const writer = useWriter();
  const { compass } = usePiano();
  const query = { cycle: String(cycle), state, quantity, index: String(index) };
  const { data, error } = useQuery({
    queryKey: ['piano', id, 'history', query],
    queryFn: ({ signal }) => call('readingHistory', { params: { id }, query, signal }).then(({ readings }) => readings),
  });
  if (error !== null) return <ProblemNote problem={error} />;
  if (data?.length === 0) return <p className="soft">{say('story.history.none')}</p>;
  return (
    <ol className="event-list">
      {data?.map((reading) => (
        <li key={reading.id} className={reading.standing ? 'event' : 'event event-undone'}>
          <div className="event-what">
            <span>
              <strong>{sayReading(reading, { say, locale, compass })}</strong> {reading.typed !== null && <span className="soft">{say('story.history.typed', { typed: reading.typed })}</span>}
              {reading.repeat > 1 && ` ${say('story.place.repeat', { repeat: reading.repeat })}`}
            </span>
            <span className="soft small">
              {moment(reading.at)} · {writer(reading.by)} · {say(reading.standing ? 'story.history.standing' : reading.withdrawn ? 'story.history.withdrawn' : 'story.history.superseded')}
              {heldFor(reading) && ` · ${say('story.history.typedAt', { at: moment(reading.typedAt ?? reading.at) })}`}
              {reading.remark !== '' && ` · ${reading.remark}`}
            </span>
          </div>
        </li>
      ))}
    </ol>
  );
}

/** A device that sends at once needs no second time told. */
const AT_ONCE_MS = 60_000;

/** True where a figure stood on a device for a while before it was acknowledged. */
function heldFor({ at, typedAt = at }: Reading): boolean {
  return Date.parse(at) - Date.parse(typedAt) > AT_ONCE_MS;
}
