import { type Result, map, ok, refuse } from '#result';
import { plainFiguresOf } from './plain-string.ts';
import type { NoteFigures, ScaleNote, ScaleWire } from './scale.ts';
import { stringUncertaintyOf } from './string-uncertainty.ts';
import type { StrengthModel } from './wire-strength.ts';
import { type WoundString, tooStiff, woundFiguresOf } from './wound-string.ts';

/** What the figures of a note follow from, and nothing else. */
export interface NoteQuestion extends Pick<ScaleNote, 'frequencyHz' | 'doubt' | 'certificateMPa'> {
  readonly speakingLengthMm: NonNullable<ScaleNote['speakingLengthMm']>;
  readonly wire: ScaleWire;
  readonly strengthModel?: StrengthModel;
}

/** The question a note puts; `undefined` while its length or its wire is not known. */
export function questionOf({ frequencyHz, speakingLengthMm, wire, doubt, certificateMPa }: ScaleNote, strengthModel?: StrengthModel): NoteQuestion | undefined {
  if (speakingLengthMm === undefined || wire === undefined) return undefined;
  return {
    frequencyHz, speakingLengthMm, wire,
    ...(doubt === undefined ? {} : { doubt }), ...(certificateMPa === undefined ? {} : { certificateMPa }), ...(strengthModel === undefined ? {} : { strengthModel }),
  };
}

/**
 * Tension, stress, share of breaking, inharmonicity and impedance of one string of a note, with what the doubt of its sizes
 * makes of them. A plain string as flexible, T = 4·μ·L²·f²; a wound one exactly, bare ends included.
 * Refuses sizes that make no string, by field.
 * @source FLETCHER-1964 @source WITTRICK-WILLIAMS-1971
 */
export function noteFiguresOf(question: NoteQuestion): Result<NoteFigures> {
  return question.wire.kind === 'plain' ? plainNote(question, question.wire.diameterMm) : woundNote(question);
}

function plainNote({ wire: _, doubt, ...rest }: NoteQuestion, diameterMm: NoteFigures['overallDiameterMm']): Result<NoteFigures> {
  const string = { ...rest, diameterMm };
  const { linearDensityGPerM, tensionN, stressMPa, breakingPct, inharmonicityB, impedanceKgPerS, exactTensionN } = plainFiguresOf(string);
  if (exactTensionN <= 0) return refuse(tooStiff(rest.frequencyHz));
  const uncertainty = doubt === undefined ? undefined : stringUncertaintyOf(string, doubt);
  return ok({ linearDensityGPerM, overallDiameterMm: diameterMm, tensionN, stressMPa, breakingPct, inharmonicityB, impedanceKgPerS, ...(uncertainty === undefined ? {} : { uncertainty }) });
}

function woundNote({ wire, doubt, ...rest }: NoteQuestion): Result<NoteFigures> {
  const { kind: _, ...winding } = wire as Extract<ScaleWire, { readonly kind: 'wound' }>;
  const string: WoundString = { ...rest, ...winding };
  return map(woundFiguresOf(string, 1), ({ linearDensityGPerM, overallDiameterMm, tensionN, stressMPa, breakingPct, inharmonicityB, impedanceKgPerS }) => {
    const uncertainty = doubt === undefined ? undefined : stringUncertaintyOf(string, doubt);
    return { linearDensityGPerM, overallDiameterMm, tensionN, stressMPa, breakingPct, inharmonicityB, impedanceKgPerS, ...(uncertainty === undefined ? {} : { uncertainty }) };
  });
}
