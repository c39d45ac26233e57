/** One per-key plot of two states as an SVG string: our scene, against a general chart library drawing the same points. */
import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';
import { compass88 } from '#instrument';
import { keyPlot, svgOf } from '#plot';
import { duel, report } from './measure.mjs';

const { document } = parseHTML('<html><body></body></html>');
const pointsAt = (shift) => Array.from({ length: 88 }, (_, index) => ({ key: index + 1, value: 49 + 3 * Math.sin(index + shift) }));

const ours = (run) =>
  svgOf(keyPlot({
    compass: compass88, title: 'Down weight', description: 'Down weight by key', yLabel: 'Down weight', unitSign: 'g', locale: 'en', widthPx: 900, heightPx: 210,
    series: [{ state: 'found', label: 'As found', points: pointsAt(run) }, { state: 'finished', label: 'As finished', points: pointsAt(run + 1) }],
    band: { from: 47, to: 51 },
  }), 'print').length;

const general = (run) =>
  Plot.plot({
    document, width: 900, height: 210, y: { label: 'Down weight (g)' },
    marks: [
      Plot.rectY([0], { x1: 0, x2: 89, y1: 47, y2: 51, fillOpacity: 0.2 }),
      Plot.line(pointsAt(run), { x: 'key', y: 'value' }), Plot.dot(pointsAt(run), { x: 'key', y: 'value' }),
      Plot.line(pointsAt(run + 1), { x: 'key', y: 'value' }), Plot.dot(pointsAt(run + 1), { x: 'key', y: 'value', symbol: 'square' }),
    ],
  }).outerHTML.length;

report('plots', { unit: 'ms a plot', ...(await duel(ours, general, { runs: 60 })) });
