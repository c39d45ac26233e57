import { type State, compass85, compass88, drawKeyboard, keysOf } from '#instrument';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type KeyPlotOptions, type KeySign, keyPlot, keyUnder, inks, keyboardScene, signShape, stateShape, svgOf, tokenOf } from './index.ts';

const goldens = new URL('./golden/', import.meta.url);

/**
 * Compares text with a kept file. On a mismatch the new text is left beside it as `NAME-changed.EXT` to look at;
 * once looked at, it is renamed over the kept file by hand. A missing file fails likewise: goldens are never made unseen.
 */
function expectGolden(folder: URL, name: string, text: string): void {
  const kept = new URL(name, folder);
  const changed = new URL(name.replace(/(\.\w+)$/u, '-changed$1'), folder);
  const expected = existsSync(kept) ? readFileSync(kept, 'utf8') : '';
  if (expected === text) {
    rmSync(changed, { force: true });
    return;
  }
  writeFileSync(changed, text);
  expect.fail(`${name} differs from its golden file: compare ${changed.pathname}`);
}

const series = (state: State, level: number, swing: number): KeyPlotOptions['series'][number] => ({
  state, label: state,
  points: keysOf(compass88).map((key) => (key === 30 ? { key, outcome: true } : { key, value: level + ((key * 37) % 11) * swing, uncertainty: 0.8 })),
});
const options: KeyPlotOptions = {
  compass: compass88, series: [series('found', 50, 1), series('finished', 48.5, 0.1)],
  band: { from: 47, to: 51 }, target: 49, limit: 44, flags: new Set([12, 40]), highlightKey: 44,
  title: 'Down weight', description: 'Down weight <by key> & state', yLabel: 'Down weight', unitSign: 'g', locale: 'de', widthPx: 760, heightPx: 240,
};
const symbols = (plot: KeyPlotOptions) => keyPlot(plot).marks.filter((mark) => mark.type === 'symbol');

describe('keyPlot', () => {
  it('draws the kept picture in print and in tokens', () => {
    expectGolden(goldens, 'key-plot-print.svg', svgOf(keyPlot(options), 'print'));
    expectGolden(goldens, 'key-plot-tokens.svg', svgOf(keyPlot(options), 'tokens'));
  });

  it('sets every point over the middle of its key', () => {
    const { board } = { board: drawKeyboard(compass88) };
    const scene = keyPlot(options);
    const pxPerMm = (760 - 46) / board.widthMm;
    for (const mark of scene.marks) {
      if (mark.type !== 'symbol' || mark.key === undefined) continue;
      expect(mark.x).toBeCloseTo(40 + (board.keys[mark.key - 1]?.centreMm ?? 0) * pxPerMm, 9);
    }
  });

  it('aligns key by key between plots of the same width, whatever their values and height', () => {
    expect(keyPlot({ ...options, series: [], heightPx: 500 }).columns).toEqual(keyPlot(options).columns);
  });

  it('tells states by shape, not by ink alone', () => {
    const shapes = (['found', 'planned', 'finished'] as const).map((state) => stateShape[state]);
    expect(new Set(shapes).size).toBe(3);
    const drawn = symbols(options).filter((mark) => mark.role === 'finished');
    expect(new Set(drawn.map((mark) => mark.shape))).toEqual(new Set(['square']));
  });

  it('draws one mark for each number and strikes through each outcome', () => {
    const drawn = symbols({ ...options, legend: false, flags: undefined });
    expect(drawn.filter(({ role }) => role === 'found')).toHaveLength(88);
    expect(drawn.filter(({ role }) => role === 'outcome').map(({ key }) => key)).toEqual([30, 30]);
  });

  it('breaks the joining line where a key has no number', () => {
    const line = keyPlot(options).marks.find((mark) => mark.type === 'path' && mark.role === 'found');
    expect(line?.type === 'path' ? line.d.match(/M/gu) : null).toHaveLength(2);
  });

  it('stays finite and inside the drawing for any values', () => {
    const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(fc.property(fc.array(fc.option(value, { nil: undefined }), { maxLength: 85 }), (values) => {
      const scene = keyPlot({ ...options, compass: compass85, series: [{ state: 'found', label: 'x', points: values.map((one, index) => ({ key: index + 1, value: one })) }] });
      const text = svgOf(scene, 'print');
      expect(text).not.toMatch(/NaN|Infinity|undefined/u);
      for (const mark of scene.marks) {
        if (mark.type === 'symbol') expect(mark.y >= 0 && mark.y <= scene.heightPx).toBe(true);
      }
    }), { numRuns: 60 });
  });

  it('prints ticks in the reader’s decimals', () => {
    const texts = keyPlot({ ...options, domain: [0, 1], band: undefined, target: undefined, limit: undefined, series: [] }).marks.flatMap((mark) => (mark.type === 'text' ? [mark.text] : []));
    expect(texts).toContain('0,2');
  });

  it('follows a band that differs by key', () => {
    const from = keysOf(compass88).map((key) => 50 - key / 20);
    const scene = keyPlot({ ...options, band: { from, to: from.map((one) => one + 4) } });
    const band = scene.marks.find((mark) => mark.type === 'path' && mark.role === 'band');
    expect(band?.type === 'path' ? new Set(band.d.split(/[ML]/u).map((point) => point.split(',')[1])).size : 0).toBeGreaterThan(80);
  });
});

describe('pointing', () => {
  it('finds the key under each of its own points and none outside', () => {
    const scene = keyPlot(options);
    for (const { key, centrePx } of scene.columns) expect(keyUnder(scene, centrePx)).toBe(key);
    expect(keyUnder(scene, 10)).toBeUndefined();
    expect(keyUnder(scene, 759)).toBeUndefined();
  });
});

describe('keyboardScene', () => {
  const kinds = Object.keys(signShape) as KeySign[];
  const signs = new Map(keysOf(compass88).flatMap((key) => { const sign = kinds[key % 11]; return sign === undefined ? [] : [[key, sign] as const]; }));

  it('draws the kept picture', () => {
    expectGolden(goldens, 'keyboard.svg', svgOf(keyboardScene({ compass: compass88, signs, title: 'Keys', description: 'Keys by finding', widthPx: 900, highlightKey: 40 }), 'print'));
  });

  it('has a shape of its own for each sign', () => {
    expect(new Set(Object.values(signShape)).size).toBe(kinds.length);
  });

  it('draws every key once and leaves unsigned keys bare', () => {
    const { marks } = keyboardScene({ compass: compass85, signs: new Map([[5, 'heavy']]), title: 'Keys', description: '', widthPx: 900 });
    expect(marks.filter(({ type }) => type === 'rect')).toHaveLength(85);
    expect(marks.filter(({ type }) => type === 'symbol')).toHaveLength(1);
  });
});

describe('svgOf', () => {
  it('escapes what stands in titles and labels', () => {
    const text = svgOf(keyPlot({ ...options, title: '<b>"&\u0007' }), 'print');
    expect(text).toContain('<title>&lt;b&gt;&quot;&amp;</title>');
  });

  it('names no colour of its own on screen', () => {
    const text = svgOf(keyPlot(options), 'tokens');
    expect(text).not.toMatch(/#[0-9a-f]{3,8}\b|rgb|hsl/iu);
    expect(text).toContain('var(--state-found)');
  });

  it('uses only inks the token file of the screens has', () => {
    const tokens = readFileSync(new URL('../web/tokens.css', import.meta.url), 'utf8');
    for (const ink of inks) expect(tokens).toContain(`${tokenOf(ink)}:`);
  });
});
