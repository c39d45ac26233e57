import type { Photo } from '#instrument';
import { listedMaterials } from '#law';
import { checkInput } from '#operation';
import { type Issue, type Result, andThen, ok, refuse } from '#result';
import { type UnitId, parseMeasure } from '#units';
import { type PaperDraft, type PaperMaterial, paperDraftSchema, paperIssues } from '#workshop';
import { figureReader, shownFigure } from '../action/terms/typed-figures.ts';
import type { CardField } from '../shop/card-fields.ts';
import { fieldsStated, fieldsTyped } from '../shop/card-form.ts';

/** A row of like pieces as typed. */
export interface PiecesForm {
  readonly words: string;
  readonly area: string;
  readonly count: string;
  readonly thicknesses: string;
  readonly gauge: string;
}

/** A material as typed. */
export interface MaterialForm {
  readonly fields: Readonly<Record<string, string>>;
  readonly pieces: readonly PiecesForm[];
  readonly photos: readonly Photo[];
  readonly documents: readonly { readonly name: string; readonly sha256: string }[];
}

const area = 'papers.field';
const truth = (path: string): CardField => ({ path, as: 'truth', isOptional: true, area });
const figure = (path: string, unit: UnitId): CardField => ({ path, as: 'number', isOptional: true, area, unit });

/** The plain fields of a material, in the order they are asked for. */
export const materialFields: readonly CardField[] = [
  { path: 'material', as: 'choice', choices: listedMaterials.filter((one) => one !== 'crate:solid-wood'), words: 'papers.material', area },
  { path: 'where', as: 'line', maxLength: 200, area },
  { path: 'species', as: 'choice', choices: ['doubtful', 'proven'], words: 'papers.species', area },
  { path: 'evidence', as: 'lines', maxLength: 4000, isOptional: true, area },
  { path: 'judgedBy', as: 'line', maxLength: 200, isOptional: true, area },
  figure('massG', 'g'), figure('massUncertaintyG', 'g'),
  { path: 'massHow', as: 'choice', choices: ['', 'weighed', 'measured', 'estimated'], words: 'papers.massHow', isOptional: true, area },
  figure('densityGPerCm3', 'gcm3'), figure('densityUncertaintyGPerCm3', 'gcm3'),
  truth('isRaw'), truth('isFixed'), truth('isFinished'), truth('isCertifiedPreConvention'), truth('isTakenBefore1976'),
];

/** A row nobody typed into yet. */
export const emptyRow: PiecesForm = { words: '', area: '', count: '', thicknesses: '', gauge: '' };

/** The form of a material that stands, or of a new one. */
export function materialFormOf(material: PaperMaterial | undefined, locale: string): MaterialForm {
  return {
    fields: fieldsTyped(materialFields, material, locale),
    pieces: material?.pieces.map(({ words, areaMm2, count, thicknessesMm, gaugeUncertaintyMm }) => ({
      words, area: shownFigure(areaMm2, locale), count: String(count), thicknesses: thicknessesMm.map((one) => shownFigure(one, locale)).join('; '), gauge: shownFigure(gaugeUncertaintyMm, locale),
    })) ?? [],
    photos: material?.photos ?? [], documents: material?.documents ?? [],
  };
}

/** The material a form states, or which fields are wrong. */
export function materialDraftOf({ fields, pieces, photos, documents }: MaterialForm, locale: string): Result<PaperDraft> {
  const plain = fieldsStated(materialFields, fields, locale);
  const rows = pieces.map((row, index) => piecesOf(row, `pieces[${String(index)}]`, locale));
  const issues = [...(plain.ok ? [] : plain.issues), ...rows.flatMap((row) => (row.ok ? [] : row.issues))];
  if (!plain.ok || issues.length > 0) return refuse(...issues);
  const { evidence, judgedBy, ...rest } = plain.value;
  const draft = { kind: 'material', ...rest, evidence: evidence ?? '', judgedBy: judgedBy ?? '', pieces: rows.flatMap((row) => (row.ok ? [row.value] : [])), photos: [...photos], documents: [...documents] };
  return andThen(checkInput(paperDraftSchema, draft), (record) => {
    const wrong = paperIssues(record);
    return wrong.length > 0 ? refuse(...wrong) : ok(record);
  });
}

/** Thicknesses parted by semicolons, spaces or line breaks; each must be a figure. */
export function thicknessesTyped(typed: string, path: string, locale: string): Result<readonly number[]> {
  const results = typed.split(/[;\s]+/u).filter((one) => one !== '').map((one) => parseMeasure(one, { unit: 'mm', path, locale }));
  const issues: readonly Issue[] = results.flatMap((one) => (one.ok ? [] : one.issues));
  return issues.length > 0 ? refuse(...issues) : ok(results.flatMap((one) => (one.ok ? [one.value.value] : [])));
}

function piecesOf(row: PiecesForm, path: string, locale: string): Result<PaperMaterial['pieces'][number]> {
  const reader = figureReader(locale);
  const needed = (typed: string, name: string, unit: 'mm' | '1'): number => {
    if (typed.trim() === '') gaps.push({ code: 'required', path: `${path}.${name}`, given: '', allowed: 'something stated' });
    return reader.read(typed, `${path}.${name}`, unit) ?? 0;
  };
  const gaps: Issue[] = [];
  const thicknesses = thicknessesTyped(row.thicknesses, `${path}.thicknessesMm`, locale);
  const value = { words: row.words.trim(), areaMm2: needed(row.area, 'areaMm2', '1'), count: needed(row.count, 'count', '1'), thicknessesMm: thicknesses.ok ? [...thicknesses.value] : [], gaugeUncertaintyMm: needed(row.gauge, 'gaugeUncertaintyMm', 'mm') };
  const issues = [...gaps, ...reader.issues, ...(thicknesses.ok ? [] : thicknesses.issues)];
  return issues.length > 0 ? refuse(...issues) : ok(value);
}
