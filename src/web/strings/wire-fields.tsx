import { useSay } from '../language/use-say.ts';
import { Field } from '../ui/field.tsx';
import { SelectField } from '../ui/select-field.tsx';
import { type WireForm, emptyWire } from './terms-draft.ts';

interface WireFieldsProps {
  readonly wires: readonly WireForm[];
  readonly errorOf: (path: string) => string | undefined;
  readonly onChange: (wires: readonly WireForm[]) => void;
}

const selects = { use: ['plain', 'core', 'wrap'], metal: ['steel', 'copper', 'iron'], shape: ['round', 'hex'] } as const;

/** The wire the shop has: by diameter, with what its certificate or a test break says. */
export function WireFields({ wires, errorOf, onChange }: WireFieldsProps) {
  const say = useSay();
  const change = (index: number, part: Partial<WireForm>): void => { onChange(wires.map((wire, place) => (place === index ? { ...wire, ...part } : wire))); };
  return (
    <fieldset className="wire-set">
      <legend>{say('scale.field.wires')}</legend>
      <p className="field-said">{say('strings.wires.about')}</p>
      <ol className="wires">
        {wires.map((wire, index) => {
          const path = `wires[${String(index)}]`;
          return (
            <li key={index}>
              <Field label={say('strings.wire.name')} value={wire.name} error={errorOf(`${path}.name`)} maxLength={60} onChange={(name) => { change(index, { name }); }} />
              {(['use', 'metal', 'shape'] as const).map((name) => (
                <SelectField<string> key={name} label={say(`strings.wire.${name}`)} value={wire[name]} options={selects[name].map((value) => ({ value, label: say(`strings.wire.${name}.${value}` as 'strings.wire.use.plain') }))} onChange={(value) => { change(index, { [name]: value }); }} />
              ))}
              <Field label={say('strings.wire.diameter')} inputMode="decimal" value={wire.diameterMm} error={errorOf(`${path}.diameterMm`)} onChange={(diameterMm) => { change(index, { diameterMm }); }} />
              <Field label={say('strings.wire.certificate')} inputMode="decimal" value={wire.certificateMPa} error={errorOf(`${path}.certificateMPa`)} onChange={(certificateMPa) => { change(index, { certificateMPa }); }} />
              <Field label={say('strings.wire.testBreak')} inputMode="decimal" value={wire.testBreakN} error={errorOf(`${path}.testBreakN`)} onChange={(testBreakN) => { change(index, { testBreakN }); }} />
              <button type="button" className="button button-quiet" aria-label={say('strings.wire.removeThis', { number: index + 1, name: wire.name })} onClick={() => { onChange(wires.filter((_, place) => place !== index)); }}>{say('pianos.section.remove')}</button>
            </li>
          );
        })}
      </ol>
      {wires.length < 300 && <button type="button" className="button" onClick={() => { onChange([...wires, emptyWire]); }}>{say('strings.wire.add')}</button>}
    </fieldset>
  );
}
