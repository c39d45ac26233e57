import { type KeyNumber, type QuantityName, type State, isQuantityName, states } from '#instrument';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { usePiano } from '../api/piano.tsx';
import { readKept, writeKept } from '../kept/kept.ts';
import { type WalkChoice, usualChoice } from './walk/walk-choice.ts';

/** A walk another page asks for in the address: at which key, for which figures, in which state. */
export interface WalkSearch {
  readonly state?: State;
  readonly key?: KeyNumber;
  /** Names of quantities, joined by commas. */
  readonly weigh?: string;
}

/** Reads what is asked out of an address; what is no walk is left out. */
export function walkSearchOf(search: Readonly<Record<string, unknown>>): WalkSearch {
  const state = states.find((one) => one === search['state']);
  const key = Number(search['key']);
  const weigh = typeof search['weigh'] === 'string' ? search['weigh'].split(',').filter(isQuantityName).join(',') : '';
  return { ...(state === undefined ? {} : { state }), ...(Number.isInteger(key) && key >= 1 ? { key } : {}), ...(weigh === '' ? {} : { weigh }) };
}

/** Turns to the walk the address asks for, once, and takes it out of the address. A figure typed and not yet taken stays where it is. */
export function useAskedWalk(): void {
  const { id, cycle } = usePiano();
  const asked = useSearch({ from: '/pianos/$pianoId/readings' });
  const navigate = useNavigate();
  const [isAsked] = useState(() => keepAsked(asked, id, cycle));
  useEffect(() => {
    if (isAsked) void navigate({ to: '.', search: ({ state: _state, key: _key, weigh: _weigh, ...rest }: WalkSearch & { readonly cycle?: number }) => rest, replace: true });
  }, [isAsked, navigate]);
}

function keepAsked({ state, key, weigh }: WalkSearch, id: string, cycle: number): boolean {
  if (state === undefined) return false;
  writeKept(sessionStorage, `wrestplank.state.${id}`, state);
  writeKept(sessionStorage, `wrestplank.mode.${id}`, 'walk');
  const place = `wrestplank.walk.${id}.${String(cycle)}.${state}`;
  const standing = readKept<{ readonly draft: string; readonly remark: string } | null>(sessionStorage, place, null);
  if (standing !== null && (standing.draft !== '' || standing.remark !== '')) return true;
  const quantities = (weigh ?? '').split(',').filter(isQuantityName) as readonly QuantityName[];
  const choice = readKept<WalkChoice>(sessionStorage, `${place}.choice`, usualChoice);
  writeKept(sessionStorage, `${place}.choice`, { ...choice, order: 'chromatic', fromKey: key ?? 1, quantities: quantities.length === 0 ? choice.quantities : quantities } satisfies WalkChoice);
  writeKept(sessionStorage, place, { key: key ?? 1, draft: '', remark: '' });
  return true;
}
