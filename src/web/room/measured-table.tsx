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
  const each = (tell: (band: number) => ReactNode) => octaveBands.map((name, band) => <td key={name}>{tell(band)}</td>);
  return (
    <ScrollTable label={say('room.figures', { what: label })} corner={say('room.seconds')} columns={octaveBands.map((band) => ({ key: band, head: `${String(band)} Hz` }))}>
      {(['edtS', 't20S', 't30S'] as const).map((what) => <tr key={what}><th scope="row">{say(`room.measured.${what}`)}</th>{each((band) => opened(measured[what][band], 2, say(`room.measured.${what}`), `${what}[${String(band)}]`))}</tr>)}
      <tr><th scope="row">{say('room.computed')}</th>{each((band) => <Figure value={known.times[known.model][band] ?? 0} decimals={2} story={() => reverberationStory(say('room.computed'), known, known.model, `seconds[${String(band)}]`)} />)}</tr>
      <tr><th scope="row">{say('room.quality.told')}</th>{each((band) => at(band)?.toldCount ?? 0)}</tr>
      <tr><th scope="row">{say('room.quality.dynamic')}</th>{each((band) => quality(band, 'dynamicDb', say('room.quality.dynamic')))}</tr>
      <tr><th scope="row">{say('room.quality.curvature')}</th>{each((band) => quality(band, 'curvaturePct', say('room.quality.curvature')))}</tr>
      <tr><th scope="row">{say('room.quality.doubts')}</th>{each((band) => <span className="small">{at(band) === undefined ? say('room.doubt.rate') : at(band)?.doubts.map((doubt) => say(`room.doubt.${doubt}`)).join(', ')}</span>)}</tr>
    </ScrollTable>
  );
}
