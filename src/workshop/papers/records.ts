import { MOST_PHOTOS, photoSchema } from '#instrument';
import { LEAST_THICKNESSES, listedMaterials } from '#law';
import { z } from 'zod';
import { changeOf } from '../change.ts';

const line = (most: number) => z.string().max(most).regex(/^\P{Cc}*$/u, 'one line');
const known = z.boolean().nullable().default(null);
const massG = z.number().min(0).max(1_000_000);
const thicknessMm = z.number().min(0.05).max(50);

/** Like pieces of ivory whose thickness was read at some of them. */
const pieces = z.strictObject({
  words: line(120).default(''),
  areaMm2: z.number().min(1).max(1_000_000),
  count: z.number().int().min(1).max(10_000),
  /** Read at ten pieces or more, at least at four. */
  thicknessesMm: z.array(thicknessMm).min(LEAST_THICKNESSES).max(200),
  /** Standard uncertainty of the calliper or gauge, the same fault for every reading. */
  gaugeUncertaintyMm: z.number().min(0).max(5),
});

const material = z.strictObject({
  kind: z.literal('material'),
  material: z.enum(listedMaterials),
  /** Where in the instrument, and how much of it. */
  where: line(200).pipe(z.string().trim().min(1)),
  /** Whether the species is proven; what is doubtful is asked about as the widest kind it is of. */
  species: z.enum(['proven', 'doubtful']),
  massG: massG.nullable().default(null),
  massUncertaintyG: massG.nullable().default(null),
  massHow: z.enum(['weighed', 'measured', 'estimated']).nullable().default(null),
  /** Rows of like pieces, where the mass follows from thickness; a mass that is stated counts before it. */
  pieces: z.array(pieces).max(20).default([]),
  densityGPerCm3: z.number().min(1).max(3).nullable().default(null),
  densityUncertaintyGPerCm3: z.number().min(0).max(1).nullable().default(null),
  isRaw: known, isFixed: known, isFinished: known, isCertifiedPreConvention: known, isTakenBefore1976: known,
  evidence: z.string().max(4000).default(''),
  judgedBy: line(200).default(''),
  photos: z.array(photoSchema).max(MOST_PHOTOS).default([]),
  /** Documents kept elsewhere, each known again by the SHA-256 of its bytes. */
  documents: z.array(z.strictObject({ name: line(200).pipe(z.string().trim().min(1)), sha256: z.string().regex(/^[0-9a-f]{64}$/u, '64 hexadecimal digits') })).max(20).default([]),
});

const history = z.strictObject({
  kind: z.literal('history'),
  /** As far as it is proven; the year on the card of the piano proves nothing. */
  yearMade: z.number().int().min(1700).max(2200).nullable().default(null),
  yearEvidence: z.string().max(4000).default(''),
  ivoryVolumePct: z.number().min(0).max(100).nullable().default(null),
  ivoryValuePct: z.number().min(0).max(100).nullable().default(null),
  isRepairedWithListedSince1973: known, isImportedToUsBefore1990: known, isPlayedUntilRecently: known, isForRepairBefore1975: known,
  evidence: z.string().max(4000).default(''),
});

/** Drafts of what papers hang on: a material of the instrument, and what is proven of its history. */
export const paperDrafts = { material, history } as const;
export type PaperKind = keyof typeof paperDrafts;
/** A record as it is written down. */
export const paperDraftSchema = z.discriminatedUnion('kind', [material, history]);
export type PaperDraft = z.input<typeof paperDraftSchema>;
/** A draft whose defaults are filled in. */
export type PaperGiven = z.output<typeof paperDraftSchema>;

const standing = { id: z.string(), at: z.string() };
/** A record as it is kept. */
export const paperRecordSchema = z.discriminatedUnion('kind', [z.strictObject({ ...material.shape, ...standing }), z.strictObject({ ...history.shape, ...standing })]);
export type PaperRecord = z.output<typeof paperRecordSchema>;
export type PaperMaterial = Extract<PaperRecord, { readonly kind: 'material' }>;
export type PaperHistory = Extract<PaperRecord, { readonly kind: 'history' }>;

/** A change of a record: its kind, and the fields that are to be another. */
export const paperChangeSchema = z.discriminatedUnion('kind', [
  z.strictObject({ ...changeOf(material.shape).shape, kind: material.shape.kind }),
  z.strictObject({ ...changeOf(history.shape).shape, kind: history.shape.kind }),
]);
export type PaperChange = z.input<typeof paperChangeSchema>;

