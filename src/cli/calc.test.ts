import { fileURLToPath } from 'node:url';
import { operations } from '#catalogue';
import type { Problem } from '#result';
import { describe, expect, it } from 'vitest';
import { runCommand } from './testing/run-command.ts';

const good = { downWeightG: 49, upWeightG: 26 };
const calc = (input: unknown, ...words: readonly string[]) => runCommand(['calc', 'touch-weight', ...words], typeof input === 'string' || input instanceof Uint8Array ? input : JSON.stringify(input));
const problemIn = (err: string): Problem => JSON.parse(err) as Problem;

describe('calculating at the command line', () => {
  it('answers one case in full, and nothing else on standard output', async () => {
    // common practice, no source: 49 down and 26 up are 37.5 balance and 11.5 friction
    expect(await calc(good, '--json')).toEqual({ code: 0, out: '{"balanceWeightG":37.5,"frictionG":11.5}\n', err: '' });
  });

  it('answers a person in aligned lines with units, in the decimal sign of the shell', async () => {
    expect((await calc(good)).out).toBe('balanceWeightG  37.5 g\nfrictionG       11.5 g\n');
    expect((await runCommand(['calc', 'touch-weight'], JSON.stringify(good), { LC_ALL: 'de_DE.UTF-8' })).out).toContain('37,5 g');
  });

  it('answers an array in order, a refused case among the others, with exit code 2 and a problem on standard error', async () => {
    const { code, out, err } = await calc([good, { downWeightG: 'heavy', upWeightG: 26 }, { downWeightG: 50, upWeightG: 20 }], '--json');
    expect(code).toBe(2);
    expect(JSON.parse(out)).toMatchObject([{ frictionG: 11.5 }, { problem: { status: 422 } }, { frictionG: 15 }]);
    expect(problemIn(err).errors).toMatchObject([{ path: '[1].downWeightG', given: 'heavy', allowed: 'a finite number', code: 'type' }]);
  });

  it('works through ten thousand cases in one process', async () => {
    const cases = Array.from({ length: 10_000 }, (_, index) => ({ downWeightG: 40 + (index % 20), upWeightG: 20 + (index % 7) / 10 }));
    const { code, out, err } = await calc(cases, '--json');
    expect([code, err]).toEqual([0, '']);
    const answers = JSON.parse(out) as { balanceWeightG: number; frictionG: number }[];
    expect(answers).toHaveLength(cases.length);
    answers.forEach(({ balanceWeightG, frictionG }, index) => {
      expect(balanceWeightG + frictionG).toBeCloseTo(cases[index]?.downWeightG ?? Number.NaN, 9);
    });
  });

  it('an array without a case is refused by name, and nothing is answered', async () => {
    const { code, out, err } = await calc([], '--json');
    expect([code, out, problemIn(err).errors]).toEqual([2, '', [expect.objectContaining({ code: 'length', path: '', given: '[]', allowed: 'one case of touch-weight, or a list of at least 1' })]]);
  });

  it('an up weight above the down weight is refused by its name, and nothing is answered', async () => {
    const { code, out, err } = await calc({ downWeightG: 26, upWeightG: 49 }, '--json');
    expect([code, out, problemIn(err).errors]).toEqual([2, '', [expect.objectContaining({ code: 'order', path: 'upWeightG', given: 49, allowed: 'at most the down weight, 26' })]]);
  });

  it('a name that stands twice is refused, so that the first figure is not dropped in silence', async () => {
    const { code, out, err } = await calc('[{"downWeightG":49,"upWeightG":26},{"downWeightG":49,"upWeightG":26,"downWeightG":52}]', '--json');
    expect([code, out, problemIn(err).errors]).toEqual([2, '', [expect.objectContaining({ code: 'duplicate', path: '[1].downWeightG' })]]);
  });

  it.each([
    ['1e999', '{"downWeightG":1e999,"upWeightG":26}', ['downWeightG']],
    ['two wrong fields and a stranger', '{"downWeightG":null,"upWieghtG":26}', ['downWeightG', 'upWeightG', 'upWieghtG']],
    ['no JSON', '{"downWeightG":49,\n"upWeightG":}', ['line 2, column 13']],
    ['nothing', '', ['line 1, column 1']],
    ['a lone number', '49', ['']],
  ])('refuses %s by naming the place, writes nothing to standard output', async (_, input, paths) => {
    const { code, out, err } = await calc(input, '--json');
    expect([code, out]).toEqual([2, '']);
    expect(problemIn(err).errors.map(({ path }) => path)).toEqual(paths);
  });

  it('takes a byte order mark, and UTF-16 as some shells write it', async () => {
    const text = JSON.stringify(good);
    for (const bytes of [Buffer.from(`\uFEFF${text}`), Buffer.from(`\uFEFF${text}`, 'utf16le')]) expect((await calc(bytes, '--json')).code).toBe(0);
    expect((await calc(Buffer.from([0x7b, 0xff, 0xfe, 0x7d]), '--json')).code).toBe(2);
  });

  it('lists the calculations, as lines and in full', async () => {
    await expect((await runCommand(['calc', '--list'])).out).toMatchFileSnapshot('./golden/calc-list.txt');
    const listed = JSON.parse((await runCommand(['calc', '--list', '--json'])).out) as { name: string; inputSchema: object; outputSchema: object; sources: unknown[] }[];
    expect(listed.map(({ name }) => name)).toEqual(operations.map(({ name }) => name));
    for (const { inputSchema, outputSchema, sources } of listed) {
      expect([inputSchema, outputSchema].every((schema) => '$schema' in schema)).toBe(true);
      expect(sources.length).toBeGreaterThan(0);
    }
  });

  it('takes fields as options, in the decimal sign of the shell, and refuses an option that is no field', async () => {
    expect((await runCommand(['calc', 'touch-weight', '--downWeightG', '49,5', '--upWeightG', '26.5', '--json'], '', { LC_ALL: 'de_DE.UTF-8' })).out).toBe('{"balanceWeightG":38,"frictionG":11.5}\n');
    const { code, out, err } = await runCommand(['calc', 'touch-weight', '--downWeightG', 'heavy', '--upWieghtG', '26', '--json']);
    expect([code, out]).toEqual([2, '']);
    expect(problemIn(err).errors.map(({ path, code: why }) => [path, why])).toEqual([['--downWeightG', 'format'], ['--upWieghtG', 'unknown']]);
    expect((await runCommand(['calc', 'evenness', '--values', '[1,2,3,4]', '--step', '1', '--json'])).code).toBe(0);
  });

  it('takes a recording by its path, as an option and in a list, and names the one that cannot be read', async () => {
    const file = fileURLToPath(new URL('../recording/museum/tone.flac', import.meta.url));
    expect(JSON.parse((await runCommand(['calc', 'recording-level', '--file', file, '--json'])).out)).toMatchObject({ sampleRateHz: 16_000, durationS: 0.5 });
    const { code, out, err } = await runCommand(['calc', 'recording-level', '--json'], JSON.stringify([{ file }, { file: 'none.wav' }]));
    expect([code, problemIn(err).errors.map(({ path }) => path)]).toEqual([2, ['[1].file']]);
    expect(JSON.parse(out)).toMatchObject([{ channels: [{ clippedRuns: 0 }] }, { problem: { status: 422 } }]);
  });

  it('prints an example that runs', async () => {
    const { out } = await runCommand(['calc', 'touch-weight', '--example']);
    expect((await calc(out, '--json')).code).toBe(0);
  });

  it('a name that is none is refused', async () => {
    const { code, out, err } = await runCommand(['calc', 'nothing'], '{}');
    expect([code, out, problemIn(err).status]).toEqual([2, '', 404]);
  });
});
