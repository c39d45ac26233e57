import { leverRatiosOf } from '#action';
import type { QuantityName } from '#instrument';
import { millimetres } from '#units';
import { useMemo } from 'react';
import { Figure } from '../../figure/figure.tsx';
import { useSay } from '../../language/use-say.ts';
import { useDesk } from '../desk.tsx';
import { cellIdOf } from '../sheet/sheet-row.ts';
import { useCell } from '../sheet/use-sheet.ts';
import { ArmsTable } from './arms-table.tsx';

/** Lever arms of naturals and of sharps, and what is measured of the instrument as a whole. */
export function ArmsView() {
  const say = useSay();
  return (
    <section className="arms panel" aria-labelledby="arms-title">
      <h3 id="arms-title">{say('readings.arms.title')}</h3>
      <p className="soft">{say('readings.arms.intro')}</p>
      <ArmsTable part="touch" following={{ name: say('readings.arms.ratio'), of: (index, title) => <Ratio index={index} title={title} /> }} />
    </section>
  );
}

/** The action ratio of one colour once all six arms are there; opens to how it was made. */
function Ratio({ index, title }: { readonly index: number; readonly title: string }) {
  const say = useSay();
  const { sheet, state } = useDesk();
  const cell = (name: QuantityName) => ({ scope: 'colour' as const, index, id: cellIdOf(name, 1) });
  const keyFrontMm = useCell(sheet, state, cell('keyFrontMm'))?.reading;
  const keyBackMm = useCell(sheet, state, cell('keyBackMm'))?.reading;
  const wippenHeelMm = useCell(sheet, state, cell('wippenHeelMm'))?.reading;
  const wippenJackMm = useCell(sheet, state, cell('wippenJackMm'))?.reading;
  const rollerMm = useCell(sheet, state, cell('rollerMm'))?.reading;
  const hammerMm = useCell(sheet, state, cell('hammerMm'))?.reading;
  const made = useMemo(() => {
    const readings = { keyFrontMm, keyBackMm, wippenHeelMm, wippenJackMm, rollerMm, hammerMm };
    const values = Object.entries(readings).map(([name, reading]) => [name, reading?.value ?? null] as const);
    if (values.some(([, value]) => value === null || value <= 0)) return undefined;
    const input = Object.fromEntries(values) as Record<keyof typeof readings, number>;
    const { actionRatio } = leverRatiosOf({
      keyFrontMm: millimetres(input.keyFrontMm), keyBackMm: millimetres(input.keyBackMm), wippenHeelMm: millimetres(input.wippenHeelMm),
      wippenJackMm: millimetres(input.wippenJackMm), rollerMm: millimetres(input.rollerMm), hammerMm: millimetres(input.hammerMm),
    });
    const behind = Object.fromEntries(Object.entries(readings).flatMap(([name, reading]) => (reading === undefined ? [] : [[name, [reading]]])));
    return { actionRatio, story: { title, operation: 'lever-ratios', output: 'actionRatio', input, readings: behind } };
  }, [keyFrontMm, keyBackMm, wippenHeelMm, wippenJackMm, rollerMm, hammerMm, title]);
  if (made === undefined) return <span className="soft small">{say('readings.arms.ratio.missing')}</span>;
  return <Figure value={made.actionRatio} decimals={2} story={() => made.story} />;
}
