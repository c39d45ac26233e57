import type { Instrument } from '#instrument';
import { surfaceNames } from '#materials';
import { checkInput } from '#operation';
import { type Issue, type Result, ok } from '#result';
import { type RoomDraft, type RoomFace, type RoomGiven, type RoomRecord, type RoomSide, type RoomStandard, roomDraftSchema, roomIssues } from '#workshop';
import { figureReader, shownFigure } from '../action/terms/typed-figures.ts';

/** A surface as chosen and typed: a row of the table, or `own` with six shares. */
export interface FaceForm {
  readonly surface: string;
  readonly own: string;
}

export interface ThingForm extends FaceForm {
  readonly words: string;
  readonly areaM2: string;
  /** `floor`, `ceiling`, or the number of a wall. */
  readonly on: string;
}

/** A room as typed; an empty text is not stated. */
export interface RoomForm {
  readonly name: string;
  readonly shape: 'box' | 'points';
  readonly lengthMm: string;
  readonly widthMm: string;
  /** One corner a line, its two figures apart. */
  readonly points: string;
  readonly heightMm: string;
  readonly floor: FaceForm;
  readonly ceiling: FaceForm;
  readonly walls: readonly FaceForm[];
  readonly things: readonly ThingForm[];
  readonly people: string;
  readonly temperatureC: string;
  readonly humidityPct: string;
  readonly use: string;
  readonly pianoLengthMm: string;
  readonly pianoXMm: string;
  readonly pianoYMm: string;
  readonly tailDeg: string;
  readonly loudness: 'none' | 'power' | 'reading';
  readonly powerDb: string;
  readonly levelDb: string;
  readonly distanceMm: string;
  readonly playerMm: string;
  readonly listenerMm: string;
  readonly hoursADay: string;
  readonly remark: string;
}

const OWN = 'own';
const face = (surface: string): FaceForm => ({ surface, own: '' });

type Cased = Pick<Instrument, 'lengthMm' | 'kind'>;
/** How deep uprights commonly are. @source PRACTICE */
const UPRIGHT_DEPTH_MM = 620;
/** How far the case reaches from the keys: a grand’s length, an upright’s depth. */
const caseLengthOf = ({ kind, lengthMm }: Cased): number | null => (kind === 'upright' ? UPRIGHT_DEPTH_MM : lengthMm);

/** A room to begin with: nothing of its size, plaster and boards to be changed. */
export function emptyRoom(instrument: Cased, locale: string): RoomForm {
  return {
    name: '', shape: 'box', lengthMm: '', widthMm: '', points: '', heightMm: '', floor: face('wood-on-joists'), ceiling: face('plaster-on-lath'), walls: [face('plaster-on-brick')], things: [],
    people: '', temperatureC: '', humidityPct: '', use: '', pianoLengthMm: shownFigure(caseLengthOf(instrument), locale), pianoXMm: '', pianoYMm: '', tailDeg: '0',
    loudness: 'none', powerDb: '', levelDb: '', distanceMm: '', playerMm: '', listenerMm: '', hoursADay: '', remark: '',
  };
}

/** The form that shows a room. */
export function roomFormOf(room: RoomRecord, instrument: Cased, locale: string): RoomForm {
  const shown = (value: number | null | undefined): string => shownFigure(value, locale);
  const faceForm = ({ surface, own }: RoomFace): FaceForm => (own === null ? face(surface ?? '') : { surface: OWN, own: own.map(shown).join(' ') });
  const { plan, piano, loudness } = room;
  return {
    name: room.name, shape: plan.shape, lengthMm: plan.shape === 'box' ? shown(plan.lengthMm) : '', widthMm: plan.shape === 'box' ? shown(plan.widthMm) : '',
    points: plan.shape === 'points' ? plan.points.map(({ alongMm, acrossMm }) => `${shown(alongMm)} ; ${shown(acrossMm)}`).join('\n') : '', heightMm: shown(room.heightMm),
    floor: faceForm(room.floor), ceiling: faceForm(room.ceiling), walls: room.walls.map(faceForm),
    things: room.things.map(({ words, face: of, areaM2, on }) => ({ ...faceForm(of), words, areaM2: shown(areaM2), on: String(on) })),
    people: room.people === 0 ? '' : shown(room.people), temperatureC: shown(room.temperatureC), humidityPct: shown(room.humidityPct), use: room.standard == null ? (room.use ?? '') : KEPT_STANDARD,
    pianoLengthMm: shown(piano?.lengthMm ?? caseLengthOf(instrument)), pianoXMm: shown(piano?.alongMm), pianoYMm: shown(piano?.acrossMm), tailDeg: String(piano?.tailDeg ?? 0),
    loudness: loudness === null ? 'none' : 'powerDb' in loudness ? 'power' : 'reading',
    powerDb: loudness !== null && 'powerDb' in loudness ? shown(loudness.powerDb) : '', levelDb: loudness !== null && 'levelDb' in loudness ? shown(loudness.levelDb) : '', distanceMm: loudness !== null && 'levelDb' in loudness ? shown(loudness.distanceMm) : '',
    playerMm: shown(room.playerMm), listenerMm: shown(room.listenerMm), hoursADay: shown(room.hoursADay), remark: room.remark,
  };
}

type Reader = ReturnType<typeof figureReader> & { readonly missing: Issue[] };

function needed(reader: Reader, typed: string, path: string, unit: 'mm' | '1' = 'mm'): number {
  if (typed.trim() === '') reader.missing.push({ code: 'required', path, given: typed, allowed: 'a figure', params: { kind: 'number' } });
  return reader.read(typed, path, unit) ?? 0;
}

/** Six shares typed in one field, apart by blanks or semicolons. */
function faceOf({ surface, own }: FaceForm, path: string, reader: Reader): { readonly surface: RoomFace['surface']; readonly own: number[] | null } {
  if (surface !== OWN) return { surface: surfaceNames.find((name) => name === surface) ?? null, own: null };
  const parts = own.trim().split(/[\s;]+/u).filter((part) => part !== '');
  if (parts.length !== 6) reader.missing.push({ code: 'range', path, given: own, allowed: 'six figures', params: { reason: 'sixShares', count: parts.length } });
  return { surface: null, own: parts.map((part) => reader.read(part, path, '1') ?? 0) };
}

/** Corners typed, one a line: two figures with a blank, a tab or a semicolon between. */
function pointsOf(typed: string, reader: Reader): { alongMm: number; acrossMm: number }[] {
  const lines = typed.split('\n').map((line) => line.trim()).filter((line) => line !== '');
  if (lines.length < 3) reader.missing.push({ code: 'range', path: 'points', given: lines.length, allowed: 'three corners or more', params: { reason: 'fewCorners', count: lines.length } });
  return lines.map((line) => {
    const parts = line.includes(';') || line.includes('\t') ? line.split(/[;\t]/u).map((part) => part.trim()).filter((part) => part !== '') : line.split(/\s+/u);
    if (parts.length !== 2) reader.missing.push({ code: 'format', path: 'points', given: line, allowed: 'two figures', params: { reason: 'corner' } });
    return { alongMm: reader.read(parts[0] ?? '', 'points', 'mm') ?? 0, acrossMm: reader.read(parts[1] ?? '', 'points', 'mm') ?? 0 };
  });
}

function loudnessOf(form: RoomForm, reader: Reader): RoomDraft['loudness'] {
  if (form.loudness === 'power') return { powerDb: needed(reader, form.powerDb, 'powerDb', '1') };
  if (form.loudness === 'reading') return { levelDb: needed(reader, form.levelDb, 'levelDb', '1'), distanceMm: needed(reader, form.distanceMm, 'distanceMm') };
  return null;
}

function pianoOf(form: RoomForm, reader: Reader): RoomDraft['piano'] {
  if (form.pianoXMm.trim() === '' && form.pianoYMm.trim() === '') return null;
  return { lengthMm: needed(reader, form.pianoLengthMm, 'pianoLengthMm'), alongMm: needed(reader, form.pianoXMm, 'pianoXMm'), acrossMm: needed(reader, form.pianoYMm, 'pianoYMm'), tailDeg: Number(form.tailDeg) as 0 };
}

/** Where the form keeps what the room keeps deeper. */
const FIELDS: Readonly<Record<string, string>> = { 'plan.lengthMm': 'lengthMm', 'plan.widthMm': 'widthMm', standard: 'use', 'loudness.powerDb': 'powerDb', 'loudness.levelDb': 'levelDb', 'loudness.distanceMm': 'distanceMm', 'piano.lengthMm': 'pianoLengthMm', 'piano.alongMm': 'pianoXMm', 'piano.acrossMm': 'pianoYMm' };
const atField = (issue: Issue): Issue => ({ ...issue, path: FIELDS[issue.path] ?? (issue.path.startsWith('plan.points') ? 'points' : issue.path.replace(/\.face\.(?:surface|own).*$/u, '').replace(/^(floor|ceiling|walls\[\d+\])\..*$/u, '$1')) });

/** What a room keeps beside its form, and the targets of the shop’s own it may choose from. */
export interface RoomBase {
  readonly cycle: number;
  readonly measured: RoomGiven['measured'];
  readonly locale: string;
  readonly standards?: readonly RoomStandard[];
  /** The one the room took over before. */
  readonly kept?: RoomStandard | null;
}

/** Says in the field of the use that the room goes by the target it took over before. */
export const KEPT_STANDARD = 'kept';
/** The same for one of the shop’s targets. */
export const standardChoice = ({ id }: Pick<RoomStandard, 'id'>): string => `own:${id}`;

/** The use or the target chosen. */
function aimOf(typed: string, { standards = [], kept }: Pick<RoomBase, 'standards' | 'kept'>, reader: Reader): Pick<RoomGiven, 'use' | 'standard'> {
  const own = typed === KEPT_STANDARD ? kept : standards.find((one) => standardChoice(one) === typed);
  if (own != null) return { use: null, standard: own };
  if (typed === KEPT_STANDARD || typed.startsWith('own:')) reader.missing.push({ code: 'choice', path: 'use', given: typed, allowed: 'a target the shop has', params: { choices: standards.map(({ name }) => name).join(', ') } });
  return { use: typed === '' ? null : (typed as RoomGiven['use']), standard: null };
}

/** The room a form states, or which fields are wrong. What was measured stays as it is. */
export function roomOf(form: RoomForm, { cycle, measured, locale, standards = [], kept = null }: RoomBase): Result<RoomGiven> {
  const reader: Reader = Object.assign(figureReader(locale), { missing: [] });
  const plan = form.shape === 'box' ? { shape: 'box' as const, lengthMm: needed(reader, form.lengthMm, 'lengthMm'), widthMm: needed(reader, form.widthMm, 'widthMm') } : { shape: 'points' as const, points: pointsOf(form.points, reader) };
  const walls = plan.shape === 'box' ? 4 : Math.max(3, plan.points.length);
  const draft: RoomDraft = {
    cycle, name: form.name, plan, heightMm: needed(reader, form.heightMm, 'heightMm'),
    floor: faceOf(form.floor, 'floor', reader), ceiling: faceOf(form.ceiling, 'ceiling', reader),
    walls: Array.from({ length: walls }, (_, index) => faceOf(wallAt(form, index), `walls[${String(index)}]`, reader)),
    things: form.things.map((thing, index) => ({ words: thing.words, face: faceOf(thing, `things[${String(index)}]`, reader), areaM2: needed(reader, thing.areaM2, `things[${String(index)}].areaM2`, '1'), on: sideOf(thing.on) })),
    people: reader.read(form.people, 'people', '1') ?? 0,
    temperatureC: reader.read(form.temperatureC, 'temperatureC', 'degC'), humidityPct: reader.read(form.humidityPct, 'humidityPct', 'pct'),
    ...aimOf(form.use, { standards, kept }, reader), piano: pianoOf(form, reader), loudness: loudnessOf(form, reader),
    playerMm: reader.read(form.playerMm, 'playerMm', 'mm'), listenerMm: reader.read(form.listenerMm, 'listenerMm', 'mm'), hoursADay: reader.read(form.hoursADay, 'hoursADay', '1'),
    measured, remark: form.remark,
  };
  const issues = [...reader.issues, ...reader.missing];
  if (issues.length > 0) return { ok: false, issues };
  const checked = checkInput(roomDraftSchema, draft);
  const wrong = checked.ok ? roomIssues(checked.value) : checked.issues;
  return checked.ok && wrong.length === 0 ? ok(checked.value) : { ok: false, issues: wrong.map(atField) };
}

/** The surface of a wall; walls beyond those chosen are as the last. */
export const wallAt = ({ walls }: Pick<RoomForm, 'walls'>, index: number): FaceForm => walls[index] ?? walls.at(-1) ?? face('plaster-on-brick');

const sideOf = (typed: string): RoomSide => (typed === 'floor' || typed === 'ceiling' ? typed : Number(typed));
