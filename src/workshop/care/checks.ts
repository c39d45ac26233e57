import type { Issue } from '#result';
import type { z } from 'zod';
import { notBefore } from '../shop/checks.ts';
import type { careDraftSchema } from './records.ts';

/** What of a card does not go together: a band upside down, a life that ends before it begins, half a measurement, days in the wrong order. */
export function careIssues(card: z.output<typeof careDraftSchema>): readonly Issue[] {
  switch (card.kind) {
    case 'air': return [];
    case 'plan': return [
      ...(card.lowPct < card.highPct ? [] : [moreThan('highPct', card.highPct, card.lowPct)]),
      ...card.lives.flatMap(({ from, to }, index): readonly Issue[] => (from <= to ? [] : [{ code: 'order', path: `lives[${String(index)}].to`, given: to, allowed: `${String(from)} or more`, params: { reason: 'atLeast', atLeast: from } }])),
      ...twice(card.lives.map(({ part }) => part)),
    ];
    case 'move': return [...halfMeasured(card.arrival), ...notBefore('after.on', card.after?.on, card.before?.on), ...uneven(card)];
  }
}

function moreThan(path: string, given: number, above: number): Issue {
  return { code: 'order', path, given, allowed: `more than ${String(above)}`, params: { reason: 'moreThan', above } };
}

function twice(parts: readonly string[]): readonly Issue[] {
  return parts.flatMap((part, index): readonly Issue[] => (parts.indexOf(part) === index ? [] : [{ code: 'duplicate', path: `lives[${String(index)}].part`, given: part, allowed: 'each part once' }]));
}

function halfMeasured(arrival: { readonly laterC: number | null; readonly betweenHours: number | null } | null): readonly Issue[] {
  if (arrival === null || (arrival.laterC === null) === (arrival.betweenHours === null)) return [];
  return [{ code: 'required', path: arrival.laterC === null ? 'arrival.laterC' : 'arrival.betweenHours', given: null, allowed: 'both the later temperature and the hours between, or neither', params: { kind: 'number' } }];
}

/** The heaviest leg carries at least an even share. */
function uneven({ legs, heaviestPct }: { readonly legs: number; readonly heaviestPct: number }): readonly Issue[] {
  const least = Number((100 / legs).toFixed(1));
  return heaviestPct >= least - 0.1 ? [] : [{ code: 'range', path: 'heaviestPct', given: heaviestPct, allowed: `at least ${String(least)}, an even share of ${String(legs)} legs`, params: { min: least, max: 100, unit: '%' } }];
}
