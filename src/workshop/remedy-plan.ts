import { type Finding, type KeyTouch, type Remedy, type TouchAnalysis, isAdvice, stageOfRemedy } from '#action';
import type { QuantityName } from '#instrument';
import type { WorkItemDraft } from './records.ts';

/** Down and up weight: what every repair is proved by. */
const TOUCH = ['downWeightG', 'upWeightG'] as const satisfies readonly QuantityName[];

/** What to weigh again once a remedy is done. @source PRACTICE */
const REMEASURE: Readonly<Record<Exclude<Remedy, 'weighParts'>, readonly QuantityName[]>> = {
  measureKeyFriction: ['keyFrictionG'],
  easeKeyBushing: ['keyFrictionG', ...TOUCH],
  cleanKeyPins: ['keyFrictionG', ...TOUCH],
  rebushKey: ['keyFrictionG', ...TOUCH],
  checkSwollenLeads: ['keyFrictionG', ...TOUCH],
  repinCentres: TOUCH,
  tightenCentres: TOUCH,
  treatRoller: TOUCH,
  checkLevers: TOUCH,
  moveCapstanOrRoller: TOUCH,
  checkWippen: ['wippenWeightG', ...TOUCH],
  checkHelperSpring: ['helperSpringG', ...TOUCH],
  checkSpringsAndDampers: TOUCH,
  lightenHammer: ['hammerWeightG', ...TOUCH],
  replaceHammer: ['hammerWeightG', ...TOUCH],
  addLead: ['frontWeightG', ...TOUCH],
  removeLead: ['frontWeightG', ...TOUCH],
  freeKey: TOUCH,
  fitMissingPart: TOUCH,
  weighAgain: TOUCH,
  repinWippen: TOUCH,
  repinHammer: TOUCH,
  replaceRoller: TOUCH,
  moveCapstan: TOUCH,
  moveRoller: TOUCH,
  moveLead: ['frontWeightG', ...TOUCH],
};

/** What to weigh again once a remedy is done, weights of unknown parts aside. */
export function remeasureOf(remedy: keyof typeof REMEASURE): readonly QuantityName[] {
  return REMEASURE[remedy];
}

/**
 * Turns findings into jobs for the bench: for each finding the first remedy to try, what it came from, and what to weigh again.
 * Later remedies of a finding wait for that weighing: it decides whether they are needed. A key gets the same job once.
 *
 * Bench order: what must be cleared, then friction, ratio, hammer, lead; within a stage like jobs together, bass to treble.
 * Findings that drown in their own uncertainty give no job: their keys are to be weighed again (`next`). Advice gives none either.
 * @source PRACTICE
 */
export function remedyPlan(analysis: TouchAnalysis, cycle: number): readonly WorkItemDraft[] {
  const jobs = analysis.keys.flatMap((key) => jobsOf(key, cycle));
  const firstSeen = [...new Set(jobs.map(({ draft }) => draft.remedy))];
  const groupOf = ({ draft }: Job): number => firstSeen.indexOf(draft.remedy);
  return jobs.sort((a, b) => a.order - b.order || groupOf(a) - groupOf(b)).map(({ draft }) => draft);
}

interface Job {
  /** Stage of the remedy, 0 for what is cleared first. */
  readonly order: number;
  readonly draft: WorkItemDraft;
}

function jobsOf(key: KeyTouch, cycle: number): readonly Job[] {
  const jobs = new Map<Remedy, Job>();
  for (const finding of key.findings) {
    const [remedy] = finding.remedies;
    if (remedy === undefined || finding.withinUncertainty || isAdvice(finding) || jobs.has(remedy)) continue;
    jobs.set(remedy, jobOf(key, finding, remedy, cycle));
  }
  return [...jobs.values()];
}

function jobOf(key: KeyTouch, { cause }: Finding, remedy: Remedy, cycle: number): Job {
  const order = stageOfRemedy(remedy);
  const remeasure = remedy === 'weighParts' ? partsToWeigh(key) : REMEASURE[remedy];
  return { order, draft: { cycle, key: key.key, remedy, cause, remeasure: [...remeasure], stage: Math.max(1, order) } };
}

function partsToWeigh({ figures }: KeyTouch): readonly QuantityName[] {
  return (['frontWeightG', 'hammerWeightG', 'wippenWeightG'] as const).filter((part) => figures[part] === undefined);
}
