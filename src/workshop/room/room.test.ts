import { compass88 } from '#instrument';
import { reverberationOperation, roomFitOperation, roomNotesOperation, roomPlanOperation } from '#room';
import { runOperation } from '#operation';
import { cubicMetres, ratio, seconds } from '#units';
import { describe, expect, it } from 'vitest';
import { roomConsequencesOf } from './consequences.ts';
import { demoRooms } from './demo-rooms.ts';
import { measuredTimesOf, roomFitOf, doubtsOf } from './fitting.ts';
import { hangingAdviceOf } from './hanging.ts';
import { type RoomGiven, roomDraftSchema } from './record.ts';
import { roomCalculated, roomInputOf, roomIssues } from './room-input.ts';

const [bare, furnished] = demoRooms().flatMap((step) => (step.kind === 'room' ? [roomDraftSchema.parse(step.draft)] : []));
if (bare === undefined || furnished === undefined) throw new Error('the demo has two rooms');
const piano = { compass: compass88, a4Hz: 440 };
const known = (given: RoomGiven) => {
  const result = roomConsequencesOf(given, piano);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};

describe('a room kept with the piano', () => {
  it('covers each side with no more than there is of it, and leaves the rest bare', () => {
    const { surfaces, plan } = roomInputOf(bare);
    const of = (side: string | number): number => surfaces.filter(({ on }) => on === side).reduce((sum, { areaM2 }) => sum + areaM2, 0);
    expect(of('floor')).toBeCloseTo(plan.floorM2, 9);
    expect(of(1)).toBeCloseTo(7.2 * 3, 9);
    expect(roomIssues({ ...bare, people: 200 })).toMatchObject([{ path: 'people', params: { reason: 'sideFull' } }]);
    expect(roomIssues({ ...bare, walls: bare.walls.slice(1) })).toMatchObject([{ path: 'walls' }]);
    expect(roomIssues({ ...bare, plan: { shape: 'points', points: [[0, 0], [4000, 4000], [4000, 0], [0, 4000]].map(([alongMm = 0, acrossMm = 0]) => ({ alongMm, acrossMm })) } })).toMatchObject([{ params: { reason: 'wallsCross' } }]);
  });

  it('answers as the operations it opens to', () => {
    const { input, times, model, midS } = known(bare);
    for (const formula of ['sabine', 'eyring'] as const) expect(runOperation(reverberationOperation, { ...roomCalculated(input), model: formula })).toMatchObject({ ok: true, value: { seconds: [...times[formula]] } });
    expect(runOperation(reverberationOperation, { ...roomCalculated(input), model })).toMatchObject({ ok: true, value: { midS } });
    expect(runOperation(roomPlanOperation, { points: input.points, heightMm: input.box.heightMm })).toMatchObject({ ok: true, value: { volumeM3: input.plan.volumeM3 } });
  });

  it('holds the notes the operation tells, worked out by a shorter way', () => {
    const { input: { box, temperatureC }, midS, notes } = known(bare);
    const answer = runOperation(roomNotesOperation, { ...box, temperatureC, reverberationS: midS });
    expect(answer.ok && answer.value.notes).toEqual(notes.map((note) => ({ ...note, booms: note.booms.map((boom) => ({ ...boom, mode: { ...boom.mode, order: [...boom.mode.order] } })) })));
  });

  it('is judged only where a use is stated, and told loud only where a power is', () => {
    const plain = known({ ...bare, use: null, loudness: null });
    expect([plain.target, plain.loudness]).toEqual([undefined, undefined]);
    expect(hangingAdviceOf(plain)).toEqual([]);
  });
});

describe('a target of the shop’s own', () => {
  const standard = { id: 's', name: 'House music', time: { slopeS: seconds(0.45), offsetS: seconds(0.07) }, lower: [0.65, 0.8, 0.8, 0.8, 0.8, 0.65].map(ratio), upper: [1.45, 1.2, 1.2, 1.2, 1.2, 1.2].map(ratio), volumes: null, source: 'Invented' };

  it('goes before the use, judges as the standard does where it says the same, and is named', () => {
    const [own, din] = [known({ ...bare, use: 'speech', standard }).target, known({ ...bare, use: 'music' }).target];
    expect(own).toMatchObject({ standard: 'House music: Invented', outsideVolumes: false });
    expect([own?.seconds, ...(own?.lower ?? []), ...(own?.upper ?? [])]).toEqual([din?.seconds, ...(din?.lower ?? []), ...(din?.upper ?? [])]);
    expect(known({ ...bare, use: null, standard: { ...standard, time: { fixedS: seconds(0.9) }, volumes: { fromM3: cubicMetres(30), toM3: cubicMetres(100) } } }).target).toMatchObject({ seconds: 0.9, outsideVolumes: true, fromM3: 30, toM3: 100 });
  });

  it('is refused where it gives no time at the volume of the room', () => {
    expect(roomIssues({ ...bare, standard: { ...standard, time: { slopeS: seconds(0.1), offsetS: seconds(-1) } } })).toMatchObject([{ path: 'standard', params: { reason: 'noTime' } }]);
  });
});

describe('what to hang or lay', () => {
  it('brings the middle to the target, and a rug leaves the bass as it is while panels do not', () => {
    const before = known(bare);
    const advices = new Map(hangingAdviceOf(before).map((advice) => [advice.hanging.material, advice]));
    const rug = advices.get('carpet-on-felt');
    expect(rug?.after?.bassRatio).toBeGreaterThan(before.bassRatio);
    expect(rug?.needs[0].advice).toBe('no-help');
    expect(advices.get('mineral-wool-off-wall')?.after?.bassRatio).toBeLessThan(rug?.after?.bassRatio ?? 0);
    expect(advices.get('wooden-lining-on-frame')?.needs[0].advice).toBe('add');
  });

  it('asks a dry room to take out, not to hang', () => {
    const dry = known({ ...bare, floor: { surface: 'carpet-on-felt', own: null }, ceiling: { surface: 'heavy-velour-half', own: null } });
    expect(hangingAdviceOf(dry).filter(({ needs }) => needs[3].areaM2 !== null).every(({ needs, after }) => needs[3].advice === 'take-out' && after === undefined)).toBe(true);
    expect(dry.model).toBe('eyring');
  });
});

describe('a room fitted to what was measured', () => {
  const measured = { on: '2026-11-20', file: 'claps.wav', sound: null, sweep: null, impulseCount: 6, edtS: [null, null, null, null, null, null], t20S: [null, 1.2, 1.4, 1.6, 1.5, 1.2], t30S: [1.2, null, null, null, null, null], quality: [] };

  it('takes T20 before T30, moves no people, and gives a room that rings so', () => {
    expect(measuredTimesOf(measured)[0]).toBe(1.2);
    const { input, model, times } = known(furnished);
    const near = { ...measured, t20S: times[model].map((time, band) => (band === 0 ? null : 0.95 * time)), t30S: times[model].map((time) => 0.95 * time) };
    const fit = roomFitOf(furnished, input, model, near);
    expect(fit.surfaces.find(({ isPeople }) => isPeople)?.fitted).toEqual(fit.surfaces.find(({ isPeople }) => isPeople)?.absorption);
    const after = known({ ...furnished, ...fit.faces });
    after.times[model].forEach((time, band) => { expect(Math.abs(time / (0.95 * (times[model][band] ?? 0)) - 1)).toBeLessThan(0.005); });
  });

  it('is the proposal of the operation', () => {
    const { input, model } = known(bare);
    const fit = roomFitOf(bare, input, model, measured);
    const answer = runOperation(roomFitOperation, { room: { ...roomCalculated(input), model }, measuredS: measuredTimesOf(measured), doubts: doubtsOf(input) });
    expect(answer).toMatchObject({ ok: true, value: { outcomes: [...fit.outcomes] } });
  });
});
