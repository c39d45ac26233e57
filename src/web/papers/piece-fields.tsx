import { LEAST_THICKNESSES, thicknessOf } from '#law';
import { millimetres } from '#units';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import { Field } from '../ui/field.tsx';
import type { FormPart } from './fields-dialog.tsx';
import { type MaterialForm, type PiecesForm, emptyRow, thicknessesTyped } from './material-form.ts';

/** Rows of like pieces whose thickness was read, from which the mass follows. */
export function PieceFields({ typed, change, errorOf }: FormPart<MaterialForm>) {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const set = (index: number, part: Partial<PiecesForm>): void => { change((now) => ({ ...now, pieces: now.pieces.map((row, at) => (at === index ? { ...row, ...part } : row)) })); };
  const echoOf = (thicknesses: string): string | undefined => {
    const read = thicknessesTyped(thicknesses, '', locale);
    if (!read.ok || read.value.length < LEAST_THICKNESSES) return undefined;
    const { meanMm, uncertaintyMm } = thicknessOf(read.value.map(millimetres), millimetres(0));
    return say('papers.pieces.read', { count: read.value.length, mean: figure(meanMm, 3, 'mm'), doubt: figure(uncertaintyMm, 3, 'mm') });
  };
  return (
    <fieldset className="papers-group">
      <legend>{say('papers.field.pieces')}</legend>
      <p className="soft small">{say('papers.pieces.about')}</p>
      {typed.pieces.map((row, index) => {
        const number = index + 1;
        const at = `pieces[${String(index)}]`;
        return (
          <div className="fields" key={index}>
            <Field label={say('papers.pieces.words', { number })} value={row.words} maxLength={120} error={errorOf(`${at}.words`)} onChange={(words) => { set(index, { words }); }} />
            <Field label={say('papers.pieces.area', { number })} value={row.area} inputMode="decimal" error={errorOf(`${at}.areaMm2`)} onChange={(area) => { set(index, { area }); }} />
            <Field label={say('papers.pieces.count', { number })} value={row.count} inputMode="numeric" error={errorOf(`${at}.count`)} onChange={(count) => { set(index, { count }); }} />
            <Field label={say('papers.pieces.thicknesses', { number })} value={row.thicknesses} lines={2} echo={echoOf(row.thicknesses)} error={errorOf(`${at}.thicknessesMm`)} onChange={(thicknesses) => { set(index, { thicknesses }); }} />
            <Field label={say('papers.pieces.gauge', { number })} value={row.gauge} inputMode="decimal" error={errorOf(`${at}.gaugeUncertaintyMm`)} onChange={(gauge) => { set(index, { gauge }); }} />
            <div><button type="button" className="button button-quiet" onClick={() => { change((now) => ({ ...now, pieces: now.pieces.filter((_, other) => other !== index) })); }}>{say('papers.pieces.drop', { number })}</button></div>
          </div>
        );
      })}
      {typed.pieces.length < 20 && <div><button type="button" className="button" onClick={() => { change((now) => ({ ...now, pieces: [...now.pieces, emptyRow] })); }}>{say('papers.pieces.add')}</button></div>}
    </fieldset>
  );
}
