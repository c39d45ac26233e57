import { unitSign, type UnitId } from '#units';
import { type Outcome, type QuantityName, type Reading, outcomes, quantityOf } from '#instrument';
import { useMemo } from 'react';
import { decimalsOfB } from '../language/decimals-of-b.ts';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import type { DerivedName, GridColumn } from './grid/grid-columns.ts';
import { type OutcomeWords, outcomeWords } from './sheet/understand-cell.ts';

/** Figures and columns of the readings page in the reader's words. */
export interface Words {
  /** A value with at least the quantity's decimals, and more where more was typed. */
  readonly figure: (quantity: QuantityName, value: number, withUnit?: boolean) => string;
  readonly reading: (reading: Reading) => string;
  /** A figure worked out beside the readings. */
  readonly derived: (name: DerivedName, value: number, withUnit?: boolean) => string;
  /** Sign of a column's unit. */
  readonly unit: (column: GridColumn) => string;
  readonly column: (column: GridColumn) => string;
  readonly columnShort: (column: GridColumn) => string;
  /** Bounds as printed: `35 g`. */
  readonly range: (quantity: QuantityName, bounds: 'plausible' | 'possible') => { readonly low: string; readonly high: string };
  /** Words that may be typed for an outcome. */
  readonly outcomes: OutcomeWords;
}

/** Decimals a value needs so that nothing typed is rounded away on screen; at most three more than usual. */
function decimalsFor(value: number, usual: number): number {
  const digits = /\.(\d+)$/u.exec(String(value))?.[1]?.length ?? 0;
  return digits > usual ? Math.min(digits, usual + 3) : Number.isInteger(value) && usual <= 1 ? 0 : usual;
}

/** Unit and decimals of what is worked out; of an inharmonicity three figures. */
const derivedForm: Readonly<Record<DerivedName, { readonly unit: UnitId; readonly decimals: (value: number) => number }>> = {
  balanceWeightG: { unit: 'g', decimals: (value) => (Number.isInteger(value * 10) ? 1 : 2) },
  frictionG: { unit: 'g', decimals: (value) => (Number.isInteger(value * 10) ? 1 : 2) },
  tensionN: { unit: 'N', decimals: () => 0 },
  breakingPct: { unit: 'pct', decimals: () => 1 },
  inharmonicityB: { unit: '1', decimals: decimalsOfB },
  frontDeg: { unit: 'deg', decimals: () => 2 },
  rearDeg: { unit: 'deg', decimals: () => 2 },
  totalDeg: { unit: 'deg', decimals: () => 2 },
  forceN: { unit: 'N', decimals: () => 1 },
};

export function useWords(): Words {
  const say = useSay();
  const print = useFigures();
  const locale = useLocale();
  return useMemo((): Words => {
    const figure: Words['figure'] = (quantity, value, withUnit = false) => {
      const { unit, decimals } = quantityOf(quantity);
      return print(value, decimalsFor(value, decimals), withUnit ? unit : undefined);
    };
    const nameOf = (column: GridColumn, form: 'name' | 'short'): string => {
      if (column.kind === 'derived') return say(form === 'short' ? `readings.derived.${column.id}.short` : `readings.derived.${column.id}`);
      const quantity = say(`quantity.${column.quantity}.${form}`);
      return column.repeats === 1 ? quantity : form === 'short' ? `${quantity} ${String(column.repeat)}` : say('readings.column.repeat', { quantity, repeat: column.repeat });
    };
    return {
      figure,
      reading: ({ quantity, value, outcome }) => (outcome !== null ? say(`outcome.${outcome}`) : value === null ? '' : figure(quantity, value)),
      derived: (name, value, withUnit = false) => print(value, derivedForm[name].decimals(value), withUnit ? derivedForm[name].unit : undefined),
      unit: (column) => unitSign[column.kind === 'derived' ? derivedForm[column.id].unit : quantityOf(column.quantity).unit],
      column: (column) => nameOf(column, 'name'),
      columnShort: (column) => nameOf(column, 'short'),
      range: (quantity, bounds) => {
        const [low, high] = quantityOf(quantity)[bounds];
        return { low: figure(quantity, low), high: figure(quantity, high, true) };
      },
      outcomes: outcomeWords(outcomes.flatMap((outcome): [Outcome, string][] => [[outcome, say(`outcome.${outcome}`)], [outcome, say(`readings.walk.outcome.${outcome}`)]])),
    };
    // eslint-disable-next-line react-hooks/exhaustive-deps -- print follows the locale
  }, [say, locale]);
}
