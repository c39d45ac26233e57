import type { Reading } from '#instrument';
import { type Say, isMessageKey } from '#text';
import { sayMaybe, useLocale, useMoments, useSay } from '../language/use-say.ts';
import { printField } from './print-field.ts';

interface FieldRowsProps {
  readonly fields: Readonly<Record<string, unknown>>;
  readonly readings?: Readonly<Record<string, readonly Reading[]>> | undefined;
  /** The field to be told apart from the rest. */
  readonly strong?: string | undefined;
}

/** Fields of an operation by name, value and unit, each with the readings it came from. */
export function FieldRows({ fields, readings = {}, strong }: FieldRowsProps) {
  const say = useSay();
  const locale = useLocale();
  return (
    <table className="field-rows">
      <tbody>
        {Object.entries(fields).map(([name, value]) => (
          <tr key={name} className={name === strong ? 'field-rows-strong' : undefined}>
            <th scope="row">{fieldName(name, say)}</th>
            <td>
              <Value name={name} value={value} locale={locale} />
              {readings[name]?.map((reading) => <Provenance key={reading.id} reading={reading} />)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function fieldName(name: string, say: Say): string {
  const key = [`quantity.${name}.name`, `field.${name}`].find(isMessageKey);
  return key === undefined ? name : say(key);
}

/** A figure, or for a group of fields the group's own rows. */
function Value({ name, value, locale }: { readonly name: string; readonly value: unknown; readonly locale: string }) {
  const isGroup = typeof value === 'object' && value !== null && !Array.isArray(value);
  return isGroup ? <FieldRows fields={value as Readonly<Record<string, unknown>>} /> : printField(name, value, locale);
}

/** What was typed, when, and whether it was measured. */
function Provenance({ reading }: { readonly reading: Reading }) {
  const say = useSay();
  const moment = useMoments();
  return (
    <div className="soft small">
      {say('shell.figure.typed', { typed: reading.typed ?? '–', at: moment(reading.at), basis: sayMaybe(say, `basis.${reading.basis}`) })}
      {reading.remark !== '' && ` · ${reading.remark}`}
    </div>
  );
}
