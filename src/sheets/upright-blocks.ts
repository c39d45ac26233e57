import { type AnalysedUpright, analyseUpright } from '#action';
import { type KeyNumber, compassOf } from '#instrument';
import { type Block, bare, noteRuns } from '#report';
import { uprightInputOf } from '#workshop';
import type { SheetMaterial } from './sheet.ts';

const CODES = ['noReturn', 'springWeak', 'springStrong', 'damperHeavy', 'damperLight', 'partsDiffer', 'slow'] as const satisfies readonly AnalysedUpright['findings'][number]['code'][];

/** Springs and dampers of an upright on the regulation sheet: what is asked, the keys with findings and what to do; nothing of a grand, or where none was read. */
export function uprightBlocksOf(material: SheetMaterial): readonly Block[] {
  const { say, instrument, readings, cycle, state, action, intent } = material;
  if (instrument.kind !== 'upright') return [];
  const { input, assumed } = uprightInputOf({ instrument, readings, cycle, state, terms: action, intent });
  if (!input.keys.some(({ read }) => read.springTorqueGMm !== undefined || read.damperG !== undefined)) return [];
  const keys = analyseUpright(input);
  const compass = compassOf(instrument);
  const asked = (value: number | undefined, unit: string): string => (value === undefined ? say('sheet.regulation.upright.median') : `${bare(value, material, { decimals: 1 })}\u00A0${unit}`);
  const items = CODES.flatMap((code) => {
    const having: readonly KeyNumber[] = keys.flatMap(({ key, findings }) => (findings.some((one) => one.code === code) ? [key] : []));
    return having.length === 0 ? [] : [`${say('sheet.regulation.keysOf', { what: say(`upright.finding.${code}`), count: having.length, notes: noteRuns(having, compass) })} ${say(`upright.do.${code}`)}.`];
  });
  return [
    { type: 'heading', level: 1, text: say('sheet.regulation.upright') },
    { type: 'paragraph', size: 'body', text: say('sheet.regulation.upright.asked', { spring: asked(input.asked.springTorqueGMm, 'g·mm'), damper: asked(input.asked.damperG, 'g') }) },
    items.length > 0 ? { type: 'list', items } : { type: 'paragraph', size: 'body', text: say('upright.found', { count: 0 }) },
    { type: 'list', items: assumed.map((what) => say(`upright.assumed.${what}`)) },
  ];
}
