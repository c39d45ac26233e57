import type { ChangeKind, Remedy } from '#action';
import type { BenchOperation, BenchPart, BenchSetUp, Instrument } from '#instrument';

/** What a job of the bench changes, what must be set up for it, and how it stands to the others. */
export interface BenchJob {
  readonly changes: ChangeKind;
  /** In the order they are done. */
  readonly needs: readonly BenchSetUp[];
  /** A key gets one job of a group at most: they do the same in different ways. */
  readonly group?: 'bushing' | 'roller' | 'ratio' | 'hammer' | 'lead';
  /** Belongs to the plan that replaces everything. */
  readonly renews?: true;
  /** The remedy it is on the list of jobs. */
  readonly remedy: Exclude<Remedy, 'weighParts'>;
  /** What one key uses up. */
  readonly part?: BenchPart;
  /** Rollers are found in grands alone. */
  readonly grandOnly?: true;
}

const ACTION: readonly BenchSetUp[] = ['actionOut', 'weighing'];
const STACK: readonly BenchSetUp[] = ['actionOut', 'stackOff', 'weighing'];
const KEYS: readonly BenchSetUp[] = ['actionOut', 'stackOff', 'keysOut', 'weighing'];
const HAMMERS: readonly BenchSetUp[] = ['actionOut', 'hammersOff', 'weighing'];

/** The jobs a shop may put a time to. Every one of them ends at the scale. @source PRACTICE */
export const benchJobs: Readonly<Record<BenchOperation, BenchJob>> = {
  cleanKeyPins: { changes: 'friction', needs: KEYS, group: 'bushing', remedy: 'cleanKeyPins' },
  easeKeyBushing: { changes: 'friction', needs: KEYS, group: 'bushing', remedy: 'easeKeyBushing' },
  rebushKey: { changes: 'friction', needs: KEYS, group: 'bushing', renews: true, remedy: 'rebushKey', part: 'bushing' },
  repinWippen: { changes: 'friction', needs: STACK, remedy: 'repinWippen', renews: true, part: 'wippenPin' },
  repinHammer: { changes: 'friction', needs: HAMMERS, remedy: 'repinHammer', renews: true, part: 'hammerPin' },
  treatRoller: { changes: 'friction', needs: ACTION, group: 'roller', remedy: 'treatRoller', grandOnly: true },
  replaceRoller: { changes: 'friction', needs: HAMMERS, remedy: 'replaceRoller', group: 'roller', renews: true, part: 'roller', grandOnly: true },
  moveCapstan: { changes: 'ratio', needs: KEYS, remedy: 'moveCapstan', group: 'ratio' },
  moveRoller: { changes: 'ratio', needs: HAMMERS, remedy: 'moveRoller', group: 'ratio', grandOnly: true },
  trimHammer: { changes: 'hammer', needs: ACTION, group: 'hammer', remedy: 'lightenHammer' },
  changeHammer: { changes: 'hammer', needs: HAMMERS, group: 'hammer', renews: true, remedy: 'replaceHammer', part: 'hammer' },
  addLead: { changes: 'front', needs: KEYS, group: 'lead', remedy: 'addLead', part: 'lead' },
  moveLead: { changes: 'front', needs: KEYS, remedy: 'moveLead', group: 'lead' },
  removeLead: { changes: 'front', needs: KEYS, group: 'lead', remedy: 'removeLead' },
};

/** What must be set up for a job; the stack of an upright comes out with its action. @source PRACTICE */
export function needsOf(operation: BenchOperation, kind: Instrument['kind']): readonly BenchSetUp[] {
  const { needs } = benchJobs[operation];
  return kind === 'grand' ? needs : needs.filter((setUp) => setUp !== 'stackOff');
}

/** The jobs there are on an instrument. */
export function jobsOf(kind: Instrument['kind']): readonly BenchOperation[] {
  const all = Object.keys(benchJobs) as readonly BenchOperation[];
  return kind === 'grand' ? all : all.filter((operation) => benchJobs[operation].grandOnly !== true);
}

/** Minutes at one key as a shop might begin with, until it has timed its own. @source PRACTICE */
export const usualMinutes: Readonly<Record<BenchOperation, number>> = {
  cleanKeyPins: 1, easeKeyBushing: 1.5, rebushKey: 6, repinWippen: 8, repinHammer: 6, treatRoller: 2, replaceRoller: 8,
  moveCapstan: 12, moveRoller: 12, trimHammer: 4, changeHammer: 15, addLead: 6, moveLead: 10, removeLead: 4,
};

/** Minutes once for all keys, to begin with. @source PRACTICE */
export const usualSetUpMinutes: Readonly<Record<BenchSetUp, number>> = { actionOut: 10, keysOut: 20, stackOff: 15, hammersOff: 40, weighing: 10 };
