import { describe, expect, it } from 'vitest';
import { storePlaceOf } from './data-folder.ts';
import { localeOfShell } from './language.ts';
import { runCommand } from './testing/run-command.ts';

describe('the command line', () => {
  it.each([['C', 'help.en.txt'], ['de_DE.UTF-8', 'help.de.txt']])('helps in the language of the shell (%s)', async (language, golden) => {
    const { code, out, err } = await runCommand(['--help'], '', { LC_ALL: language });
    expect([code, err]).toEqual([0, '']);
    await expect(out).toMatchFileSnapshot(`./golden/${golden}`);
  });

  it.each([
    [[]],
    [['nothing']],
    [['pianos', '--bogus']],
    [['demo', 'sell']],
    [['audit']],
    [['serve', '--port', 'many']],
    [['serve', '--port', '70000']],
  ])('%j is refused with exit code 2, in words on standard error alone', async (words) => {
    const { code, out, err } = await runCommand(words);
    expect([code, out]).toEqual([2, '']);
    expect(err).not.toBe('');
    expect(err).not.toContain('    at ');
  });

  it('completes commands and the names of calculations', async () => {
    const completions = async (...words: readonly string[]) => (await runCommand(['--get-yargs-completions', 'wrestplank', ...words], '', { SHELL: '/bin/bash' })).out.trim().split('\n');
    expect(await completions('calc', 'touch-w')).toEqual(['touch-weight']);
    expect(await completions('')).toEqual(expect.arrayContaining(['serve', 'calc', 'demo', 'pianos']));
    expect((await runCommand(['completion'], '', { SHELL: '/bin/bash' })).out).toContain('wrestplank');
  });
});

describe('where the bench book is kept', () => {
  it('is named by --data, then a server, then WRESTPLANK_DATA, then the folder of the user', () => {
    const environment = { WRESTPLANK_DATA: '/data', WRESTPLANK_DATABASE_URL: 'postgres://bench' };
    expect(storePlaceOf('/asked', environment)).toEqual({ dataDir: '/asked' });
    expect(storePlaceOf(undefined, environment)).toEqual({ databaseUrl: 'postgres://bench', photosDir: '/data/photos', recordingsDir: '/data/recordings', loggersDir: '/data/loggers' });
    expect(storePlaceOf(undefined, { WRESTPLANK_DATA: '/data' })).toEqual({ dataDir: '/data' });
    expect(storePlaceOf(undefined, {})).toMatchObject({ dataDir: expect.stringMatching(/wrestplank$/iu) as string });
  });
});

describe('the language of the shell', () => {
  it.each([
    [{ LANG: 'de_DE.UTF-8' }, 'de-DE'],
    [{ LC_ALL: '', LANG: 'de_AT@euro' }, 'de-AT'],
    [{ LC_ALL: 'C', LANG: 'de_DE.UTF-8' }, 'en'],
    [{ LANG: 'C.UTF-8' }, 'en'],
    [{ LANG: 'POSIX' }, 'en'],
    [{ LANG: 'nonsense in LANG' }, 'en'],
    [{}, 'en'],
  ])('%j is %s', (environment, locale) => {
    expect(localeOfShell(environment)).toBe(locale);
  });
});
