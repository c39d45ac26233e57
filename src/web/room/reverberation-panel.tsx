import { bandPlot } from '#plot';
import { type PerBand, octaveBands } from '#room';
import { type RoomConsequences, type RoomGiven, USUAL_ROOM_AIR } from '#workshop';
import { Fragment, useMemo } from 'react';
import { Figure } from '../figure/figure.tsx';
import { useLocale, useSay } from '../language/use-say.ts';
import { SceneView } from '../leaves/scene-view.tsx';
import { useWidth } from '../leaves/use-width.ts';
import { ScrollTable } from '../ui/scroll-table.tsx';
import { measuredStory, reverberationStory, targetStory } from './room-stories.ts';

interface ReverberationPanelProps {
  readonly given: RoomGiven;
  readonly known: RoomConsequences;
  /** How long the kept room rings, where this one is only tried. */
  readonly before: PerBand | undefined;
}

/** How long the room rings, band by band, by both formulas, beside what is wanted, measured, and kept. */
export function ReverberationPanel({ given, known, before }: ReverberationPanelProps) {
  const say = useSay();
  const locale = useLocale();
  const { times, model, midS, bassRatio, target } = known;
  const [width, ref] = useWidth(520);
  const measured = given.measured.at(-1)?.t20S;
  const scene = useMemo(() => bandPlot({
    bands: octaveBands.map(String), xLabel: say('room.band'), yLabel: say('room.times'), title: say('room.times'), locale, widthPx: width, heightPx: 260,
    description: say('room.times.described', { model: say(`room.model.${model}`), measured: measured === undefined ? 'no' : 'yes', wanted: target === undefined ? 'no' : 'yes' }),
    wanted: target === undefined ? undefined : { value: target.seconds, lower: target.lower, upper: target.upper },
    series: [
      ...(before === undefined ? [] : [{ state: 'found' as const, label: say('room.kept'), values: before }]),
      { state: 'planned', label: before === undefined ? say(`room.model.${model}`) : say('room.triedNow'), values: times[model] },
      ...(measured === undefined ? [] : [{ state: 'finished' as const, label: say('room.measuredT20'), values: measured }]),
    ],
    // eslint-disable-next-line react-hooks/exhaustive-deps -- words follow from the locale
  }), [times, model, target, before, measured, width, locale]);
  return (
    <section className="panel" aria-labelledby="room-times">
      <h3 id="room-times">{say('room.times')}</h3>
      <div ref={ref}><SceneView scene={scene} /></div>
      <TimesTable given={given} known={known} />
      <dl className="facts">
        <div><dt>{say('room.mid')}</dt><dd><Figure value={midS} decimals={2} unit="s" story={() => reverberationStory(say('room.mid'), known, model, 'midS')} /></dd></div>
        <div><dt>{say('room.bassRatio')}</dt><dd><Figure value={bassRatio} decimals={2} story={() => reverberationStory(say('room.bassRatio'), known, model, 'bassRatio')} /></dd></div>
        {target !== undefined && <div><dt>{say('room.wanted')}</dt><dd><Figure value={target.seconds} decimals={2} unit="s" story={() => targetStory(say('room.wanted'), known, given, 'seconds')} /> <span className="soft small">{target.standard}</span></dd></div>}
      </dl>
      {target === undefined && <p className="soft">{say('room.noUse')}</p>}
      {target?.outsideVolumes === true && target.fromM3 !== undefined && target.toM3 !== undefined && <p>{say('room.stretched', { from: target.fromM3, to: target.toM3 })}</p>}
      <p className="soft small">{say('room.doubt')}{given.temperatureC === null || given.humidityPct === null ? ` ${say('room.airAssumed', USUAL_ROOM_AIR)}` : ''}</p>
    </section>
  );
}

const measuredTimes = ['edtS', 't20S', 't30S'] as const;

/** Bands go down, so that every one is in view on a phone too. */
function TimesTable({ given, known }: Pick<ReverberationPanelProps, 'given' | 'known'>) {
  const say = useSay();
  const { times, target, model } = known;
  const measured = given.measured.at(-1);
  const judged = (band: number): string => {
    if (target === undefined) return '';
    const time = times[model][band] ?? 0;
    return say(time < (target.lower[band] ?? 0) ? 'room.judged.short' : time > (target.upper[band] ?? Infinity) ? 'room.judged.long' : 'room.judged.within');
  };
  const columns = [
    ...(['sabine', 'eyring'] as const).map((formula) => ({ key: formula, head: <>{say(`room.model.${formula}`)}{formula === model && <span className="soft small"> {say('room.taken')}</span>}</> })),
    ...(target === undefined ? [] : [{ key: 'allowed', head: say('room.allowed') }, { key: 'judged', head: say('room.judged') }]),
    ...(measured === undefined ? [] : measuredTimes.map((what) => ({ key: what, head: say(`room.measured.${what}`) }))),
  ];
  return (
    <ScrollTable label={say('room.figures', { what: say('room.times') })} corner={say('room.seconds')} columns={columns}>
      {octaveBands.map((name, band) => (
        <tr key={name}>
          <th scope="row">{`${String(name)}\u00A0${say('room.unit.hertz')}`}</th>
          {(['sabine', 'eyring'] as const).map((formula) => <td key={formula}><Figure value={times[formula][band] ?? 0} decimals={2} story={() => reverberationStory(say('room.timeAt', { band: name }), known, formula, `seconds[${String(band)}]`)} /></td>)}
          {target !== undefined && <td>{(['lower', 'upper'] as const).map((end, index) => <Fragment key={end}>{index === 1 && '–'}<Figure value={target[end][band] ?? 0} decimals={2} story={() => targetStory(`${say('room.allowed')}, ${String(name)} Hz`, known, given, `${end}[${String(band)}]`)} /></Fragment>)}</td>}
          {target !== undefined && <td>{judged(band)}</td>}
          {measured !== undefined && measuredTimes.map((what) => { const time = measured[what][band] ?? null; return <td key={what}>{time === null ? <span className="soft">–</span> : <Figure value={time} decimals={2} story={() => measuredStory(say(`room.measured.${what}`), measured, `${what}[${String(band)}]`)} />}</td>; })}
        </tr>
      ))}
    </ScrollTable>
  );
}
