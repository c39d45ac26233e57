import { type RegulationName, usualKeyHeights, usualRegulation } from '#action';
import type { ActionTerms, ActionTermsDraft, Instrument } from '#instrument';
import type { Result } from '#result';
import type { UnitId } from '#units';
import { figureReader, type TypedFigures, shownFigure, statedOver } from '../terms/typed-figures.ts';

export const specRegisters = ['bass', 'middle', 'treble'] as const;
export type SpecRegister = (typeof specRegisters)[number];
export const specNames = ['blowMm', 'letOffMm', 'dropMm', 'dipMm', 'aftertouchMm', 'checkMm'] as const satisfies readonly RegulationName[];
export type SpecName = (typeof specNames)[number];

/** The figures stated for all registers, with the unit each is typed in. */
export const wholeFigures = [
  ['keyLevelMm', 'mm'], ['sharpHeightMm', 'mm'], ['spreadMm', 'mm'], ['regulationToleranceMm', 'mm'], ['blowToleranceMm', 'mm'], ['letOffToleranceMm', 'mm'], ['dropToleranceMm', 'mm'], ['checkToleranceMm', 'mm'], ['spreadToleranceMm', 'mm'], ['distanceRatioNatural', '1'], ['distanceRatioSharp', '1'], ['lossMm', 'mm'],
] as const satisfies readonly (readonly [keyof ActionTerms, UnitId])[];
export type WholeName = (typeof wholeFigures)[number][0];

/** What the regulation is to be, as typed. */
export interface RegulationForm extends TypedFigures<WholeName> {
  readonly floats: 'dip' | 'blow' | 'aftertouch' | '';
  readonly spec: Readonly<Record<SpecRegister, TypedFigures<SpecName>>>;
}

/** The figure that follows from the other two, if one does. */
export function followingOf(floats: RegulationForm['floats']): SpecName | undefined {
  return floats === '' ? undefined : `${floats}Mm`;
}

/** The form that shows these terms, figures in the reader's locale. */
export function regulationFormOf(terms: ActionTerms | null, locale: string): RegulationForm {
  const whole = Object.fromEntries(wholeFigures.map(([name]) => [name, shownFigure(terms?.[name], locale)])) as TypedFigures<WholeName>;
  const ofRegister = (register: SpecRegister): TypedFigures<SpecName> => {
    const stated = terms?.regulation.find((one) => one.register === register);
    return Object.fromEntries(specNames.map((name) => [name, shownFigure(stated?.[name], locale)])) as TypedFigures<SpecName>;
  };
  return { ...whole, floats: terms?.regulationFloats ?? '', spec: { bass: ofRegister('bass'), middle: ofRegister('middle'), treble: ofRegister('treble') } };
}

/** The terms a form states, over what stands of the rest of the action; or which fields are wrong. A figure that follows keeps what is typed, unused. */
export function regulationTermsOf(form: RegulationForm, standing: ActionTerms | null, locale: string): Result<ActionTermsDraft> {
  const reader = figureReader(locale);
  const whole = Object.fromEntries(wholeFigures.map(([name, unit]) => [name, reader.read(form[name], name, unit)]));
  const regulation = specRegisters.flatMap((register, row) => {
    const figures = Object.fromEntries(specNames.map((name) => [name, reader.read(form.spec[register][name], `regulation[${String(row)}].${name}`, 'mm')]));
    return [{ register, ...figures }];
  });
  const checked = statedOver(standing, { ...whole, regulationFloats: form.floats === '' ? null : form.floats, regulation }, reader.issues);
  if (!checked.ok) return checked;
  const stated = regulation.filter((row) => specNames.some((name) => (row as Readonly<Record<string, unknown>>)[name] !== null));
  return statedOver(standing, { ...whole, regulationFloats: form.floats === '' ? null : form.floats, regulation: stated }, []);
}

/** Empty fields filled with what is usual; what follows from the others stays empty, and nothing typed is touched. */
export function withUsual(form: RegulationForm, kind: Instrument['kind'], locale: string): RegulationForm {
  const following = followingOf(form.floats);
  const filled = (register: SpecRegister): TypedFigures<SpecName> => Object.fromEntries(specNames.map((name) => {
    const typed = form.spec[register][name];
    return [name, typed.trim() !== '' || name === following ? typed : shownFigure(usualRegulation[kind][register][name], locale)];
  })) as TypedFigures<SpecName>;
  const heights = Object.fromEntries((['keyLevelMm', 'sharpHeightMm'] as const).map((name) => [name, form[name].trim() === '' ? shownFigure(usualKeyHeights[name], locale) : form[name]]));
  return { ...form, ...heights, spec: { bass: filled('bass'), middle: filled('middle'), treble: filled('treble') } };
}
