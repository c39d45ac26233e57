import { type QuantityName, leadNumbers, quantityNames, quantityOf } from '#instrument';
import { createSay, languages } from '#text';
import { parseMeasure } from '#units';
import { parseTarget, targetName } from './import-target.ts';
import { columnLetter, isBlankRow } from './table.ts';

/** Why a column is left out; words under `import.leftOut.<reason>`. */
export type LeftOutReason = 'unknown' | 'derived' | 'unit' | 'repeated' | 'unnamed';

/** What a column is taken to hold. */
export interface GuessedColumn {
  readonly letter: string;
  readonly header: string;
  /** A name `parseTarget` reads, or null to leave the column out. */
  readonly target: string | null;
  readonly reason: LeftOutReason | null;
  /** Unit the header names where it is not the one stored: holds for every bare number below. */
  readonly unit: string | null;
}

/** Spellings at the bench beside the names of the catalogue. @source PRACTICE */
const SPELLINGS: Readonly<Record<QuantityName, readonly string[]>> = {
  downWeightG: ['down', 'dw', 'nieder', 'spielgewicht', 'spielschwere'],
  upWeightG: ['up', 'uw', 'auf'],
  frontWeightG: ['front', 'fw', 'vorn'],
  hammerWeightG: ['hammer', 'hw'],
  wippenWeightG: ['wippen', 'hebeglied', 'hebegliedgewicht'],
  keyFrictionG: ['key friction', 'tastenreibung'],
  helperSpringG: ['helper spring', 'spring', 'hilfsfeder', 'feder'],
  keyFrontMm: ['key front'],
  keyBackMm: ['key back'],
  wippenHeelMm: ['wippen heel'],
  wippenJackMm: ['wippen jack'],
  rollerMm: ['roller'],
  hammerMm: ['hammer arm'],
  speakingLengthMm: ['length', 'speaking', 'länge', 'klingende länge'],
  stringCount: ['strings', 'strings per note', 'saiten', 'saiten je ton', 'chor'],
  wireDiameterMm: ['wire', 'diameter', 'core', 'core diameter', 'draht', 'drahtdurchmesser', 'kern', 'kerndurchmesser'],
  hexCoreMm: ['hex core', 'hex', 'sechskantkern', 'sechskant'],
  overallDiameterMm: ['overall', 'overall diameter', 'gesamtdurchmesser', 'außendurchmesser'],
  innerWrapMm: ['inner wrap', 'first wrap', 'innere umspinnung', 'unterspinnung'],
  outerWrapMm: ['outer wrap', 'wrap', 'cover wrap', 'umspinnung', 'äußere umspinnung'],
  bareFrontMm: ['bare front', 'blank vorn'],
  bareRearMm: ['bare rear', 'blank hinten'],
  stepFrontMm: ['step front', 'stufe vorn'],
  stepRearMm: ['step rear', 'stufe hinten'],
  pinTorqueNm: ['pin torque', 'torque', 'drehmoment', 'wirbeldrehmoment'],
  pitchOffsetCt: ['offset', 'cents', 'abweichung'],
  backLengthMm: ['back', 'back length', 'hinterlänge'],
  frontHeightMm: ['front height', 'höhe vorn'],
  bridgeHeightMm: ['bridge height', 'bridge', 'steghöhe', 'steg'],
  bridgeHeightUnloadedMm: ['bridge unloaded', 'steg unbelastet'],
  rearHeightMm: ['rear height', 'höhe hinten'],
  frontBearingDeg: ['front bearing', 'stegdruck vorn'],
  rearBearingDeg: ['rear bearing', 'stegdruck hinten'],
  bearingGaugeMm: ['gauge', 'bearing gauge', 'messuhr'],
  crownMm: ['crown', 'wölbung'],
  roomTemperatureC: ['temperature', 'temperatur'],
  roomHumidityPct: ['humidity', 'luftfeuchte'],
  ...leadSpellings(),
  keyMassG: ['key mass', 'key weight', 'tastenmasse', 'tastengewicht'],
  keyWidthMm: ['key width', 'tastenbreite'],
  keyFrontLengthMm: ['key front length', 'tastenlänge vorn'],
  keyBackLengthMm: ['key back length', 'tastenlänge hinten'],
  frontPinMm: ['front pin', 'vorderstift'],
  blowMm: ['blow', 'blow distance', 'steighöhe', 'hammerweg'],
  letOffMm: ['let off', 'letoff', 'auslösung'],
  dropMm: ['drop', 'abnick', 'nachfall'],
  dipMm: ['dip', 'key dip', 'tiefgang', 'tastentiefgang', 'spieltiefe'],
  aftertouchMm: ['aftertouch', 'after touch', 'nachdruck', 'nachspiel'],
  checkMm: ['check', 'checking', 'fang', 'fängerabstand'],
  keyLevelMm: ['level', 'key level', 'tastenhöhe', 'niveau'],
  sharpHeightMm: ['sharp height', 'sharps height', 'obertastenhöhe'],
  spreadMm: ['spread', 'action spread', 'achsabstand'],
  damperG: ['damper', 'dämpfer'],
  springTorqueGMm: ['spring torque', 'butt spring', 'federmoment'],
  strikeDistanceMm: ['strike', 'strike distance', 'strike point', 'anschlag', 'anschlaglinie'],
  boreMm: ['bore', 'boring distance', 'bohrmaß', 'bohrung'],
  rakeDeg: ['rake', 'neigung'],
  pitchHz: ['pitch', 'frequency', 'tonhöhe', 'frequenz'],
  unisonSpreadCt: ['unison spread', 'unison', 'chorstreuung'],
  unisonLineCount: ['unison lines', 'chorlinien'],
  inharmonicityB: ['inharmonicity', 'inharmonizität'],
  feltOverWoodMm: ['felt', 'felt over wood', 'filz', 'filz über holz'],
  stringHeightMm: ['string height', 'saitenhöhe'],
  hammerCentreHeightMm: ['hammer centre height', 'centre height', 'hammerachse'],
  balanceHeightMm: ['balance height', 'waagepunkthöhe'],
  capstanHeightMm: ['capstan height', 'pilotenhöhe'],
  wippenCentreHeightMm: ['wippen centre height', 'hebegliedachse'],
  jackTopHeightMm: ['jack top height', 'stoßzungenhöhe'],
  capstanDiameterMm: ['capstan diameter', 'pilotendurchmesser'],
  rollerDiameterMm: ['roller diameter', 'rollendurchmesser'],
  jackHeightMm: ['jack length', 'stoßzungenlänge'],
  jackToeMm: ['jack toe', 'stoßzungenarm'],
  jackOverlapMm: ['jack overlap', 'auflage der stoßzunge'],
};
const KEY_WORDS = ['key', 'key no', 'key #', 'key number', 'keys', 'no', 'nr', '#', 'number', 'taste', 'tasten', 'tasten nr', 'tastennr', 'tastennummer', 'nummer'];
const NOTE_WORDS = ['note', 'note name', 'ton', 'tonname'];
const REMARK_WORDS = ['remark', 'remarks', 'comment', 'comments', 'bemerkung', 'bemerkungen', 'anmerkung', 'kommentar', 'notiz'];
const DERIVED_WORDS = ['balance weight', 'balance', 'bw', 'balancegewicht', 'friction', 'friction weight', 'reibung', 'reibungsgewicht'];

/** @source PRACTICE */
function leadSpellings(): Readonly<Record<Extract<QuantityName, `lead${string}`>, readonly string[]>> {
  const entries = leadNumbers.flatMap((number) => [
    [`lead${String(number)}PositionMm`, [`lead ${String(number)}`, `blei ${String(number)}`]],
    [`lead${String(number)}DiameterMm`, [`lead ${String(number)} size`, `blei ${String(number)} durchmesser`]],
    [`lead${String(number)}BoreMm`, [`lead ${String(number)} drilled out`, `blei ${String(number)} ausgebohrt`]],
    [`lead${String(number)}DensityGPerCm3`, [`lead ${String(number)} density`, `blei ${String(number)} dichte`]],
  ]);
  return Object.fromEntries(entries) as ReturnType<typeof leadSpellings>;
}

let known: ReadonlyMap<string, string> | undefined;

/** Every spelling in plain form → the content it names; `derived` for figures that are worked out, never imported. */
function knownHeaders(): ReadonlyMap<string, string> {
  if (known !== undefined) return known;
  const words = new Map<string, string>();
  const learn = (target: string, spellings: readonly string[]): void => {
    for (const spelling of spellings) if (!words.has(plainForm(spelling))) words.set(plainForm(spelling), target);
  };
  for (const name of quantityNames) learn(name, [name, name.replace(/(?:GPerCm3|GMm|G|Mm|Ct|Deg|C|Pct)$/u, ''), ...SPELLINGS[name]]);
  learn('key', KEY_WORDS);
  learn('note', NOTE_WORDS);
  learn('remark', REMARK_WORDS);
  learn('derived', DERIVED_WORDS);
  for (const say of languages.map(createSay)) {
    for (const name of quantityNames) learn(name, [`quantity.${name}.name`, `quantity.${name}.short`].filter(say.knows).map((key) => say(key)));
  }
  known = words;
  return words;
}

/** Lower case, camel case and signs as spaces, accents away: `Down-Weight`, `down_weight` and `downWeight` are one. */
function plainForm(text: string): string {
  return text
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}#]+/gu, ' ')
    .trim();
}

/** A header and the unit it names in brackets or behind the word `in`: `DW [g]`, `Down weight (oz)`, `Niedergewicht in g`. */
function splitUnit(header: string): { readonly name: string; readonly unit: string | undefined } {
  const match = /^(?<name>.*?)\s*(?:[([](?<bracketed>[^)\]]*)[)\]]|(?:\bin|,|\/)\s+(?<spoken>\p{L}{1,3}))\s*$/u.exec(header);
  return { name: match?.groups?.['name'] ?? header, unit: match?.groups?.['bracketed']?.trim() ?? match?.groups?.['spoken'] };
}

/**
 * Guesses from its headers what each column holds: registry names with repeat, remark and basis, the catalogue's names in
 * every language, and usual spellings of the bench. The first column of a kind counts, a second one is left out and says so;
 * balance weight and friction are worked out and therefore left out. A column it does not know is left out, never an error.
 */
export function guessMapping(headers: readonly string[]): readonly GuessedColumn[] {
  const taken = new Set<string>();
  return headers.map((header, index) => {
    const column = { letter: columnLetter(index), header, unit: null };
    const leave = (reason: LeftOutReason): GuessedColumn => ({ ...column, target: null, reason });
    if (header.trim() === '') return leave('unnamed');
    const { target, unit } = recognise(header);
    if (target === undefined) return leave('unknown');
    if (target === 'derived') return leave('derived');
    const heading = unitOf(target, unit);
    if (!heading.fits) return leave('unit');
    if (taken.has(target)) return leave('repeated');
    taken.add(target);
    return { ...column, target, reason: null, unit: heading.unit };
  });
}

/** The unit a header names: null where it names none or the stored one; `fits` is false for a unit of another kind. */
interface HeaderUnit {
  readonly unit: string | null;
  readonly fits: boolean;
}

/** The unit a header names for a column of this content. */
export function headerUnit(header: string, target: string): HeaderUnit {
  return unitOf(target, splitUnit(header).unit);
}

function recognise(header: string): { readonly target: string | undefined; readonly unit: string | undefined } {
  const exact = parseTarget(header.trim());
  if (exact !== undefined) return { target: targetName(exact), unit: undefined };
  const whole = knownHeaders().get(plainForm(header));
  if (whole !== undefined) return { target: whole, unit: undefined };
  const { name, unit } = splitUnit(header);
  return { target: knownHeaders().get(plainForm(name)), unit };
}

function unitOf(target: string, word: string | undefined): HeaderUnit {
  const parsed = parseTarget(target);
  if (word === undefined || word === '' || parsed?.holds !== 'figure') return { unit: null, fits: true };
  const one = parseMeasure(`1 ${word}`, { unit: quantityOf(parsed.quantity).unit });
  if (!one.ok) return { unit: null, fits: one.issues.every(({ code }) => code !== 'unit') };
  return { unit: one.value.value === 1 ? null : word, fits: true };
}

/** How far down a header may stand: above it there are titles, never figures. */
const HEADER_WITHIN_ROWS = 20;

/**
 * Index of the header row: the first one near the top that names two columns or at least one; failing that, the first row
 * that is not blank if there is no figure in it. Null for a table that begins with figures: its columns go by their letters.
 */
export function headerRowOf(rows: readonly (readonly string[])[]): number | null {
  const top = rows.slice(0, HEADER_WITHIN_ROWS);
  const isKnown = (cell: string): boolean => cell.trim() !== '' && recognise(cell).target !== undefined;
  const namesAtLeast = (count: number): number => top.findIndex((cells) => cells.filter(isKnown).length >= count && !cells.some(isFigure));
  const named = [namesAtLeast(2), namesAtLeast(1)].find((index) => index >= 0);
  if (named !== undefined) return named;
  const first = top.findIndex((cells) => !isBlankRow(cells));
  return first >= 0 && !(top[first] ?? []).some(isFigure) ? first : null;
}

function isFigure(cell: string): boolean {
  return /^\s*[-+\u2212]?[\d.,]*\d[\d.,]*\s*\p{L}{0,2}\s*$/u.test(cell);
}
