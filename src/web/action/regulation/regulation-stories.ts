import type { RegulatedKey, RegulationLevers } from '#action';
import { type Compass, type QuantityName, type Reading, noteNameOf } from '#instrument';
import type { FigureStory } from '../../figure/figure-store.ts';
import type { StateRegulation } from './state-regulation.ts';

const READ = ['blowMm', 'letOffMm', 'dipMm'] as const satisfies readonly QuantityName[];
const OF_COLOUR = ['keyFrontMm'] as const satisfies readonly QuantityName[];

/** How the aftertouch that a key's blow, let-off and dip give was made; nothing where one of them is not known. */
export function givenAftertouchStory(what: string, key: RegulatedKey, { regulation, compass }: { readonly regulation: StateRegulation; readonly compass: Compass }): FigureStory | undefined {
  const levers = regulation.gathered.input.levers[key.colour];
  const { blowMm, letOffMm, dipMm } = key.read;
  if (levers === undefined || blowMm === undefined || letOffMm === undefined || dipMm === undefined) return undefined;
  return { title: `${what}, ${noteNameOf(compass, key.key)}`, operation: 'regulation', output: 'aftertouchMm', input: { ...leverFields(levers), letOffMm, blowMm, dipMm }, readings: readingsBehind(regulation, key) };
}

/** How the figure that floats was worked out for one register and colour. */
export function workedStory(what: string, { figures, worked, colour }: StateRegulation['analysis']['asked'][number], { gathered }: StateRegulation): FigureStory | undefined {
  const levers = gathered.input.levers[colour];
  if (levers === undefined || worked === undefined || figures.letOffMm === undefined) return undefined;
  const { blowMm, dipMm, aftertouchMm } = figures;
  const { [worked]: _, ...two } = { blowMm, dipMm, aftertouchMm };
  return { title: what, operation: 'regulation', output: worked, input: { ...leverFields(levers), letOffMm: figures.letOffMm, ...two } };
}

function leverFields({ distanceRatio, keyEdgeMm, keyFrontMm, lossMm }: RegulationLevers): Readonly<Record<string, number>> {
  return { distanceRatio, keyEdgeMm, keyFrontMm, lossMm };
}

function readingsBehind({ readings, state }: StateRegulation, { key, colour }: RegulatedKey): Readonly<Record<string, readonly Reading[]>> {
  const own = (quantity: QuantityName): readonly Reading[] => readings.filter((one) => one.quantity === quantity && one.state === state && one.scope === 'key' && one.index === key);
  const ofColour = (quantity: QuantityName): readonly Reading[] => readings.filter((one) => one.quantity === quantity && one.scope === 'colour' && one.index === (colour === 'natural' ? 0 : 1));
  return Object.fromEntries([...READ.map((name) => [name, own(name)] as const), ...OF_COLOUR.map((name) => [name, ofColour(name)] as const)].filter(([, list]) => list.length > 0));
}
