import { type KeyNumber, type QuantityName, noteNameOf, quantityOf, understandFigure } from '#instrument';
import { sizeBeside } from '#materials';
import type { AnalysedNote, Load } from '#strings';
import { explainIssue } from '#text';
import { unitSign } from '#units';
import { usePiano } from '../api/piano.tsx';
import { useKept } from '../kept/kept.ts';
import { useFigures, useLocale, useSay } from '../language/use-say.ts';
import { wholeNumber } from '../readings/grid/grid-block.ts';
import { decimalsFor } from '../story/say-event.ts';
import { Choice } from '../ui/choice.tsx';
import { Field } from '../ui/field.tsx';
import { type SeriesName, seriesSizes } from './series.ts';
import { standingSizes, trialFields } from './trial.ts';
import type { TrialDesk } from './use-trial.ts';
import '../ui/stepped.css';

interface WhatIfProps {
  readonly keyNumber: KeyNumber;
  /** The note as planned with what is tried, or as found while nothing is planned. */
  readonly note: AnalysedNote | undefined;
  /** What the whole plan pulls. */
  readonly plate: Load | undefined;
  readonly trial: TrialDesk;
}

const ALWAYS: readonly QuantityName[] = ['speakingLengthMm', 'stringCount', 'wireDiameterMm', 'outerWrapMm'];
const STEPPED: Readonly<Partial<Record<QuantityName, 'plain' | 'core' | 'wrap'>>> = { wireDiameterMm: 'plain', hexCoreMm: 'core', innerWrapMm: 'wrap', outerWrapMm: 'wrap' };

/** Tries other sizes on a note: everything on the page moves with them, and nothing is written until it is kept as planned. */
export function WhatIf({ keyNumber, note, plate, trial }: WhatIfProps) {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const { id, cycle, compass, scale: terms } = usePiano();
  const [series, setSeries] = useKept<SeriesName | ''>(`wrestplank.series.${id}.${String(cycle)}`, terms?.wireSeries ?? '');
  const own = trial.trial[String(keyNumber)] ?? {};
  const standing = Object.fromEntries(Object.entries(note === undefined ? {} : sizesStated(note)).map(([name, value]) => [name, wholeNumber(value, locale)]));
  const shown = trialFields.filter((quantity) => ALWAYS.includes(quantity) || standing[quantity] !== undefined || (own[quantity] ?? '') !== '');
  const sizesFor = (quantity: QuantityName) => (quantity === 'wireDiameterMm' && note?.wire?.kind === 'wound' ? 'core' : STEPPED[quantity]);
  return (
    <section className="what-if" aria-labelledby={`what-if-${String(keyNumber)}`}>
      <h3 id={`what-if-${String(keyNumber)}`}>{say('strings.whatIf.title')}</h3>
      <p className="soft small">{say('strings.whatIf.about')}</p>
      <Choice
        label={say('scale.field.wireSeries')}
        value={series}
        options={(['inch', 'metric', ...(terms !== null && terms.wires.length > 0 ? (['shop'] as const) : [])] as const).map((value) => ({ value, label: say(`scale.wireSeries.${value}`) }))}
        onChange={setSeries}
        {...(series === '' ? { hint: say('strings.whatIf.series') } : {})}
      />
      <div className="what-if-fields">
        {shown.map((quantity) => {
          const use = sizesFor(quantity);
          return (
            <SizeField
              key={quantity} quantity={quantity} text={own[quantity] ?? standing[quantity] ?? ''} isTried={own[quantity] !== undefined}
              sizes={use === undefined || series === '' ? [] : seriesSizes(terms, series, use)}
              note={quantity === 'speakingLengthMm' && note?.isLengthEstimated === true && note.speakingLengthMm !== undefined ? say('strings.whatIf.estimated', { value: figure(note.speakingLengthMm, 1, 'mm') }) : undefined}
              onText={(text) => { trial.set(keyNumber, quantity, text, standing); }}
            />
          );
        })}
      </div>
      {plate !== undefined && plate.counted > 0 && <p>{say('strings.loads.plate')}: <strong>{say('strings.kilonewtons', { value: figure(plate.tensionN / 1000, 2) })}</strong></p>}
      {!trial.isEmpty && (
        <div className="row" role="group" aria-label={say('strings.trial.legend')}>
          <button type="button" className="button button-main" disabled={trial.isMisread} onClick={trial.keep}>{say('strings.trial.keep', { count: Object.keys(trial.trial).length })}</button>
          {Object.keys(own).length > 0 && <button type="button" className="button" onClick={() => { trial.drop(keyNumber); }}>{say('strings.trial.dropNote', { note: noteNameOf(compass, keyNumber) })}</button>}
          <button type="button" className="button" onClick={() => { trial.drop(); }}>{say('strings.trial.drop')}</button>
        </div>
      )}
    </section>
  );
}

interface SizeFieldProps {
  readonly quantity: QuantityName;
  readonly text: string;
  readonly isTried: boolean;
  /** What stands while the field is empty. */
  readonly note: string | undefined;
  /** Sizes to step through; none to step where empty. */
  readonly sizes: readonly Parameters<typeof sizeBeside>[0][number][];
  readonly onText: (text: string) => void;
}

/** One size: typed, or stepped to the next of the series. */
function SizeField({ quantity, text, isTried, note, sizes, onText }: SizeFieldProps) {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const { unit, decimals } = quantityOf(quantity);
  const name = say(`quantity.${quantity}.name`);
  const understood = text.trim() === '' ? undefined : understandFigure(quantity, text, { path: quantity, locale });
  const value = understood?.ok === true ? understood.value.value : undefined;
  const beside = (direction: 1 | -1) => (value === undefined ? undefined : sizeBeside(sizes, value, direction));
  const [down, up] = [beside(-1), beside(1)];
  const echo = understood?.ok === true && understood.value.converted ? figure(understood.value.value, decimalsFor(understood.value.value, decimals), unit) : undefined;
  return (
    <div className={isTried ? 'size-field is-tried' : 'size-field'}>
      <Field
        label={`${say(`quantity.${quantity}.short`)}${unitSign[unit] === '' ? '' : ` (${unitSign[unit]})`}`} inputMode="decimal" value={text} onChange={onText} echo={echo} hint={isTried ? say('strings.trial.tried') : note}
        error={understood?.ok === false ? understood.issues.map((issue) => explainIssue(say, issue, locale)).join(' ') : undefined}
        warning={understood?.ok === true && understood.value.warning !== undefined ? say('strings.unlikely') : undefined}
      />
      {sizes.length > 0 && (
        <div className="size-steps">
          <button type="button" className="button" disabled={down === undefined} aria-label={say('strings.whatIf.thinner', { name })} onClick={() => { if (down !== undefined) onText(wholeNumber(down, locale)); }}>−</button>
          <button type="button" className="button" disabled={up === undefined} aria-label={say('strings.whatIf.stouter', { name })} onClick={() => { if (up !== undefined) onText(wholeNumber(up, locale)); }}>+</button>
        </div>
      )}
      {sizes.length > 1 && value !== undefined && (
        <input
          type="range" className="size-drag" min={0} max={sizes.length - 1} step={1} value={nearestOf(sizes, value)}
          aria-label={say('strings.whatIf.drag', { name })} aria-valuetext={figure(value, decimalsFor(value, decimals), unit)}
          onChange={(event) => { onText(wholeNumber(sizes[Number(event.target.value)] ?? value, locale)); }}
        />
      )}
    </div>
  );
}

/** The sizes stated of a note: a length that was laid in is not one of them. */
function sizesStated(note: AnalysedNote): ReturnType<typeof standingSizes> {
  const { speakingLengthMm, ...rest } = standingSizes(note);
  return note.isLengthEstimated || speakingLengthMm === undefined ? rest : { speakingLengthMm, ...rest };
}

/** Where in a list of sizes the nearest to a diameter stands. */
function nearestOf(sizes: readonly number[], diameterMm: number): number {
  return sizes.reduce((nearest, size, index) => (Math.abs(size - diameterMm) < Math.abs((sizes[nearest] ?? Number.POSITIVE_INFINITY) - diameterMm) ? index : nearest), 0);
}
