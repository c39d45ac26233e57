import type { ReactNode } from 'react';
import { octaveBands } from '#room';
import type { RoomConsequences } from '#workshop';
import { Figure } from '../figure/figure.tsx';
import { useSay } from '../language/use-say.ts';
import { ScrollTable } from '../ui/scroll-table.tsx';
import { type HeardRoom, measuredStory, reverberationStory } from './room-stories.ts';

/** What a recording told of each band, how good it is, and beside it what is computed; where a time is not told, why. */
export function MeasuredTable({ measured, known, label }: { readonly label: string; readonly measured: HeardRoom; readonly known: RoomConsequences }) {
  const say = useSay();
  const at = (band: number) => measured.quality.find(({ bandHz }) => bandHz === octaveBands[band]);
  const opened = (value: number | null | undefined, decimals: number, what: string, output: string) => (value == null ? <span className="soft">–</span> : <Figure value={value} decimals={decimals} story={() => measuredStory(what, measured, output)} />);
  const quality = (band: number, name: 'dynamicDb' | 'curvaturePct', what: string) => opened(at(band)?.[name], 0, what, `quality[${String(measured.quality.findIndex((one) => one === at(band)))}].${name}`);
  const told: readonly (readonly [head: string, tell: (band: number) => ReactNode])[] = [
    ...(['edtS', 't20S', 't30S'] as const).map((what) => [say(`room.measured.${what}`), (band: number) => opened(measured[what][band], 2, say(`room.measured.${what}`), `${what}[${String(band)}]`)] as const),
    [say('room.computed'), (band) => <Figure value={known.times[known.model][band] ?? 0} decimals={2} story={() => reverberationStory(say('room.computed'), known, known.model, `seconds[${String(band)}]`)} />],
    [say('room.quality.told'), (band) => at(band)?.toldCount ?? 0],
    [say('room.quality.dynamic'), (band) => quality(band, 'dynamicDb', say('room.quality.dynamic'))],
    [say('room.quality.curvature'), (band) => quality(band, 'curvaturePct', say('room.quality.curvature'))],
    [say('room.quality.doubts'), (band) => <span className="small">{at(band) === undefined ? say('room.doubt.rate') : at(band)?.doubts.map((doubt) => say(`room.doubt.${doubt}`)).join(', ')}</span>],
  ];
  return (
    <ScrollTable label={say('room.figures', { what: label })} corner={say('room.seconds')} columns={told.map(([head]) => ({ key: head, head }))}>
      {octaveBands.map((name, band) => <tr key={name}><th scope="row">{`${String(name)}\u00A0${say('room.unit.hertz')}`}</th>{told.map(([head, tell]) => <td key={head}>{tell(band)}</td>)}</tr>)}
    </ScrollTable>
  );
}
