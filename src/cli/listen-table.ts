import { compass88, noteNameOf } from '#instrument';
import { type Issue, sayIssue } from '#result';
import { explainIssue } from '#text';
import { locale, say } from './language.ts';
import { aligned } from './output.ts';

/** What a table shows of a note, as `tone-note` answers it; what could not be measured is absent. */
export interface HeardNote {
  readonly key?: number | null;
  readonly reason?: string;
  readonly f0Hz?: number;
  readonly offsetCents?: number;
  readonly inharmonicityB?: number;
  readonly startS?: number;
  readonly decay?: { readonly t20S?: number; readonly edt10S?: number };
  readonly descriptors?: { readonly harmonicCentroid?: number; readonly balanceDb?: number };
  readonly quality?: { readonly warnings?: readonly string[] };
}

/** What became of one file: its answer, or why there is none. */
export type Listened = { readonly file: string; readonly answer: HeardNote & { readonly notes?: readonly HeardNote[] } } | { readonly file: string; readonly issues: readonly Issue[] };

const figure = (digits: number): Intl.NumberFormat => new Intl.NumberFormat(locale, { minimumFractionDigits: digits, maximumFractionDigits: digits, useGrouping: false });
const NONE = '—';
const shown = (value: number | undefined, digits: number): string => (value === undefined ? NONE : figure(digits).format(value));

/** One line for each note of each file, aligned: key, pitch, deviation, inharmonicity, decay, brightness, what to doubt. */
export function listenTable(files: readonly Listened[]): string {
  const heads = (['file', 'key', 'pitch', 'offset', 'inharmonicity', 'decay', 'brightness', 'remarks'] as const).map((name) => say(`cli.listen.head.${name}`));
  return aligned([heads, ...files.flatMap(rowsOf)]);
}

function rowsOf(listened: Listened): readonly (readonly string[])[] {
  const { file } = listened;
  if ('issues' in listened) return [[file, NONE, NONE, NONE, NONE, NONE, NONE, listened.issues.map((issue) => explainIssue(say, issue, locale) || sayIssue(issue)).join(' ')]];
  const { answer } = listened;
  const notes = answer.notes ?? [answer];
  if (notes.length === 0) return [[file, NONE, NONE, NONE, NONE, NONE, NONE, say('cli.listen.noNotes')]];
  return notes.map((note) => [note.startS === undefined ? file : `${file} ${figure(2).format(note.startS)} s`, ...cellsOf(note)]);
}

function cellsOf({ key, f0Hz, offsetCents, inharmonicityB, decay, descriptors, quality, reason }: HeardNote): readonly string[] {
  return [
    key === undefined || key === null ? NONE : `${noteNameOf(compass88, key)} (${String(key)})`,
    shown(f0Hz, 2),
    shown(offsetCents, 1),
    inharmonicityB === undefined ? NONE : inharmonicityB.toExponential(2).replace('.', figure(1).format(0.1).slice(1, 2)),
    shown(decay?.t20S ?? decay?.edt10S, 1),
    shown(descriptors?.harmonicCentroid, 2),
    [...(reason === undefined ? [] : [wordsOf('nothing', reason)]), ...(quality?.warnings ?? []).map((warning) => wordsOf('warning', warning))].join(' '),
  ];
}

function wordsOf(kind: 'nothing' | 'warning', code: string): string {
  const key = `tone.${kind}.${code}`;
  return say.knows(key) ? say(key) : code;
}
