import { type KeyNumber, type State, noteNameOf } from '#instrument';
import { type Scene, bearingPlot, sustainSignsOf, throughGaps, tonePlot } from '#plot';
import { type SustainMap, sustainMapOf } from '#tone';
import { SHORT_PCT, type StateTone, humidityOf, sustainInputOf } from '#workshop';
import { Suspense, lazy, useMemo, useState } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useReadingBook } from '../../api/use-readings.ts';
import type { StateBelly } from '../../belly/state-belly.ts';
import { ClimateLine } from '../../belly/climate-line.tsx';
import { useBellies } from '../../belly/use-bellies.ts';
import { KeysWithPlots } from '../../keys/keys-with-plots.tsx';
import { useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import { ExportPlot, type PlotRows } from '../compass/export-plot.tsx';
import { StateChoice } from '../state-choice.tsx';
import { WhenHeard } from '../when-heard.tsx';
import { ShortList } from './short-list.tsx';
import '../../belly/belly.css';

const NotePanel = lazy(async () => ({ default: (await import('../note/note-panel.tsx')).NotePanel }));

/** Where the notes ring short, beside bearing and climate: lost bearing or loose bridge here? */
export function SustainView() {
  return <WhenHeard>{(tones) => <Sustain tones={tones} />}</WhenHeard>;
}

function Sustain({ tones }: { readonly tones: readonly StateTone[] }) {
  const say = useSay();
  const { cycle } = usePiano();
  const book = useReadingBook();
  const bellies = useBellies();
  const [state, setState] = useState<State>('finished');
  const [selected, select] = useState<KeyNumber>();
  const tone = tones.find((one) => one.state === state) ?? tones.at(-1);
  const belly = bellies.find((one) => one.state === tone?.state);
  const gathered = useMemo(() => {
    if (tone === undefined) return undefined;
    const readings = [...book[tone.state].values()];
    const input = sustainInputOf({ tone, belly: belly?.analysis, readings, cycle });
    const map = sustainMapOf(input.notes, { climate: { humidityPct: input.humidityPct }, shortRatio: input.shortPct / 100 });
    return { input, map: map.ok ? map.value : undefined, humidity: humidityOf(readings, cycle, tone.state) };
  }, [belly, book, cycle, tone]);
  if (tone === undefined || gathered === undefined) return null;
  const { input, map, humidity } = gathered;
  const signs = sustainSignsOf(input.notes.map(({ key }) => key), map?.short ?? []);
  return (
    <>
      <StateChoice tones={tones} shown={tone.state} onState={setState} />
      <KeysWithPlots
        signs={signs} selected={selected} onKey={select} keysLabel={say('tone.sustain.keyboard')} plotsLabel={say('tone.sustain.plots')}
        plots={(widthPx) => <SustainPlots tone={tone} map={map} belly={belly} widthPx={widthPx} selected={selected} onSelect={select} />}
      >
        <ShortList map={map} input={input} humidity={humidity} onKey={select} />
        <section className="panel" aria-labelledby="sustain-climate-title"><h2 id="sustain-climate-title">{say('tone.sustain.climate')}</h2><ClimateLine state={tone.state} /></section>
        {selected !== undefined && <Suspense fallback={<p role="status">{say('shell.loading')}</p>}><NotePanel keyNumber={selected} tones={tones} computedB={undefined} onKey={select} /></Suspense>}
      </KeysWithPlots>
    </>
  );
}

interface SustainPlotsProps {
  readonly tone: StateTone;
  readonly map: SustainMap | undefined;
  readonly belly: StateBelly | undefined;
  readonly widthPx: number;
  readonly selected: KeyNumber | undefined;
  readonly onSelect: (key: KeyNumber) => void;
}

/** Decay with its stiff curve, and under it on the same keys the total angle of the bearing. */
function SustainPlots({ tone, map, belly, widthPx, selected, onSelect }: SustainPlotsProps) {
  const say = useSay();
  const locale = useLocale();
  const { compass } = usePiano();
  const scenes = useMemo((): readonly Scene[] => {
    const label = say(`state.${tone.state}`);
    const shared = { compass, locale, widthPx };
    const [decay, angle] = [say('tone.figure.sustain'), say('belly.figure.total')];
    const curves = new Map(map?.keys.map(({ key, curve }) => [key, curve]));
    const short = new Set((map?.short ?? []).flatMap(({ fromKey, toKey }) => (map?.keys ?? []).flatMap(({ key }) => (key >= fromKey && key <= toKey ? [key] : []))));
    return [
      tonePlot({ ...shared, figure: 'sustain', states: [{ state: tone.state, label, notes: tone.notes }], heightPx: 240, title: decay, yLabel: decay, description: say('tone.sustain.described', { state: label }), target: throughGaps(curves), flags: short }),
      ...(belly === undefined ? [] : [bearingPlot({ ...shared, figure: 'total', bellies: [{ state: tone.state, label, belly: belly.analysis }], asked: belly.gathered.input.asked, heightPx: 200, title: angle, yLabel: angle, description: say('belly.plots.described', { what: angle, states: label }) })]),
    ];
  }, [belly, compass, locale, map, say, tone, widthPx]);
  const rows = [() => sustainRowsOf(tone, map, (key) => noteNameOf(compass, key)), () => bearingRowsOf(tone.state, belly, (key) => noteNameOf(compass, key))];
  return (
    <div className="key-plots">
      {scenes.map((scene, index) => (
        <figure key={scene.title} className="tone-figure">
          <SceneView scene={scene} selected={selected} onKey={onSelect} />
          <figcaption className="soft small">{index === 0 && say('tone.sustain.about', { share: SHORT_PCT })} <ExportPlot scene={scene} name={index === 0 ? 'sustain map' : 'bearing'} rows={rows[index] ?? (() => [])} /></figcaption>
        </figure>
      ))}
      {belly === undefined && <p className="soft">{say('tone.sustain.noBearing')}</p>}
    </div>
  );
}

function sustainRowsOf({ state, notes }: StateTone, map: SustainMap | undefined, nameOf: (key: KeyNumber) => string): PlotRows {
  const of = new Map(map?.keys.map((own) => [own.key, own]));
  return [['key', 'note', 'state', 'decayS', 'uncertaintyS', 'curveS', 'ratio'], ...notes.flatMap(({ key, figures: { sustain } }) => (sustain === undefined ? [] : [[key, nameOf(key), state, sustain.value, sustain.uncertainty ?? '', of.get(key)?.curve ?? '', of.get(key)?.ratio ?? '']]))];
}

function bearingRowsOf(state: State, belly: StateBelly | undefined, nameOf: (key: KeyNumber) => string): PlotRows {
  return [['key', 'note', 'state', 'totalDeg', 'totalUncertaintyDeg'], ...(belly?.analysis.notes ?? []).flatMap(({ key, figures }) => (figures?.totalDeg === undefined ? [] : [[key, nameOf(key), state, figures.totalDeg, figures.totalUncertaintyDeg ?? '']]))];
}
