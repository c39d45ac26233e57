import { type Lead, type LeadBed, leadMassOf } from '#action';
import { type Compass, noteNameOf } from '#instrument';
import { type HoleUse, type Scene, type StripHole, keyStripScene } from '#plot';
import { type Block, type FigureBlock, asStated, bare } from '#report';
import { gramsPerCubicMillimetre, unitSign } from '#units';
import type { PlannedLead, PlannedLeads } from '#workshop';
import type { SheetMaterial } from './sheet.ts';

/** Drawing units to a millimetre of paper: a whole number, so that whole millimetres are drawn without rounding. */
const PX_PER_MM = 4;
/** What fits across both papers laid on their long side, inside the margins. */
const STRIP_MM = 263;
/** A key is some 22 mm high; a strip somewhat less can be laid on its side. @source PRACTICE */
const HEIGHT_MM = 14;
/** Strip beyond the outermost hole and behind the balance hole. */
const BEYOND_MM = 8;
const BEHIND_MM = 10;
/** Room the word of a joint takes before it. */
const JOIN_WORD_MM = 14;
/** Strips on a page under its check line. */
const ON_PAGE = 5;
/** Length of the line the scale is checked with. */
const CHECK_MM = 100;

/** A line of 100 mm between two ticks, to be held against a rule. */
export function checkLine({ say }: SheetMaterial): FigureBlock {
  const text = say('sheet.drilling.check', { mm: CHECK_MM });
  const [from, to, y] = [4 * PX_PER_MM, (4 + CHECK_MM) * PX_PER_MM, 20];
  const tick = (x: number) => ({ type: 'line', role: 'axis', x1: x, x2: x, y1: y - 6, y2: y + 6 } as const);
  const scene: Scene = {
    widthPx: (CHECK_MM + 130) * PX_PER_MM, heightPx: 30, title: text, description: text, columns: [],
    marks: [{ type: 'line', role: 'axis', x1: from, x2: to, y1: y, y2: y }, tick(from), tick(to), { type: 'text', role: 'label', x: to + 8, y: y + 4, text, anchor: 'start', sizePx: 11 }],
  };
  return { type: 'figure', scene, alt: text, caption: '', widthMm: CHECK_MM + 130 };
}

/** The strips of all keys, some to a page, each page with its line to check the scale. */
export function stripPages(keys: readonly PlannedLeads[], compass: Compass, material: SheetMaterial): readonly Block[] {
  const figures = keys.flatMap((key) => stripsOf(key, compass, material));
  const pages = Array.from({ length: Math.ceil(figures.length / ON_PAGE) }, (_, page) => figures.slice(page * ON_PAGE, (page + 1) * ON_PAGE));
  return pages.flatMap((strips): readonly Block[] => [{ type: 'pageBreak' }, checkLine(material), ...strips]);
}

interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
}

/** The stretch of a key its strip covers, in pieces that fit the paper, cut clear of every hole. */
function piecesOf({ leads, plugs, keyFrontLengthMm }: Pick<PlannedLeads, 'leads' | 'plugs' | 'keyFrontLengthMm'>, widthMm = STRIP_MM): readonly Stretch[] {
  const holes = [...leads, ...plugs];
  const fromMm = Math.min(-BEHIND_MM, ...holes.map(({ positionMm, diameterMm }) => positionMm - diameterMm / 2 - BEYOND_MM));
  const least = Math.max(60, ...holes.map(({ positionMm, diameterMm }) => positionMm + diameterMm / 2 + BEYOND_MM));
  const edge = keyFrontLengthMm === undefined ? least : keyFrontLengthMm + 1;
  const toMm = edge - fromMm <= widthMm ? Math.max(edge, least) : least;
  return cutUp({ fromMm, toMm }, holes.map(({ positionMm, diameterMm }): Stretch => ({ fromMm: positionMm - diameterMm / 2 - 1, toMm: positionMm + diameterMm / 2 + 1 })), widthMm);
}

function cutUp({ fromMm, toMm }: Stretch, holes: readonly Stretch[], widthMm: number): readonly Stretch[] {
  if (toMm - fromMm <= widthMm) return [{ fromMm, toMm }];
  let cut = fromMm + widthMm;
  for (let hole = holes.find((one) => one.fromMm < cut && one.toMm > cut); hole !== undefined && hole.fromMm > fromMm; hole = holes.find((one) => one.fromMm < cut && one.toMm > cut)) cut = hole.fromMm;
  return [{ fromMm, toMm: cut }, ...cutUp({ fromMm: cut, toMm }, holes, widthMm)];
}

function stripsOf(key: PlannedLeads, compass: Compass, material: SheetMaterial): readonly FigureBlock[] {
  const { say } = material;
  const pieces = piecesOf(key);
  const holes = holesOf(key, material);
  return pieces.map((piece, index) => {
    const joins = [...(index > 0 ? [{ mm: piece.fromMm, atMm: piece.fromMm, number: index }] : []), ...(index < pieces.length - 1 ? [{ mm: piece.toMm, atMm: piece.toMm - JOIN_WORD_MM, number: index + 1 }] : [])];
    const title = titleOf(key, compass, material, index === 0);
    const here = holes.filter(({ positionMm }) => positionMm >= piece.fromMm && positionMm < piece.toMm);
    const described = here.map(({ lines }) => lines.join(' ')).join('; ');
    const scene = keyStripScene({
      ...piece, holes: here, keepOutsMm: key.keepOutsMm, frontMm: key.keyFrontLengthMm, heightMm: HEIGHT_MM, pxPerMm: PX_PER_MM, title, description: described, lineCount: 4,
      signs: [{ atMm: 0, text: say('sheet.drilling.datum') }, { atMm: Math.max(28, piece.fromMm + 20), text: title }, ...joins.map(({ atMm, number }) => ({ atMm, text: say('sheet.drilling.join', { number }) }))],
      joinsMm: joins.map(({ mm }) => mm),
    });
    return { type: 'figure', scene, alt: `${title}. ${described}`, caption: '', widthMm: piece.toMm - piece.fromMm };
  });
}

function titleOf({ key, effect, measuredFrontWeightG: before }: PlannedLeads, compass: Compass, material: SheetMaterial, isWhole: boolean): string {
  const { say } = material;
  const name = say('sheet.drilling.key', { note: noteNameOf(compass, key), key });
  const weight = (value: number): string => bare(value, material, { decimals: 1 });
  return !isWhole || effect === undefined || before === undefined ? name : `${name} \u00B7 ${say('sheet.drilling.frontWeight', { before: weight(before), after: weight(effect.frontWeightG) })}`;
}

/** The holes of a key with what is to be done to each. */
function holesOf({ leads, plugs, bed }: PlannedLeads, material: SheetMaterial): readonly StripHole[] {
  const { say } = material;
  const hole = (lead: Lead, use: HoleUse): StripHole => ({
    ...lead, use,
    lines: [
      say(`leads.use.${use}`), `\u2300\u00A0${asStated(lead.diameterMm, material)}${lead.boreMm === undefined ? '' : ` ${say('leads.bored.short', { bore: asStated(lead.boreMm, material) })}`}`, `${asStated(Number(lead.positionMm.toFixed(3)), material)}\u00A0mm`,
      ...(use === 'plug' || bed === undefined ? [] : [`${bare(metalOf(lead, bed), material, { decimals: 1 })}\u00A0g${lead.densityGPerMm3 === undefined ? '' : `, ${densityOf(lead.densityGPerMm3, material)}`}`]),
    ],
  });
  return [...leads.map((lead) => hole(lead, useOf(lead))), ...plugs.map((lead) => hole(lead, 'plug'))];
}

/** A density as metal is sold by, in g/cm³. */
export function densityOf(gPerMm3: number, material: SheetMaterial): string {
  return `${asStated(Number((gPerMm3 * 1000).toPrecision(12)), material)}\u00A0${unitSign.gcm3}`;
}

/** What is to be done for a lead. */
export function useOf({ hole, isTrimmed, isExchanged }: PlannedLead): HoleUse {
  if (hole === 'new') return 'new';
  if (isExchanged) return 'exchange';
  return isTrimmed ? 'trim' : 'refill';
}

/** The metal of a lead itself, without the wood drilled out for it: what the scale shows. */
export function metalOf(lead: Lead, bed: LeadBed): number {
  return leadMassOf(lead, { ...bed, woodDensityGPerMm3: gramsPerCubicMillimetre(0) });
}
