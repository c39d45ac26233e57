import { type Millimetres, millimetres } from '#units';
import type { RegulationFloat, RegulationLevers, RegulationName } from './asked.ts';

/** What is turned, bent or packed at the bench, and which way. */
export const turnCodes = [
  'balanceThinner', 'balanceThicker', 'sharpThinner', 'sharpThicker', 'capstanUp', 'capstanDown', 'railNearer', 'railFarther', 'letOffLater', 'letOffEarlier',
  'dropLess', 'dropMore', 'frontThinner', 'frontThicker', 'checkNearer', 'checkFarther', 'lostMotion', 'follows',
] as const;
export type TurnCode = (typeof turnCodes)[number];

export interface Turn {
  readonly code: TurnCode;
  /** How far, where the lever arms tell. */
  readonly amountMm?: Millimetres;
}

/** What the turn of one figure depends on. */
export interface TurnsOf {
  readonly kind: 'grand' | 'upright';
  readonly floats: RegulationFloat | undefined;
  readonly levers: RegulationLevers | undefined;
}

/**
 * What to turn where a figure is off by `offMm`, above nought where it is too large. A capstan moves its hammer by W·H for each
 * millimetre; a balance punching moves the front edge by 1 + a_edge/back.
 * @source PRACTICE what sets which; OWN the amounts
 */
export function turnsFor(name: RegulationName, offMm: number, { kind, floats, levers }: TurnsOf): readonly Turn[] {
  const way = (high: TurnCode, low: TurnCode, perMm?: number): readonly Turn[] => [{ code: offMm > 0 ? high : low, ...(perMm === undefined ? {} : { amountMm: millimetres(Math.abs(offMm) / perMm) }) }];
  const capstan = (): readonly Turn[] => way('capstanUp', 'capstanDown', levers?.hammerPerCapstan);
  switch (name) {
    case 'keyLevelMm': return way('balanceThinner', 'balanceThicker', levelPerPunching(levers));
    case 'sharpHeightMm': return way('sharpThinner', 'sharpThicker', levelPerPunching(levers));
    case 'blowMm': return floats === 'blow' ? [{ code: 'follows' }] : kind === 'upright' ? way('railNearer', 'railFarther') : capstan();
    case 'letOffMm': return way('letOffLater', 'letOffEarlier');
    case 'dropMm': return way('dropLess', 'dropMore');
    case 'dipMm': return floats === 'dip' ? [{ code: 'follows' }] : way('frontThicker', 'frontThinner');
    case 'aftertouchMm': return floats === 'aftertouch' ? [{ code: 'follows' }] : floats === 'blow' ? blowOfAftertouch(kind, offMm) : way('frontThicker', 'frontThinner');
    case 'checkMm': return way('checkNearer', 'checkFarther');
  }
}

/** Too much aftertouch lets the blow grow, too little asks for less of it. */
function blowOfAftertouch(kind: TurnsOf['kind'], offMm: number): readonly Turn[] {
  if (kind === 'upright') return [{ code: offMm > 0 ? 'railFarther' : 'railNearer' }];
  return [{ code: offMm > 0 ? 'capstanDown' : 'capstanUp' }];
}

function levelPerPunching(levers: RegulationLevers | undefined): number | undefined {
  return levers?.keyBackLengthMm === undefined ? undefined : 1 + levers.keyEdgeMm / levers.keyBackLengthMm;
}

/** The order in which a key is regulated; what follows from the others is looked at after them. @source PRACTICE */
export function orderOfWork(kind: TurnsOf['kind'], floats: RegulationFloat | undefined): readonly RegulationName[] {
  const keys = ['keyLevelMm', 'sharpHeightMm'] as const;
  const [last] = [kind === 'upright' ? (['checkMm'] as const) : (['dropMm', 'checkMm'] as const)];
  switch (floats) {
    case 'dip': return [...keys, 'blowMm', 'letOffMm', 'aftertouchMm', 'dipMm', ...last];
    case 'blow': return [...keys, 'dipMm', 'letOffMm', 'aftertouchMm', 'blowMm', ...last];
    default: return [...keys, 'dipMm', 'blowMm', 'letOffMm', 'aftertouchMm', ...last];
  }
}
