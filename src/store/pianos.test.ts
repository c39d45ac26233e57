import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO, SHOP } from './index.ts';
import { type TestBook, engines } from './testing/engines.ts';
import { failureOf } from './testing/failure.ts';

const grand = { name: 'Grand in the hall', kind: 'grand' } as const;

describe.each(engines)('instruments, sessions, intents and work ($name)', ({ open }) => {
  let book: TestBook;
  beforeAll(async () => void (book = await open()));
  afterAll(() => book.remove());
  const store = () => book.store();

  it('takes a piano in with what was left unsaid kept as not stated', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    expect(piano).toMatchObject({ name: 'Grand in the hall', kind: 'grand', maker: null, year: null, cycle: 1, demo: false, workshopId: SHOP });
    const file = await store().getPiano(piano.id);
    expect(file).toMatchObject({ instrument: piano, sessions: [], intents: {}, work: [], head: { seq: 1 } });
    const listed = (await store().listPianos()).find(({ instrument }) => instrument.id === piano.id);
    expect(listed).toMatchObject({ readingCounts: { found: 0, planned: 0, finished: 0 } });
    expect(listed?.lastEventAt).toBe((await store().listEvents(piano.id))[0]?.at);
  });

  it('changes one field and leaves the rest, in one event that carries that field alone', async () => {
    const piano = await store().addPiano(SHOP, { ...grand, year: 1911 }, 'p1');
    const changed = await store().changePiano(piano.id, { name: 'Grand by the window' }, 'p2');
    expect(changed).toEqual({ ...piano, name: 'Grand by the window' });
    const [event] = await store().listEvents(piano.id);
    expect(event).toMatchObject({ kind: 'piano.changed', by: 'p2', changes: [{ entity: 'instrument', place: piano.id, before: { name: piano.name }, after: { name: 'Grand by the window' } }] });
    await store().changePiano(piano.id, { name: 'Grand by the window' }, 'p2');
    expect((await store().getPiano(piano.id)).head.seq).toBe(2);
  });

  it('refuses a draft that cannot be, and names the field', async () => {
    expect(await failureOf(store().addPiano(SHOP, { ...grand, year: 1492 }, 'p1'))).toMatchObject({ reason: 'refused', issues: [{ path: 'year', given: 1492, code: 'range' }] });
    expect(await failureOf(store().addPiano(SHOP, { ...grand, remark: 'a\0b' }, 'p1'))).toMatchObject({ reason: 'refused', issues: [{ path: 'remark', code: 'format' }] });
  });

  it('answers notFound for what is not there', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    const asked = [
      () => store().getPiano('none'), () => store().listReadings('none'), () => store().listEvents('none'), () => store().audit('none'), () => store().undo(piano.id, 9, 'p1'),
      () => store().changeSession(piano.id, 'none', {}, 'p1'), () => store().changeWork(piano.id, 'none', { status: 'done' }, 'p1'),
    ];
    for (const ask of asked) expect((await failureOf(ask())).reason).toBe('notFound');
  });

  it('opens the next stay of a piano that came back, and refuses what belongs to a stay it has not had', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    expect(await failureOf(store().addSession(piano.id, { cycle: 2, state: 'found' }, 'p1'))).toMatchObject({ reason: 'refused', issues: [{ path: 'cycle', given: 2, allowed: '1 to 1' }] });
    expect((await store().openCycle(piano.id, 'p1')).cycle).toBe(2);
    await store().addSession(piano.id, { cycle: 2, state: 'found' }, 'p1');
    await store().setIntent(piano.id, 1, { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 20 }, 'p1');
    await store().setIntent(piano.id, 2, { even: 'balanceWeight', targetG: 37, toleranceG: 2, upWeightMinG: 20 }, 'p1');
    expect((await store().getPiano(piano.id)).intents).toEqual({ 1: { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 20 }, 2: { even: 'balanceWeight', targetG: 37, toleranceG: 2, upWeightMinG: 20 } });
  });

  it('lets an intent of another kind leave no field of the last behind', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    await store().setIntent(piano.id, 1, { even: 'downWeight', targetG: 49, toleranceG: 2, upWeightMinG: 20 }, 'p1');
    const curve = { even: 'curve', anchors: [{ key: 1, downWeightG: 52 }, { key: 88, downWeightG: 46 }], toleranceG: 2, upWeightMinG: 20 } as const;
    await store().setIntent(piano.id, 1, { ...curve, anchors: [...curve.anchors] }, 'p1');
    expect((await store().getPiano(piano.id)).intents).toEqual({ 1: curve });
  });

  it('keeps what is known and asked of strings and bearing as it was given, and refuses by field what cannot be', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    const coil = { name: 'Coil 3', use: 'core', metal: 'steel', shape: 'hex', diameterMm: 1.2, certificateMPa: 2210, testBreakN: null } as const;
    const kept = await store().setScale(piano.id, 1, { mostBreakingPct: 65, wires: [coil] }, 'p1');
    expect(kept).toMatchObject({ mostBreakingPct: 65, leastBreakingPct: null, strengthModel: null, wires: [coil] });
    expect((await store().getPiano(piano.id)).scales).toEqual({ 1: kept });
    expect(await failureOf(store().setScale(piano.id, 1, { leastBreakingPct: 70, mostBreakingPct: 60 }, 'p1'))).toMatchObject({ reason: 'refused', issues: [{ path: 'mostBreakingPct' }] });
    expect(await failureOf(store().setScale(piano.id, 1, { wires: [{ ...coil, diameterMm: 0 }] }, 'p1'))).toMatchObject({ issues: [{ path: 'wires[0].diameterMm', given: 0 }] });
    await store().undo(piano.id, 2, 'p1');
    expect((await store().getPiano(piano.id)).scales).toEqual({});
  });

  it('keeps what is asked of the action as it was given, undoes it, and refuses by field what cannot be', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    const anchors = [{ key: 1, weightG: 11 }, { key: 44, weightG: 8.6 }, { key: 88, weightG: 5.4 }];
    const kept = await store().setAction(piano.id, 1, { hammerCurve: 'anchors', hammerAnchors: anchors, drillsMm: [9.5, 12.7], keepOuts: [{ fromMm: -40, toMm: 40 }] }, 'p1');
    expect(kept).toMatchObject({ hammerAnchors: anchors, weightRatioNatural: null, mostLeads: null });
    expect((await store().getPiano(piano.id)).actions).toEqual({ 1: kept });
    expect(await failureOf(store().setAction(piano.id, 1, { hammerCurve: 'anchors', hammerAnchors: anchors.slice(1) }, 'p1'))).toMatchObject({ reason: 'refused', issues: [{ path: 'hammerAnchors' }] });
    expect(await failureOf(store().setAction(piano.id, 1, { keepOuts: [{ fromMm: 40, toMm: 30 }] }, 'p1'))).toMatchObject({ issues: [{ path: 'keepOuts[0].toMm' }] });
    expect(await failureOf(store().setAction(piano.id, 1, { rollerShiftMm: 9 }, 'p1'))).toMatchObject({ issues: [{ path: 'rollerShiftMm', given: 9 }] });
    await store().undo(piano.id, 2, 'p1');
    expect((await store().getPiano(piano.id)).actions).toEqual({});
  });

  it('keeps, corrects and withdraws what was seen, and refuses keys off the keyboard and photos that are not there', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    const seen = await store().addObservation(piano.id, { cycle: 1, state: 'found', part: 'soundboard', fault: 'crack', fromKey: 40, toKey: 52, lengthMm: 310, remark: 'third rib' }, 'p1');
    const changed = await store().changeObservation(piano.id, seen.id, { fault: 'repaired' }, 'p1');
    expect(changed).toEqual({ ...seen, fault: 'repaired' });
    const refused = async (change: object) => (await failureOf(store().changeObservation(piano.id, seen.id, change, 'p1'))).issues.map(({ code, path }) => `${code} ${path}`);
    expect(await refused({ toKey: 89 })).toEqual(['range toKey']);
    expect(await refused({ toKey: 39 })).toEqual(['order toKey']);
    expect(await refused({ photos: [{ hash: 'b'.repeat(64), name: 'board.jpg' }] })).toEqual(['unknown photos[0].hash']);
    await store().withdrawObservation(piano.id, seen.id, 'p1');
    expect((await store().getPiano(piano.id)).observations).toEqual([]);
    await store().undo(piano.id, 4, 'p1');
    expect((await store().getPiano(piano.id)).observations).toEqual([changed]);
  });

  it('changes how a session is said to have been weighed, but not where it belongs once readings do', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    const session = await store().addSession(piano.id, { cycle: 1, state: 'found', stepG: 1 }, 'p1');
    expect(await store().changeSession(piano.id, session.id, { state: 'planned' }, 'p1')).toMatchObject({ state: 'planned', stepG: 1 });
    await store().changeSession(piano.id, session.id, { state: 'found', dampers: 'lifted' }, 'p1');
    await store().writeReadings(piano.id, { cycle: 1, state: 'found', sessionId: session.id, entries: [{ quantity: 'downWeightG', scope: 'key', index: 1, typed: '50' }] }, 'p1');
    expect(await failureOf(store().changeSession(piano.id, session.id, { state: 'finished' }, 'p1'))).toMatchObject({ reason: 'refused', issues: [{ path: 'state', given: 'finished' }] });
    expect((await store().getPiano(piano.id)).sessions).toMatchObject([{ id: session.id, state: 'found', dampers: 'lifted', stepG: 1 }]);
  });

  it('writes jobs and the readings expected once they are done as one event, which one undo takes back, or neither', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    const item = { cycle: 1, key: 40, remedy: 'easeBushing', stage: 1 } as const;
    const expected = (typed: string) => ({ cycle: 1, locale: 'de', entries: [{ quantity: 'downWeightG', scope: 'key' as const, index: 40, typed, basis: 'derived' as const }] });
    expect(await failureOf(store().addWork(piano.id, [item], 'p1', expected('much')))).toMatchObject({ reason: 'refused', issues: [{ path: 'entries[0].typed' }] });
    expect((await store().getPiano(piano.id)).work).toEqual([]);
    await store().addWork(piano.id, [item], 'p1', expected('49,5'));
    expect(await store().listReadings(piano.id)).toMatchObject([{ state: 'planned', value: 49.5, basis: 'derived', sessionId: null }]);
    const [event] = await store().listEvents(piano.id, { limit: 1 });
    expect(event?.changes.map(({ entity }) => entity)).toEqual(['work', 'reading']);
    await store().undo(piano.id, event?.seq ?? 0, 'p1');
    expect([(await store().getPiano(piano.id)).work, await store().listReadings(piano.id)]).toEqual([[], []]);
    expect(await store().audit(piano.id)).toMatchObject({ whole: true });
  });

  it('keeps jobs in their order, and says when one was done', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    const jobs = await store().addWork(piano.id, [{ cycle: 1, key: 40, remedy: 'easeBushing', stage: 1, remeasure: ['downWeightG'] }, { cycle: 1, key: null, remedy: 'other', remark: 'wipe the key frame', stage: 5 }], 'p1');
    const [first, second] = jobs;
    const done = await store().changeWork(piano.id, second?.id ?? '', { status: 'done' }, 'p1');
    expect(done.doneAt).not.toBeNull();
    expect((await store().changeWork(piano.id, second?.id ?? '', { status: 'open' }, 'p1')).doneAt).toBeNull();
    expect((await store().getPiano(piano.id)).work.map(({ id }) => id)).toEqual([first?.id, second?.id]);
    expect(await failureOf(store().addWork(piano.id, [{ cycle: 1, key: 89, remedy: 'other', stage: 5, remeasure: ['weight'] }], 'p1'))).toMatchObject({
      reason: 'refused',
      issues: [{ path: '[0].key', given: 89, allowed: 'key 1 to 88' }, { path: '[0].remeasure[0]', given: 'weight' }],
    });
  });

  it('keeps keys under readings what they are', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p1');
    await store().writeReadings(piano.id, { cycle: 1, state: 'found', entries: [{ quantity: 'downWeightG', scope: 'key', index: 86, typed: '50' }] }, 'p1');
    expect(await failureOf(store().changePiano(piano.id, { lastMidi: 105 }, 'p1'))).toMatchObject({ issues: [{ path: 'lastMidi', given: 105, params: { min: 106 } }] });
    expect(await failureOf(store().changePiano(piano.id, { firstMidi: 24 }, 'p1'))).toMatchObject({ issues: [{ path: 'firstMidi', given: 24 }] });
    expect((await store().changePiano(piano.id, { lastMidi: 106 }, 'p1')).lastMidi).toBe(106);
  });

  it('keeps names outside the log: forgotten, and the chain is whole', async () => {
    const piano = await store().addPiano(SHOP, grand, 'p7');
    await store().namePerson(SHOP, 'p7', 'A. Tester');
    expect(await store().listPeople(SHOP)).toEqual([{ reference: 'p7', name: 'A. Tester' }]);
    await store().namePerson(SHOP, 'p7', null);
    expect(await store().listPeople(SHOP)).toEqual([]);
    expect((await store().audit(piano.id)).whole).toBe(true);
  });

  it('names people by references that say nothing of them, and refuses a name twice, an empty one and one with control characters', async () => {
    const ada = await store().addPerson(SHOP, '  Ada Tester ');
    expect(ada).toMatchObject({ name: 'Ada Tester' });
    expect(ada.reference).toMatch(/^[\da-f-]{36}$/u);
    const piano = await store().addPiano(SHOP, grand, ada.reference);
    expect(await failureOf(store().addPerson(SHOP, 'Ada Tester'))).toMatchObject({ reason: 'conflict', issues: [{ path: 'name', code: 'duplicate' }] });
    for (const name of ['', '   ', 'A\nB', 'A\0', 'x'.repeat(81)]) expect((await failureOf(store().addPerson(SHOP, name))).issues.map(({ path }) => path)).toContain('name');
    await store().namePerson(SHOP, ada.reference, 'Ada B. Tester');
    expect(await store().listPeople(SHOP)).toEqual([{ reference: ada.reference, name: 'Ada B. Tester' }]);
    await store().namePerson(SHOP, ada.reference, null);
    expect(await book.rows(`select text from event where instrument = '${piano.id}' and text like '%Ada%'`)).toEqual([]);
    expect((await store().listEvents(piano.id))[0]?.by).toBe(ada.reference);
    expect((await store().audit(piano.id)).whole).toBe(true);
  });

  it('removes the demo whole, and nothing else', async () => {
    const kept = await store().addPiano(SHOP, grand, 'p1');
    const demo = await store().addPiano(DEMO, grand, 'p1');
    expect(demo.demo).toBe(true);
    await store().writeReadings(demo.id, { cycle: 1, state: 'found', sendId: 'send-demo-1', entries: [{ quantity: 'downWeightG', scope: 'key', index: 1, typed: '50' }] }, 'p1');
    expect(await store().removeDemo()).toBe(1);
    expect(await store().removeDemo()).toBe(0);
    expect((await failureOf(store().listEvents(demo.id))).reason).toBe('notFound');
    expect((await store().listPianos()).map(({ instrument }) => instrument.id)).toContain(kept.id);
  });
});
