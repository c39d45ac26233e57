import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Block, type ReportDocument, buildReport, cell, noteRuns, textOf } from './index.ts';

const report = (blocks: readonly Block[], pageOf = '{page} of {pages}'): ReportDocument => ({
  title: 'Title', subtitle: 'Sub', language: 'en', madeAt: '2026-11-25', demo: false, furniture: { runningHead: '', runningFoot: '', demo: 'DEMO', pageOf }, blocks,
});
const table = (cells: number): Block => ({
  type: 'table', caption: 'T', strips: 1, rowHeads: true, columns: [{ label: 'a', align: 'start', width: 1 }, { label: 'b', align: 'end', width: 'auto' }], rows: [Array.from({ length: cells }, (_, index) => cell(String(index)))],
});

describe('buildReport', () => {
  it('answers a well-formed report as it is', () => {
    const document = report([{ type: 'heading', level: 1, text: 'One' }, { type: 'heading', level: 2, text: 'Two' }, table(2)]);
    expect(buildReport(document)).toBe(document);
  });

  it('refuses a skipped heading level, a ragged table, a figure without words and a page label without numbers', () => {
    const scene = { widthPx: 1, heightPx: 1, title: '', description: '', marks: [], columns: [] };
    expect(() => buildReport(report([{ type: 'heading', level: 2, text: 'Two' }]))).toThrow('level 2 below level 0');
    expect(() => buildReport(report([table(3)]))).toThrow('row 1 has 3 cells for 2 columns');
    expect(() => buildReport(report([{ type: 'figure', scene, alt: ' ', caption: 'Plot' }]))).toThrow('does not say what it shows');
    expect(() => buildReport(report([], 'page'))).toThrow('{page}');
  });
});

describe('textOf', () => {
  it('holds every word in reading order', () => {
    expect(textOf(report([{ type: 'keyValues', rows: [{ label: 'Year', value: cell('not stated', 'quiet') }] }, table(2), { type: 'list', items: ['x', 'y'] }])))
      .toBe('Title\nSub\nYear: not stated\na\tb\n0\t1\nx\ny');
  });
});

describe('noteRuns', () => {
  it('draws neighbours together', () => {
    const compass = { firstMidi: 21, lastMidi: 108 };
    expect(noteRuns([3, 1, 2, 5, 7, 8], compass)).toBe('A0–B0, C♯1, D♯1, E1');
  });

  it('names every key once, whatever the set', () => {
    const compass = { firstMidi: 0, lastMidi: 127 };
    fc.assert(fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 128 })), (keys) => {
      const runs = noteRuns(keys, compass) === '' ? [] : noteRuns(keys, compass).split(', ');
      const named = runs.map((run) => run.split('–').length);
      expect(named.every((count) => count <= 2)).toBe(true);
      expect(runs.length).toBeLessThanOrEqual(keys.length);
    }));
  });
});
