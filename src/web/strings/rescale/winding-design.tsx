import { type AnalysedNote, type WoundDesign, type WoundEnds, type WoundWish, coresByBreaking, designWound } from '#strings';
import { type Issue } from '#result';
import { explainIssue } from '#text';
import { type UnitId, hertz, millimetres, newtons, parseMeasure, percent } from '#units';
import { wrapDensityOf } from '#workshop';
import { useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { readKept } from '../../kept/kept.ts';
import { useFigures, useLocale, useSay } from '../../language/use-say.ts';
import { wholeNumber } from '../../readings/grid/grid-block.ts';
import { decimalsFor } from '../../story/say-event.ts';
import { Field } from '../../ui/field.tsx';
import { Note } from '../../ui/note.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import type { TrialDesk } from '../use-trial.ts';
import { triedWire } from './plan.ts';
import { type RescaleDraft, usualDraft, wishOf } from './rescale-draft.ts';
import { WindingTable } from './winding-table.tsx';
import './rescale.css';

interface WindingDesignProps {
  readonly note: AnalysedNote;
  /** Bare ends and steps to reckon with: the note's own, or those of its nearest wound neighbour. */
  readonly ends: WoundEnds;
  readonly trial: TrialDesk;
}

const FIELDS = [['length', 'mm', 20, 5000], ['pitch', 'Hz', 10, 5000], ['target', 'N', 50, 5000], ['tolerance', 'pct', 0.01, 50]] as const satisfies readonly (readonly [string, UnitId, number, number])[];
type FieldName = (typeof FIELDS)[number][0];

/** One wound string designed: the windings of the wire there is that come nearest to a tension, to try on the note. */
export function WindingDesign({ note, ends, trial }: WindingDesignProps) {
  const say = useSay();
  const locale = useLocale();
  const figure = useFigures();
  const { scale: terms, id, cycle } = usePiano();
  const stock = useMemo(() => {
    const draft = readKept<RescaleDraft | null>(sessionStorage, `wrestplank.rescale.${id}.${String(cycle)}`, null) ?? usualDraft(terms, { notes: [], sections: [], breaks: [], plate: { tensionN: newtons(0), counted: 0, of: 0 } }, locale);
    const wish = wishOf({ ...draft, highestWoundKey: 1, total: 'free', leastPct: '', mostPct: '', nearTarget: 'none' }, terms, locale);
    return wish.ok ? wish.value : undefined;
  }, [cycle, id, locale, terms]);
  const [texts, setTexts] = useState<Readonly<Record<FieldName, string>>>({
    length: note.speakingLengthMm === undefined ? '' : wholeNumber(Math.round(100 * note.speakingLengthMm) / 100, locale), pitch: wholeNumber(Math.round(1000 * note.frequencyHz) / 1000, locale),
    target: note.figures === undefined ? '' : wholeNumber(Math.round(note.figures.tensionN), locale), tolerance: '2',
  });
  const [core, setCore] = useState('');
  const [answer, setAnswer] = useState<{ readonly designs: readonly WoundDesign[]; readonly issues: readonly Issue[] }>();
  const [chosen, setChosen] = useState<WoundDesign>();
  const errorOf = (name: string): string | undefined => answer?.issues.filter(({ path }) => path === name).map((issue) => explainIssue(say, issue, locale)).at(0);
  if (stock === undefined || stock.coreSizesMm.length === 0 || stock.wrapSizesMm.length === 0) return <Note>{say('windingDesign.none')}</Note>;
  const target = figureOf(texts.target, FIELDS[2], locale);
  const cores = coresByBreaking({ coresMm: stock.coreSizesMm, coreShape: stock.coreShape, strengthModel: terms?.strengthModel ?? undefined, targetTensionN: newtons(target.value ?? 0), wantedPct: percent(50) }).toSorted((a, b) => a.coreDiameterMm - b.coreDiameterMm);
  const { leastBreakingPct: least, mostBreakingPct: most } = terms ?? {};
  const within = cores.filter(({ breakingPct }) => breakingPct >= (least ?? 0) && breakingPct <= (most ?? Infinity)).map(({ coreDiameterMm }) => coreDiameterMm);
  const isBound = least != null || most != null;
  const design = (): void => {
    const read = FIELDS.map((field) => figureOf(texts[field[0]], field, locale));
    const issues = read.flatMap((one) => one.issues);
    const [length, pitch, tension, tolerance] = read.map(({ value }) => value ?? 0) as [number, number, number, number];
    const wish: WoundWish = {
      frequencyHz: hertz(pitch), speakingLengthMm: millimetres(length), targetTensionN: newtons(tension), tolerancePct: percent(tolerance), coreShape: stock.coreShape,
      strengthModel: terms?.strengthModel ?? undefined, layers: stock.layers, coresMm: core === '' ? (within.length > 0 ? within : stock.coreSizesMm) : stock.coreSizesMm.filter((size) => String(size) === core),
      wrapStock: stock.wrapSizesMm.map((wireDiameterMm) => ({ wireDiameterMm, densityKgM3: wrapDensityOf(terms) })), ...ends,
    };
    const result = issues.length > 0 ? undefined : designWound(wish);
    setChosen(undefined);
    setAnswer(result === undefined ? { designs: [], issues } : result.ok ? { designs: result.value, issues: [] } : { designs: [], issues: result.issues });
  };
  const choose = (one: WoundDesign): void => {
    const { bareFrontMm, bareRearMm, stepFrontMm, stepRearMm } = ends;
    trial.lay({ [String(note.key)]: {
      ...trial.trial[String(note.key)],
      ...triedWire(note, { kind: 'wound', coreDiameterMm: one.coreDiameterMm, coreShape: stock.coreShape, wraps: one.wraps, bareFrontMm, bareRearMm, ...(one.wraps.length > 1 ? { stepFrontMm, stepRearMm } : {}) }, locale),
      ...(figureOf(texts.length, FIELDS[0], locale).value === note.speakingLengthMm || Math.abs((figureOf(texts.length, FIELDS[0], locale).value ?? 0) - (note.speakingLengthMm ?? 0)) < 0.01 ? {} : { speakingLengthMm: texts.length }),
    } });
    setChosen(one);
  };
  const refused = answer?.issues.find(({ params }) => params?.['reason'] === 'windingOutOfReach');
  const others = answer?.issues.filter((issue) => issue !== refused && FIELDS.every(([name]) => name !== issue.path)) ?? [];
  return (
    <div className="rescale-outcome">
      <p className="soft small">{say('windingDesign.about')}</p>
      <div className="rescale-fields">
        {FIELDS.map(([name]) => <Field key={name} label={say(`windingDesign.${name}`)} inputMode="decimal" value={texts[name]} error={errorOf(name)} hint={name === 'pitch' ? say('windingDesign.pitch.hint') : undefined} onChange={(text) => { setTexts({ ...texts, [name]: text }); }} />)}
        <SelectField
          label={say('windingDesign.cores')} value={core} onChange={setCore}
          options={[{ value: '', label: say(isBound && within.length > 0 ? 'windingDesign.cores.within' : 'windingDesign.cores.all', { count: within.length }) }, ...cores.map(({ coreDiameterMm, breakingPct }) => ({ value: String(coreDiameterMm), label: target.value === undefined ? figure(coreDiameterMm, decimalsFor(coreDiameterMm, 3), 'mm') : say('windingDesign.core', { size: figure(coreDiameterMm, decimalsFor(coreDiameterMm, 3)), pct: figure(breakingPct, 0) }) }))]}
        />
      </div>
      <p className="soft small">{say('windingDesign.wire', { cores: rangeSaid(stock.coreSizesMm, figure), wraps: rangeSaid(stock.wrapSizesMm, figure) })}</p>
      <div><button type="button" className="button" onClick={design}>{say('windingDesign.go')}</button></div>
      {refused !== undefined && <Note tone="bad" role="alert">{say('windingDesign.outOfReach', { nearest: figure(Number(refused.params?.['nearest']), 0), off: figure(Math.abs(Number(refused.params?.['off'])), 1) })}</Note>}
      {others.length > 0 && <Note tone="bad" role="alert">{others.map((issue) => <p key={issue.path}>{explainIssue(say, issue, locale)}</p>)}</Note>}
      {answer !== undefined && answer.designs.length > 0 && <WindingTable designs={answer.designs} chosen={chosen} onChoose={choose} />}
      <p role="status">{chosen !== undefined && say('windingDesign.chosen')}</p>
    </div>
  );
}

function figureOf(text: string, [path, unit, min, max]: (typeof FIELDS)[number], locale: string): { readonly value?: number; readonly issues: readonly Issue[] } {
  const parsed = parseMeasure(text, { unit, locale, path });
  if (!parsed.ok) return { issues: parsed.issues };
  const { value } = parsed.value;
  return value >= min && value <= max ? { value, issues: [] } : { issues: [{ code: 'range', path, given: text, allowed: `${String(min)} to ${String(max)}`, params: { min, max } }] };
}

function rangeSaid(sizes: readonly number[], figure: ReturnType<typeof useFigures>): string {
  const sized = (size: number | undefined): string => (size === undefined ? '–' : figure(size, decimalsFor(size, 2)));
  return sizes.length < 2 ? `${sized(sizes[0])} mm` : `${sized(sizes[0])}–${sized(sizes.at(-1))} mm (${String(sizes.length)})`;
}
