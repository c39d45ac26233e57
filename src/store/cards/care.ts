import { type CareCard, type CareChange, type CareDraft, type LoggerFile, careCardSchema, careDraftSchema, careDrafts, careIssues } from '#workshop';
import type { Issue } from '#result';
import { StoreFailure } from '../bench-store.ts';
import { fitting, stated } from '../check.ts';
import type { Bench } from '../database.ts';
import { unkeptSides } from '../photos.ts';
import { writeAt } from '../write.ts';
import { cardAt, cardThere, fieldChange } from './card.ts';
import { personIssues } from './named-person.ts';
import { withdrawing } from './withdraw.ts';

const REFUSED = 'The card cannot be kept as given.';

/** The place of the one plan of a piano. */
const PLAN = 'plan';

/** Keeps air read by hand, the plan of care, or a move. */
export async function addCare(bench: Bench, id: string, draft: CareDraft, by: string): Promise<CareCard> {
  const wanted = checked(bench, draft);
  return await writeAt(bench, id, by, async ({ tx, chain, at }) => {
    if (wanted.kind === 'move') refuseWhere(await personIssues({ tx, chain }, 'mover', wanted.mover));
    const place = wanted.kind === 'plan' ? PLAN : bench.newId();
    if (wanted.kind === 'plan') refuseStanding(await cardAt(tx, chain, 'care', PLAN), 'plan', 'one plan; change the one that stands');
    return added({ ...wanted, id: place, madeAt: at.toISOString() });
  });
}

/** Keeps the file of a logger whole, by the hash of its bytes, with how it is read. A file that stands already is refused, so that nothing is there twice. */
export async function addLogger(bench: Bench, id: string, bytes: Uint8Array, file: LoggerFile, by: string): Promise<CareCard> {
  const { hash } = bench.loggers.keep(bytes);
  const wanted = fitting(careDrafts.logger, { ...file, kind: 'logger', hash }, REFUSED);
  return await writeAt(bench, id, by, async ({ tx, chain, at }) => {
    refuseStanding(await cardAt(tx, chain, 'care', hash), 'file', 'a file that is not in the log yet; this one is, and nothing was added');
    return added({ ...wanted, id: hash, madeAt: at.toISOString() });
  });
}

/** The bytes of a logger’s file. @throws StoreFailure `notFound`. */
export function readLoggerFile({ loggers }: Bench, hash: string): Promise<Uint8Array> {
  return Promise.resolve(loggers.read(hash));
}

/** Changes a card; fields left out stay. */
export async function changeCare(bench: Bench, id: string, cardId: string, change: CareChange, by: string): Promise<CareCard> {
  return await writeAt(bench, id, by, async ({ tx, chain }) => {
    const body = careCardSchema.parse(await cardThere(tx, chain, 'care', cardId));
    const { id: place, madeAt, ...told } = body;
    if (told.kind !== change.kind) throw new StoreFailure('refused', REFUSED, [{ code: 'choice', path: 'kind', given: change.kind, allowed: told.kind, params: { choices: told.kind } }]);
    const wanted = checked(bench, { ...told, ...stated(change) });
    if (wanted.kind === 'move' && !(told.kind === 'move' && told.mover === wanted.mover)) refuseWhere(await personIssues({ tx, chain }, 'mover', wanted.mover));
    const made = fieldChange('care', place, told, wanted);
    return { kind: 'care.changed', changes: made === undefined ? [] : [made], answer: () => ({ ...wanted, id: place, madeAt }) };
  });
}

/** Withdraws a card; a logger’s file stays kept. */
export const withdrawCare = withdrawing<CareCard>('care', (body) => careCardSchema.parse(body));

function added(card: CareCard) {
  return { kind: 'care.added', changes: [{ entity: 'care', place: card.id, before: null, after: card }], answer: () => card } as const;
}

function checked(bench: Bench, draft: CareDraft) {
  const wanted = fitting(careDraftSchema, draft, REFUSED);
  refuseWhere([...careIssues(wanted), ...(wanted.kind === 'move' ? unkeptSides(bench, wanted) : [])]);
  return wanted;
}

function refuseWhere(issues: readonly Issue[]): void {
  if (issues.length > 0) throw new StoreFailure('refused', REFUSED, issues);
}

function refuseStanding(standing: unknown, path: 'plan' | 'file', allowed: string): void {
  if (standing !== undefined) throw new StoreFailure('conflict', allowed, [{ code: 'conflict', path, given: path, allowed, params: { reason: `care.${path}` } }]);
}
