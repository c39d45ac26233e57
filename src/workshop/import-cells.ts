import { type Basis, type Reading, type State, quantityOf, understandFigure } from '#instrument';
import type { Issue } from '#result';
import type { PlannedColumn } from './import-columns.ts';
import type { RowPlace } from './import-place.ts';
import { type ColumnTarget, targetName } from './import-target.ts';
import { basisOfWord, outcomeOfWord, unguarded } from './import-words.ts';
import { placeText } from './place.ts';
import type { ReadingEntry } from './records.ts';

export interface CellContext {
  readonly columns: readonly PlannedColumn[];
  readonly cycle: number;
  readonly state: State;
  /** Standing readings by place. */
  readonly standing: ReadonlyMap<string, Reading>;
  readonly locale?: string;
}

export interface PlannedCells {
  /** What each figure of the row asks for, in the order of the columns. */
  readonly outcomes: readonly ('create' | 'update' | 'same')[];
  readonly entries: readonly ReadingEntry[];
  readonly issues: readonly Issue[];
  readonly warnings: readonly Issue[];
}

/** Longest cell and remark a reading takes; `readingEntrySchema` holds the same limits. */
const LONGEST_TYPED = 200;
const LONGEST_REMARK = 2000;

type FigureTarget = Extract<ColumnTarget, { quantity: unknown }>;

/** A cell of the file with where it stands. */
interface Cell {
  readonly text: string;
  readonly path: string;
  readonly params: Readonly<Record<string, string | number>>;
}

/** Plans the figures of one row at its place: reads each cell, compares it with what stands there. */
export function planCells(cells: readonly string[], place: RowPlace, rowPath: string, context: CellContext): PlannedCells {
  const cellAt = (index: number): Cell => {
    const column = context.columns[index];
    const name = column?.target ? ` (${targetName(column.target)})` : '';
    return { text: cells[index] ?? '', path: `${rowPath}, column ${column?.letter ?? ''}${name}`, params: { column: column?.letter ?? '' } };
  };
  const filled = context.columns.flatMap(({ target, unit }, index) => (target === null || cellAt(index).text.trim() === '' ? [] : [{ target, unit, cell: cellAt(index) }]));
  const facetOf = (figure: FigureTarget, holds: FigureTarget['holds']): Cell | undefined =>
    filled.find(({ target }) => target.holds === holds && target.quantity === figure.quantity && target.repeat === figure.repeat)?.cell;
  const figures = filled.flatMap(({ target, unit, cell }) => (target.holds === 'figure' ? [{ target, unit, cell }] : []));
  const general = filled.find(({ target }) => target.holds === 'remark')?.cell;
  const planned = figures.map(({ target, unit, cell }, order) =>
    planFigure({ target, unit, cell, place, remark: facetOf(target, 'figureRemark') ?? (order === 0 ? general : undefined), basis: facetOf(target, 'figureBasis') }, context),
  );
  const orphans = filled.filter(({ target }) => (target.holds === 'remark' && figures.length === 0) || (isFacet(target) && facetOf(target, 'figure') === undefined));
  return {
    outcomes: planned.flatMap(({ outcome }) => (outcome === undefined ? [] : [outcome])),
    entries: planned.flatMap(({ entry }) => (entry === undefined ? [] : [entry])),
    issues: [...planned.flatMap(({ issues }) => issues), ...orphans.map(({ cell }) => issueAt(cell, 'required', 'a figure in the same row for this to belong to', 'importFigure'))],
    warnings: planned.flatMap(({ warning }) => (warning === undefined ? [] : [warning])),
  };
}

function isFacet(target: ColumnTarget): target is FigureTarget {
  return target.holds === 'figureRemark' || target.holds === 'figureBasis';
}

function issueAt(cell: Cell, code: Issue['code'], allowed: string, reason: string, params: Issue['params'] = {}): Issue {
  return { code, path: cell.path, given: cell.text, allowed, params: { ...cell.params, ...params, reason } };
}

interface FigureCells {
  readonly target: FigureTarget;
  readonly unit: string | null;
  readonly cell: Cell;
  readonly place: RowPlace;
  readonly remark: Cell | undefined;
  readonly basis: Cell | undefined;
}

interface PlannedFigure {
  readonly outcome?: 'create' | 'update' | 'same';
  readonly entry?: ReadingEntry;
  readonly issues: readonly Issue[];
  readonly warning?: Issue;
}

function planFigure(given: FigureCells, { cycle, state, standing, locale }: CellContext): PlannedFigure {
  const { target, cell, place } = given;
  const { scope } = quantityOf(target.quantity);
  if (scope !== place.scope) return { issues: [issueAt(cell, 'choice', `empty here: ${target.quantity} belongs to ${scope}`, 'importScope', { scope, quantity: target.quantity })] };
  const facets = readFacets(given);
  if (facets.issues.length > 0) return { issues: facets.issues };
  const figure = readFigure(given, locale);
  if (!('content' in figure)) return figure;
  const at = { quantity: target.quantity, scope, index: place.index, repeat: target.repeat };
  const before = standing.get(placeText({ cycle, state, ...at }));
  const remark = facets.remark ?? before?.remark;
  const basis = facets.basis ?? before?.basis;
  const { value, content, warning } = figure;
  const isSame = before !== undefined && before.value === value && before.outcome === (content.outcome ?? null) && before.remark === remark && before.basis === basis;
  if (isSame) return { outcome: 'same', issues: [] };
  const entry: ReadingEntry = { ...at, ...content, ...(remark === undefined ? {} : { remark }), ...(basis === undefined ? {} : { basis }), basedOn: before?.id ?? null };
  return { outcome: before === undefined ? 'create' : 'update', entry, issues: [], ...(warning === undefined ? {} : { warning }) };
}

interface ReadFigure {
  readonly content: Pick<ReadingEntry, 'typed' | 'outcome'>;
  readonly value: number | null;
  readonly warning?: Issue;
}

function readFigure({ target, unit, cell }: FigureCells, locale: string | undefined): ReadFigure | { readonly issues: readonly Issue[] } {
  const outcome = outcomeOfWord(cell.text);
  if (outcome !== undefined) return { content: { outcome }, value: null };
  const typed = unit === null || /[\p{L}"″'%°]/u.test(cell.text) ? cell.text : `${cell.text} ${unit}`;
  if (typed.length > LONGEST_TYPED) return { issues: [issueAt(cell, 'length', `at most ${String(LONGEST_TYPED)} characters`, 'importCell', { max: LONGEST_TYPED, of: 'string' })] };
  const figure = understandFigure(target.quantity, typed, { path: cell.path, ...(locale === undefined ? {} : { locale }) });
  const placed = (issue: Issue): Issue => ({ ...issue, params: { ...issue.params, ...cell.params } });
  if (!figure.ok) return { issues: figure.issues.map(placed) };
  const { value, warning } = figure.value;
  return { content: { typed }, value, ...(warning === undefined ? {} : { warning: placed(warning) }) };
}

function readFacets({ remark, basis }: FigureCells): { readonly remark?: string; readonly basis?: Basis; readonly issues: readonly Issue[] } {
  const issues: Issue[] = [];
  const text = remark === undefined ? undefined : unguarded(remark.text);
  if (remark !== undefined && text !== undefined && text.length > LONGEST_REMARK) {
    issues.push(issueAt(remark, 'length', `at most ${String(LONGEST_REMARK)} characters`, 'importCell', { max: LONGEST_REMARK, of: 'string' }));
  }
  const known = basis === undefined ? undefined : basisOfWord(basis.text);
  if (basis !== undefined && known === undefined) issues.push(issueAt(basis, 'choice', 'measured, estimated or derived', 'importBasis'));
  return { issues, ...(text === undefined ? {} : { remark: text }), ...(known === undefined ? {} : { basis: known }) };
}
