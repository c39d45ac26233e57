import { type QuantityName, isQuantityName } from '#instrument';

/** What one column of a table holds. A figure's remark and basis stand in columns of their own. */
export type ColumnTarget =
  | { readonly holds: 'key' | 'note' | 'remark' }
  | { readonly holds: 'figure' | 'figureRemark' | 'figureBasis'; readonly quantity: QuantityName; readonly repeat: number };

const FIGURE = /^(?<quantity>\w+?)(?:#(?<repeat>[1-9]\d?))?(?: (?<facet>remark|basis))?$/u;

/**
 * Reads the name of a column's content: `key`, `note`, `remark`, `downWeightG`, `downWeightG#2` for the second weighing,
 * `downWeightG remark`, `downWeightG basis`; `undefined` for anything else.
 */
export function parseTarget(name: string): ColumnTarget | undefined {
  if (name === 'key' || name === 'note' || name === 'remark') return { holds: name };
  const { quantity = '', repeat = '1', facet } = FIGURE.exec(name)?.groups ?? {};
  if (!isQuantityName(quantity)) return undefined;
  const holds = facet === 'remark' ? 'figureRemark' : facet === 'basis' ? 'figureBasis' : 'figure';
  return { holds, quantity, repeat: Number(repeat) };
}

/** The name `parseTarget` reads back: also the header an export writes. */
export function targetName(target: ColumnTarget): string {
  if (!('quantity' in target)) return target.holds;
  const facet = target.holds === 'figureRemark' ? ' remark' : target.holds === 'figureBasis' ? ' basis' : '';
  return `${target.quantity}${target.repeat > 1 ? `#${String(target.repeat)}` : ''}${facet}`;
}
