import type { Say } from '#text';
import { useState } from 'react';
import { useLocale, useSay } from '../language/use-say.ts';
import type { Origin } from './figure-store.ts';
import { OriginLines } from './origin-lines.tsx';
import { printField } from './print-field.ts';

interface FieldRowsProps {
  readonly fields: Readonly<Record<string, unknown>>;
  /** Where inputs came from, by their path. */
  readonly origins?: Readonly<Record<string, Origin>> | undefined;
  /** Path of the group these fields are in, such as `notes[3].`. */
  readonly path?: string;
  /** The field to be told apart from the rest, here or in a group. */
  readonly strong?: string | undefined;
}

/** Fields of an operation in words, with the name scripts know them by, each with where it came from. */
export function FieldRows({ fields, origins = {}, path = '', strong }: FieldRowsProps) {
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
              <Value name={name} value={value} origins={origins} path={`${path}${name}`} strong={strong} />
              <OriginLines origin={origins[`${path}${name}`] ?? {}} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function fieldName(name: string, say: Say): string {
  const key = [`quantity.${name}.name`, `field.${name}`].find(say.knows);
  return key === undefined ? name : say(key);
}

interface ValueProps {
  readonly name: string;
  readonly value: unknown;
  readonly origins: Readonly<Record<string, Origin>>;
  readonly path: string;
  readonly strong: string | undefined;
}

/** A figure, or for a group of fields the group's own rows; for a list of groups, or of figures with origins of their own, the rows of each. */
function Value({ name, value, origins, path, strong }: ValueProps) {
  const say = useSay();
  const locale = useLocale();
  if (isGroup(value)) return <FieldRows fields={value} origins={origins} path={`${path}.`} strong={strong} />;
  if (Array.isArray(value) && value.length > 0 && value.every(isGroup)) return <Groups groups={value} origins={origins} path={path} strong={strong} />;
  const wordOf = (text: string): string => {
    const key = [`cause.${text}`, `remedy.${text}`].find(say.knows);
    return key === undefined ? text : say(key);
  };
  const print = (one: unknown): string => printField(name, one, locale, wordOf);
  if (!Array.isArray(value) || origins[`${path}[0]`] === undefined) return print(value);
  return <><span>{print(value)}</span><Entries values={value} origins={origins} path={path} print={print} /></>;
}

interface EntriesProps extends Pick<ValueProps, 'origins' | 'path'> {
  readonly values: readonly unknown[];
  readonly print: (value: unknown) => string;
}

/** Every figure of a list with where it came from, folded away until asked for. */
function Entries({ values, origins, path, print }: EntriesProps) {
  const say = useSay();
  return (
    <details>
      <summary>{say('shell.figure.entries', { count: values.length })}</summary>
      <ul className="plain-list">
        {values.map((value, index) => {
          const origin = origins[`${path}[${String(index)}]`] ?? {};
          return (
            <li key={index}>
              {origin.key !== undefined && <span className="soft">{say('shell.figure.key', { key: origin.key })} </span>}
              {print(value)}
              <OriginLines origin={origin} />
            </li>
          );
        })}
      </ul>
    </details>
  );
}

const MOST_OPEN = 3;
/** More groups than this are not even drawn until asked for. */
const MOST_DRAWN = 60;

/** The rows of each group; many are folded away until asked for. */
function Groups({ groups, origins, path, strong }: Pick<ValueProps, 'origins' | 'path' | 'strong'> & { readonly groups: readonly Readonly<Record<string, unknown>>[] }) {
  const say = useSay();
  const [isAsked, setAsked] = useState(false);
  const isDrawn = isAsked || groups.length <= MOST_DRAWN;
  const rows = (isDrawn ? groups : []).map((group, index) => {
    const place = `${path}[${String(index)}]`;
    const key = origins[place]?.key;
    return (
      <div key={index}>
        {key !== undefined && <p className="soft">{say('shell.figure.key', { key })}</p>}
        <FieldRows fields={group} origins={origins} path={`${place}.`} strong={strong} />
      </div>
    );
  });
  if (groups.length <= MOST_OPEN) return rows;
  return (
    <details onToggle={(event) => { if (event.currentTarget.open) setAsked(true); }}>
      <summary>{say('shell.figure.entries', { count: groups.length })}</summary>
      {rows}
    </details>
  );
}

function isGroup(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
