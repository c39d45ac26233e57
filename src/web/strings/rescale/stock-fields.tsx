import { keysOf, noteNameOf } from '#instrument';
import { windingsOf } from '#strings';
import { MOST_WINDINGS, wrapDensityOf } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { Choice } from '../../ui/choice.tsx';
import { Field } from '../../ui/field.tsx';
import { SelectField } from '../../ui/select-field.tsx';
import type { SeriesName } from '../series.ts';
import { wishOf } from './rescale-draft.ts';
import type { PartProps } from './part-props.ts';

/** The wire to choose from: plain sizes of one series, cores and wraps to wind from, and up to which note is wound. */
export function StockFields({ draft, onChange, errorOf }: PartProps) {
  const say = useSay();
  const { compass, scale: terms } = usePiano();
  const wraps = (terms?.wires ?? []).filter(({ use, metal }) => use === 'wrap' && metal === (terms?.wrapMetal ?? 'copper')).length;
  const series = (use: 'plain' | 'core') => (['inch', 'metric', ...((terms?.wires ?? []).some((wire) => wire.use === use) ? (['shop'] as const) : [])] as const satisfies readonly SeriesName[])
    .map((value) => ({ value, label: say(`scale.wireSeries.${value}`) }));
  const figure = (path: 'coreFromMm' | 'coreToMm' | 'wrapFromMm' | 'wrapToMm' | 'wrapStepMm') => (
    <Field label={say(`rescale.${path}`)} inputMode="decimal" value={draft[path]} error={errorOf(path)} onChange={(text) => { onChange({ [path]: text }); }} />
  );
  const notes = [{ value: '0', label: say('rescale.highestWoundKey.none') }, ...keysOf(compass).map((key) => ({ value: String(key), label: noteNameOf(compass, key) }))];
  return (
    <fieldset className="rescale-part">
      <legend>{say('rescale.stock')}</legend>
      <Choice<SeriesName> label={say('rescale.plain')} value={draft.plain} options={series('plain')} onChange={(plain) => { onChange({ plain }); }} />
      <SelectField label={say('rescale.highestWoundKey')} value={String(draft.highestWoundKey)} options={notes} hint={say('rescale.highestWoundKey.hint')} onChange={(key) => { onChange({ highestWoundKey: Number(key) }); }} />
      {draft.highestWoundKey > 0 && (
        <>
          <div className="rescale-fields">
            <SelectField<SeriesName> label={say('rescale.cores')} value={draft.cores} options={series('core')} onChange={(cores) => { onChange({ cores }); }} />
            <SelectField<'round' | 'hex'> label={say('rescale.coreShape')} value={draft.coreShape} options={(['round', 'hex'] as const).map((value) => ({ value, label: say(`strings.wire.shape.${value}`) }))} onChange={(coreShape) => { onChange({ coreShape }); }} />
            {draft.cores !== 'shop' && <>{figure('coreFromMm')}{figure('coreToMm')}</>}
          </div>
          <Choice label={say('rescale.wraps')} value={draft.wraps} options={[...(wraps > 0 || draft.wraps === 'shop' ? [{ value: 'shop' as const, label: say('rescale.wraps.shop', { count: wraps }) }] : []), { value: 'range' as const, label: say('rescale.wraps.range') }]} onChange={(chosen) => { onChange({ wraps: chosen }); }} />
          {draft.wraps === 'range' && <div className="rescale-fields">{figure('wrapFromMm')}{figure('wrapToMm')}{figure('wrapStepMm')}</div>}
          <Choice label={say('rescale.layers')} value={draft.layers} options={(['single', 'either'] as const).map((value) => ({ value, label: say(`rescale.layers.${value}`) }))} onChange={(layers) => { onChange({ layers }); }} />
        </>
      )}
      <Bounded draft={draft} />
    </fieldset>
  );
}

/** How many strings there are to choose among. */
function Bounded({ draft }: Pick<PartProps, 'draft'>) {
  const say = useSay();
  const locale = useLocale();
  const { scale: terms } = usePiano();
  const counted = useMemo(() => {
    const wish = wishOf(draft, terms, locale);
    if (!wish.ok) return undefined;
    const { coreSizesMm, coreShape, wrapSizesMm, layers, plainSizesMm } = wish.value;
    const windings = windingsOf({ cores: coreSizesMm.map((diameterMm) => ({ diameterMm, shape: coreShape })), wraps: wrapSizesMm.map((wireDiameterMm) => ({ wireDiameterMm, densityKgM3: wrapDensityOf(terms) })), layers });
    return { sizes: plainSizesMm.length, windings: windings.length };
  }, [draft, terms, locale]);
  return counted === undefined ? null : <p className="soft small">{say('rescale.bounded', { ...counted, most: MOST_WINDINGS })}</p>;
}
