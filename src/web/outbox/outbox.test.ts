import type { Reading } from '#instrument';
import { describe, expect, it } from 'vitest';
import type { ReadingBatchAnswer } from '#workshop';
import { ApiProblem } from '../api/problem.ts';
import type { Keep } from './keep.ts';
import { Outbox } from './outbox.ts';
import { type Parcel, placeKeyOf } from './parcel.ts';

const envelope = { cycle: 1, state: 'found', sessionId: null } as const;
const entry = (index: number, typed: string) => ({ quantity: 'downWeightG', scope: 'key', index, typed }) as const;
const place = (index: number): string => placeKeyOf(envelope, entry(index, ''));

/** A server that stands or falls as told, keeps what it was sent, and answers every send number once. */
class Bench {
  up = true;
  readonly sent: Parcel[] = [];
  readonly standing = new Map<string, string>();
  readonly written: string[] = [];
  readonly #answered = new Map<string, ReadingBatchAnswer>();
  loseAnswers = 0;
  #seq = 0;

  send = (parcel: Parcel): Promise<ReadingBatchAnswer> => {
    if (!this.up) return Promise.reject(new ApiProblem({ status: 0 }));
    this.sent.push(parcel);
    const known = this.#answered.get(parcel.sendId);
    if (known !== undefined) return Promise.resolve(known);
    for (const { basedOn, ...rest } of parcel.entries) {
      const now = this.standing.get(placeKeyOf(parcel, rest)) ?? null;
      if (basedOn !== undefined && basedOn !== now) return Promise.reject(new ApiProblem({ status: 409, type: '/api/docs#problem-conflict', detail: 'another stands there' }));
    }
    if (parcel.entries.some(({ typed }) => typed === 'no figure')) return Promise.reject(new ApiProblem({ status: 422, detail: 'refused' }));
    const readings = parcel.entries.map((each, index) => this.#keep(parcel, each, index));
    const answer = { seq: (this.#seq += 1), readings, warnings: [] };
    this.#answered.set(parcel.sendId, answer);
    if (this.loseAnswers > 0) {
      this.loseAnswers -= 1;
      return Promise.reject(new ApiProblem({ status: 0 }));
    }
    return Promise.resolve(answer);
  };

  #keep(parcel: Parcel, each: Parcel['entries'][number], index: number): Reading {
    const id = `r${String(this.#seq + 1)}.${String(index)}`;
    this.standing.set(placeKeyOf(parcel, each), id);
    this.written.push(`${String(each.index)}=${each.typed ?? ''}`);
    return { ...each, id, cycle: parcel.cycle, state: parcel.state, repeat: 1, value: 49, outcome: null } as unknown as Reading;
  }
}

function shelf(): Keep & { readonly kept: Map<string, string>; full: boolean } {
  const kept = new Map<string, string>();
  return {
    kept,
    full: false,
    put(parcel) {
      if (this.full) return false;
      kept.set(parcel.sendId, JSON.stringify(parcel));
      return true;
    },
    drop: (sendId) => void kept.delete(sendId),
    all: () => [...kept.values()].map((text) => JSON.parse(text) as Parcel),
  };
}

/** An outbox in a world whose clock stands still until told to go on. */
function setUp({ keep = shelf(), bench = new Bench(), first = 0, who = (): string | null => null } = {}) {
  const later: (() => void)[] = [];
  const pauses: number[] = [];
  const acknowledged: string[] = [];
  let id = first;
  const outbox = new Outbox({
    keep,
    send: bench.send,
    standing: (_piano, _cycle, at) => bench.standing.get(at) ?? null,
    acknowledged: (parcel) => acknowledged.push(parcel.sendId),
    newId: () => `send-${String((id += 1))}`,
    who,
    now: () => 1000,
    later: (run, afterMs) => {
      later.push(run);
      pauses.push(afterMs);
    },
  });
  const settle = () => new Promise((resolve) => setTimeout(resolve, 0));
  const tick = async (): Promise<void> => {
    for (const run of later.splice(0)) run();
    await settle();
  };
  return { outbox, keep, bench, settle, tick, pauses, acknowledged };
}

describe('the outbox', () => {
  it('lets a figure carry who typed it, whoever is at the bench by the time it goes out', async () => {
    let who: string | null = 'a';
    const sent: (string | null | undefined)[] = [];
    const bench = new Bench();
    const { outbox, settle } = setUp({ who: () => who, bench: Object.assign(bench, { send: ((send) => (parcel: Parcel) => { sent.push(parcel.by); return send(parcel); })(bench.send) }) });
    outbox.enter('p', envelope, [entry(40, '49')], 'held');
    who = 'b';
    outbox.enter('p', envelope, [entry(41, '50')]);
    outbox.answer({ pianoId: 'p', cycle: envelope.cycle, state: envelope.state }, null);
    await settle();
    expect(sent.toSorted()).toEqual(['a', 'b']);
  });

  it('keeps a figure on the device before anything is sent, and lets go of it once acknowledged', async () => {
    const { outbox, keep, settle, acknowledged } = setUp();
    outbox.enter('p', envelope, [entry(40, '49')]);
    expect(keep.kept.size).toBe(1);
    expect(outbox.state().waiting).toBe(1);
    await settle();
    expect(keep.kept.size).toBe(0);
    expect(acknowledged).toEqual(['send-1']);
    expect(outbox.state()).toMatchObject({ waiting: 0, sending: false, stuck: 0 });
  });

  it('writes to the device once for a figure, before it is sent', async () => {
    const keep = shelf();
    const puts: string[] = [];
    const put = keep.put.bind(keep);
    keep.put = (parcel) => {
      puts.push(parcel.status);
      return put(parcel);
    };
    const { outbox, bench, settle } = setUp({ keep });
    outbox.enter('p', envelope, [entry(40, '49')]);
    await settle();
    expect([puts, bench.written]).toEqual([['waiting'], ['40=49']]);
  });

  it('loses nothing while the server is away: tries again ever less often, then sends all in the order typed', async () => {
    const { outbox, bench, settle, tick, pauses } = setUp();
    bench.up = false;
    for (let key = 1; key <= 5; key += 1) outbox.enter('p', envelope, [entry(key, '49')]);
    await settle();
    for (let tries = 0; tries < 7; tries += 1) await tick();
    expect(outbox.state()).toMatchObject({ waiting: 5, unreachable: true });
    expect(pauses).toEqual([1000, 2000, 4000, 8000, 16_000, 30_000, 30_000, 30_000]);
    bench.up = true;
    await tick();
    expect(bench.written).toEqual(['1=49', '2=49', '3=49', '4=49', '5=49']);
    expect(outbox.state()).toMatchObject({ waiting: 0, unreachable: false });
  });

  it('takes over what an earlier page left behind, once, in the order typed', async () => {
    const keep = shelf();
    const before = setUp({ keep });
    before.bench.up = false;
    before.outbox.enter('p', envelope, [entry(1, '47')]);
    before.outbox.enter('p', envelope, [entry(2, '48')]);
    await before.settle();
    const after = setUp({ keep, first: 10 });
    after.outbox.adopt();
    after.outbox.adopt();
    await after.settle();
    expect(after.bench.written).toEqual(['1=47', '2=48']);
    expect(keep.kept.size).toBe(0);
  });

  it('writes a figure once when the answer to it was lost', async () => {
    const { outbox, bench, settle, tick } = setUp();
    bench.loseAnswers = 1;
    outbox.enter('p', envelope, [entry(1, '49')]);
    await settle();
    expect(outbox.state().waiting).toBe(1);
    await tick();
    expect(bench.sent).toHaveLength(2);
    expect(bench.written).toEqual(['1=49']);
    expect(outbox.state().waiting).toBe(0);
  });

  it('lets a correction typed while its first figure waits stand on that figure', async () => {
    const { outbox, bench, settle, tick } = setUp();
    bench.up = false;
    outbox.enter('p', envelope, [entry(1, '49')]);
    outbox.enter('p', envelope, [entry(1, '50')]);
    await settle();
    bench.up = true;
    await tick();
    expect(bench.written).toEqual(['1=49', '1=50']);
    expect(outbox.state().stuck).toBe(0);
  });

  it('does not write over a figure it has not seen: keeps both, sends the others, and does as told', async () => {
    const { outbox, bench, settle } = setUp();
    bench.standing.set(place(1), 'seen');
    const late = setUp({ bench, first: 10 });
    bench.up = false;
    outbox.enter('p', envelope, [entry(1, '49')]);
    outbox.enter('p', envelope, [entry(2, '50')]);
    await settle();
    bench.up = true;
    late.outbox.enter('p', envelope, [entry(1, '51')]);
    await late.settle();
    outbox.nudge();
    await settle();
    expect(bench.written).toEqual(['1=51', '2=50']);
    expect(outbox.state()).toMatchObject({ waiting: 0, stuck: 1 });
    expect(outbox.statusOf('p', place(1))).toBe('conflict');
    expect(outbox.statusOf('p', place(2))).toBeUndefined();
    outbox.writeOver('send-1');
    await settle();
    expect(bench.written).toEqual(['1=51', '2=50', '1=49']);
  });

  it('keeps what the server refuses, through a reload, until a person takes it back', async () => {
    const keep = shelf();
    const { outbox, settle } = setUp({ keep });
    outbox.enter('p', envelope, [entry(1, 'no figure')]);
    await settle();
    expect(outbox.state()).toMatchObject({ waiting: 0, stuck: 1 });
    const after = setUp({ keep, first: 10 });
    after.outbox.adopt();
    await after.settle();
    expect(after.outbox.statusOf('p', place(1))).toBe('refused');
    after.outbox.withdraw('send-1');
    expect(keep.kept.size).toBe(0);
    expect(after.outbox.state().stuck).toBe(0);
  });

  it('holds a correction back while the figure it corrects is stuck, and lets it go on what stands once that is taken back', async () => {
    const { outbox, bench, settle } = setUp();
    outbox.enter('p', envelope, [entry(1, 'no figure')]);
    await settle();
    outbox.enter('p', envelope, [entry(1, '49')]);
    await settle();
    expect(bench.written).toEqual([]);
    outbox.withdraw('send-1');
    await settle();
    expect(bench.written).toEqual(['1=49']);
  });

  it('holds figures until it is said how they were weighed, through a reload, and sends them with the answer', async () => {
    const keep = shelf();
    const { outbox, bench, settle } = setUp({ keep });
    outbox.enter('p', envelope, [entry(1, '49')], 'held');
    outbox.enter('p', { ...envelope, state: 'finished' }, [entry(1, '47')], 'held');
    outbox.enter('p', envelope, [entry(1, '50')]);
    await settle();
    expect(bench.sent).toEqual([]);
    expect(outbox.state()).toMatchObject({ held: 2, waiting: 1, stuck: 0 });
    const after = setUp({ keep, bench, first: 10 });
    after.outbox.adopt();
    await after.settle();
    expect(bench.sent).toEqual([]);
    after.outbox.answer({ pianoId: 'p', cycle: 1, state: 'found' }, 'session-1');
    await after.settle();
    expect(bench.sent.map(({ sessionId, entries }) => [sessionId, entries[0]?.typed])).toEqual([['session-1', '49'], [null, '50']]);
    expect(after.outbox.state()).toMatchObject({ held: 1, waiting: 0 });
    expect([...keep.kept.keys()]).toEqual(['send-2']);
  });

  it('gives a held figure back to the hand that takes it back, unsent', async () => {
    const { outbox, bench, settle } = setUp();
    const sendId = outbox.enter('p', envelope, [entry(1, '49')], 'held');
    expect(outbox.withdraw(sendId)?.entries).toMatchObject([{ typed: '49' }]);
    outbox.answer({ pianoId: 'p', cycle: 1, state: 'found' }, null);
    await settle();
    expect(bench.sent).toEqual([]);
  });

  it('treats a lapsed sign-in as waiting, never as refused', async () => {
    const { outbox, bench, settle, tick } = setUp();
    const send = bench.send;
    let turned = 1;
    const guarded = new Outbox({
      keep: shelf(), who: () => null, now: () => 0, newId: () => 'send-9', acknowledged: () => undefined, standing: () => null,
      later: (run) => setTimeout(run, 0),
      send: (parcel) => (turned-- > 0 ? Promise.reject(new ApiProblem({ status: 401 })) : send(parcel)),
    });
    guarded.enter('p', envelope, [entry(1, '49')]);
    await settle();
    await settle();
    await tick();
    expect(bench.written).toEqual(['1=49']);
    expect(outbox.state().stuck).toBe(0);
  });

  it('says so when the device keeps nothing, and sends all the same', async () => {
    const keep = shelf();
    keep.full = true;
    const { outbox, bench, settle, tick } = setUp({ keep });
    bench.up = false;
    outbox.enter('p', envelope, [entry(1, '49')]);
    await settle();
    expect(outbox.state().unkept).toBe(true);
    bench.up = true;
    await tick();
    expect(bench.written).toEqual(['1=49']);
  });
});
