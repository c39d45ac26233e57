import { type KeyNumber, noteNameOf } from '#instrument';
import { type Scene, keyPlot, voicingPlot } from '#plot';
import type { VoicedFigure } from '#workshop';
import { useMemo } from 'react';
import { usePiano } from '../../api/piano.tsx';
import { useFigures, useLocale, useSay } from '../../language/use-say.ts';
import { SceneView } from '../../leaves/scene-view.tsx';
import { ExportPlot, type PlotRows } from '../compass/export-plot.tsx';
import type { StateVoicing } from './state-voicing.ts';

interface VoicingPlotsProps {
  readonly figure: VoicedFigure;
  readonly shown: StateVoicing;
  readonly voicings: readonly StateVoicing[];
  readonly widthPx: number;
  readonly selected: KeyNumber | undefined;
  readonly onSelect: (key: KeyNumber) => void;
}

const UNIT = { brightness: '', balance: 'dB' } as const;

/** The hammers of the state looked at, and of every state the softest strike of the keys struck from soft to loud. */
export function VoicingPlots({ figure, shown, voicings, widthPx, selected, onSelect }: VoicingPlotsProps) {
  const say = useSay();
  const figures = useFigures();
  const locale = useLocale();
  const { compass } = usePiano();
  const map = useMemo((): Scene | undefined => {
    const level = shown.gathered.level?.atLevelDb;
    if (shown.map === undefined || level === undefined) return undefined;
    const [name, label] = [say(`tone.figure.${figure}`), say(`state.${shown.state}`)];
    const title = say('tone.voicing.plot', { figure: name, level: figures(level, 1) });
    return voicingPlot({ state: shown.state, label, map: shown.map, repeatability: shown.gathered.level?.repeatability ?? 0, compass, locale, widthPx, heightPx: 240, title, yLabel: title, unitSign: UNIT[figure], description: say('tone.voicing.described', { figure: name, state: label }) });
  }, [compass, figure, figures, locale, say, shown, widthPx]);
  const softest = useMemo((): Scene | undefined => {
    const series = voicings.flatMap(({ state, gathered: { level } }) => (level === undefined ? [] : [{ state, label: say(`state.${state}`), points: level.softToLoud.keys.map(({ key, softestDb }) => ({ key, value: softestDb })) }]));
    const title = say('tone.voicing.softest');
    return series.length === 0 ? undefined : keyPlot({ series, compass, locale, widthPx, heightPx: 170, title, yLabel: title, unitSign: 'dB', description: say('tone.voicing.softest.described', { states: series.map(({ label }) => label).join(', ') }) });
  }, [compass, locale, say, voicings, widthPx]);
  const name = (key: KeyNumber): string => noteNameOf(compass, key);
  return (
    <div className="key-plots">
      {map !== undefined && (
        <figure className="tone-figure">
          <SceneView scene={map} selected={selected} onKey={onSelect} />
          <figcaption className="soft small">{say('tone.voicing.about')} <ExportPlot scene={map} name={`voicing ${figure}`} rows={() => hammerRowsOf(shown, name)} /></figcaption>
        </figure>
      )}
      {softest !== undefined && (
        <figure className="tone-figure">
          <SceneView scene={softest} selected={selected} onKey={onSelect} />
          <figcaption className="soft small">{say('tone.voicing.softest.about')} <ExportPlot scene={softest} name="softest" rows={() => softestRowsOf(voicings, name)} /></figcaption>
        </figure>
      )}
    </div>
  );
}

function hammerRowsOf({ state, map, gathered: { bases, level } }: StateVoicing, nameOf: (key: KeyNumber) => string): PlotRows {
  const head = ['key', 'note', 'state', 'levelDb', 'brightness', 'uncertainty', 'curve', 'offset', 'beyond', 'voice', 'basis'];
  return [head, ...(map?.hammers ?? []).map(({ key, value, uncertainty = '', curve, offset, beyond, voice }) => [key, nameOf(key), state, level?.atLevelDb ?? '', value, uncertainty, curve, offset, beyond, voice, bases.get(key) ?? ''])];
}

function softestRowsOf(voicings: readonly StateVoicing[], nameOf: (key: KeyNumber) => string): PlotRows {
  const head = ['key', 'note', 'state', 'strikes', 'softestDb', 'loudestDb', 'slopePer10Db', 'slopeUncertaintyPer10Db'];
  return [head, ...voicings.flatMap(({ state, gathered: { level } }) => (level?.softToLoud.keys ?? []).map((own) => [own.key, nameOf(own.key), state, own.strikes, own.softestDb, own.loudestDb, own.slopePer10Db ?? '', own.slopeUncertaintyPer10Db ?? '']))];
}
