import { explainIssue, createSay, languages } from '#text';
import { describe, expect, it } from 'vitest';
import { fileIssue } from './named-file.ts';

describe('what stood in the way of a file', () => {
  it.each(languages)('is said in words, and only a trouble nobody foresaw by its code, in %s', (language) => {
    const say = createSay(language);
    for (const doing of ['read', 'write'] as const) {
      for (const code of ['ENOENT', 'ENOTDIR', 'EISDIR', 'EACCES', 'EPERM', 'EROFS']) {
        const words = explainIssue(say, fileIssue('found.csv', Object.assign(new Error('no'), { code }), doing), language);
        expect(words).not.toContain(code);
        expect(words.includes('found.csv')).toBe(doing === 'write');
      }
      expect(explainIssue(say, fileIssue('found.csv', Object.assign(new Error('no'), { code: 'EIO' }), doing), language)).toContain('EIO');
    }
  });
});
