import { type KeyNumber, noteNameOf } from '#instrument';
import type { ScaleAnalysis } from '#strings';
import { useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useSay } from '../../language/use-say.ts';
import { SelectField } from '../../ui/select-field.tsx';
import { runsOf } from './key-runs.ts';
import type { PartProps } from './part-props.ts';

/** The notes that keep the string they stand with: added from note to note, freed run by run. */
export function LockFields({ draft: { lockedKeys }, standing, onChange }: PartProps & { readonly standing: ScaleAnalysis }) {
  const say = useSay();
  const { compass } = usePiano();
  const strung = standing.notes.filter(({ wire, speakingLengthMm }) => wire !== undefined && speakingLengthMm !== undefined).map(({ key }) => key);
  const [from, setFrom] = useState<KeyNumber>(strung[0] ?? 1);
  const [to, setTo] = useState<KeyNumber>(strung[0] ?? 1);
  const options = strung.map((key) => ({ value: String(key), label: noteNameOf(compass, key) }));
  const keep = (): void => {
    const added = strung.filter((key) => key >= Math.min(from, to) && key <= Math.max(from, to));
    onChange({ lockedKeys: [...new Set([...lockedKeys, ...added])].toSorted((a, b) => a - b) });
  };
  const named = ([first, last]: readonly [KeyNumber, KeyNumber]): string => (first === last ? noteNameOf(compass, first) : `${noteNameOf(compass, first)}–${noteNameOf(compass, last)}`);
  return (
    <fieldset className="rescale-part">
      <legend>{say('rescale.locks')}</legend>
      {lockedKeys.length === 0 && <p className="soft small">{say('rescale.locks.none')}</p>}
      <ul className="rescale-locks">
        {runsOf(lockedKeys).map((run) => (
          <li key={run[0]}>
            <button type="button" className="button" onClick={() => { onChange({ lockedKeys: lockedKeys.filter((key) => key < run[0] || key > run[1]) }); }}>{say('rescale.locks.free', { notes: named(run) })}</button>
          </li>
        ))}
      </ul>
      <div className="rescale-fields">
        <SelectField label={say('rescale.locks.from')} value={String(from)} options={options} onChange={(key) => { setFrom(Number(key)); setTo(Math.max(Number(key), to)); }} />
        <SelectField label={say('rescale.locks.to')} value={String(to)} options={options} onChange={(key) => { setTo(Number(key)); }} />
      </div>
      <div><button type="button" className="button" disabled={strung.length === 0} onClick={keep}>{say('rescale.locks.keep')}</button></div>
    </fieldset>
  );
}
