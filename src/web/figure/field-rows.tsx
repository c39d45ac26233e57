import type { Reading } from '#instrument';
import { type Say, isMessageKey } from '#text';
import { useLocale, useSay } from '../language/use-say.ts';
import { printField } from './print-field.ts';
import { Provenance } from './provenance.tsx';

interface FieldRowsProps {
  readonly fields: Readonly<Record<string, unknown>>;
  readonly readings?: Readonly<Record<string, readonly Reading[]>> | undefined;
  /** The field to be told apart from the rest, here or in a group. */
  readonly strong?: string | undefined;
}

/** Fields of an operation in words, with the name scripts know them by, each with the readings it came from. */
export function FieldRows({ fields, readings = {}, strong }: FieldRowsProps) {
  const say = useSay();
  return (
    <table className="field-rows">
      <tbody>
        {Object.entries(fields).filter(([, value]) => value !== undefined).map(([name, value]) => (
          <tr key={name} className={name === strong ? 'field-rows-strong' : undefined}>
            <th scope="row">
              {fieldName(name, say)} <code className="field-raw">{name}</code>
            </th>
            <td>
              <Value name={name} value={value} strong={strong} />
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

/** A figure, or for a group of fields the group's own rows; for a list of groups the rows of each. */
function Value({ name, value, strong }: { readonly name: string; readonly value: unknown; readonly strong: string | undefined }) {
  const say = useSay();
  const locale = useLocale();
  if (isGroup(value)) return <FieldRows fields={value} strong={strong} />;
  if (Array.isArray(value) && value.length > 0 && value.every(isGroup)) return <Groups groups={value} strong={strong} />;
  const wordOf = (text: string): string => {
    const key = [`cause.${text}`, `remedy.${text}`].find(isMessageKey);
    return key === undefined ? text : say(key);
  };
  return printField(name, value, locale, wordOf);
}

const MOST_OPEN = 3;

/** The rows of each group; many are folded away until asked for. */
function Groups({ groups, strong }: { readonly groups: readonly Readonly<Record<string, unknown>>[]; readonly strong: string | undefined }) {
  const say = useSay();
  const rows = groups.map((group, index) => <FieldRows key={index} fields={group} strong={strong} />);
  if (groups.length <= MOST_OPEN) return rows;
  return (
    <details>
      <summary>{say('shell.figure.entries', { count: groups.length })}</summary>
      {rows}
    </details>
  );
}

function isGroup(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
