import { type Issue, type Result, ok, refuse } from '#result';
import { type Millimetres, type Percent, type Ratio, millimetres, percent, ratio } from '#units';
import { type LeverRatios, leverRatiosOf } from '../levers.ts';
import { along, from, lengthOf, point, turned } from '../plane.ts';
import { type Assembly, type StrokeMeasures, assemblyOf } from './assembly.ts';
import { type LetOff, letOffOf } from './let-off.ts';
import { type Meeting, turnToMeet } from './meet.ts';
import { issueOfMiss, issuesOfMeasures } from './issues.ts';
import { type Miss, type Pose, hammerTurnAt, keyTurnOf, poseOfHammer, poseOfKey, supportOfKey } from './pose.ts';
import { type Rates, ratesAt } from './rates.ts';

/** What carries the hammer: nothing yet, the jack in the wippen, the jack while it trips, or nothing any more. */
export const phases = ['slack', 'driven', 'tripping', 'free'] as const;
export type Phase = (typeof phases)[number];

/** The action at one travel of the key. */
export interface StrokePosition {
  /** At the measuring point, and at the front edge. */
  readonly keyTravelMm: Millimetres;
  readonly edgeTravelMm: Millimetres;
  readonly phase: Phase;
  readonly pose: Pose;
  readonly hammerRiseMm: Millimetres;
  readonly hammerToStringMm: Millimetres;
  /** `undefined` where the key does not drive the hammer. */
  readonly rates: Rates | undefined;
  /** Of the ratio here from that of the levers. */
  readonly departurePct: Percent | undefined;
}

/** A stroke from rest to the bottom of the key. */
export interface KeyStroke {
  readonly assembly: Assembly;
  readonly levers: LeverRatios;
  readonly positions: readonly StrokePosition[];
  readonly measured: StrokePosition;
  readonly letOff: StrokePosition;
  readonly buttonHeightMm: Millimetres | undefined;
  /** Where the toe meets the button. */
  readonly toeTravelMm: Millimetres | undefined;
  /** Travel of the front edge left after let-off; below nought the key lands first. */
  readonly aftertouchMm: Millimetres;
  /** Rise to let-off over the travel it takes: what a travel trial reads. */
  readonly meanRatio: Ratio;
  readonly meanDeparturePct: Percent;
  /** Hammer centre to wippen centre. */
  readonly spreadMm: Millimetres;
}

/** What a stroke is followed with. */
interface Course {
  readonly given: StrokeMeasures;
  readonly assembly: Assembly;
  readonly rest: Pose;
  readonly letOff: LetOff;
  readonly letOffTravelMm: number;
  readonly toeTravelMm: number | undefined;
  readonly leverRatio: number;
}

/**
 * Follows a grand action through its stroke.
 * Rest: the hammer a blow below the string. Travel is a·(turn of the key) + loss, a to the measuring point; rise is upward at
 * the strike point. At the measured position all contacts press upright and the ratio is K·W·H exactly unless heel or jack top
 * are tilted; elsewhere it departs by what the turning arms do. Rigid parts, felts give only the loss.
 * @returns issues naming the measure that cannot be, and by how much the parts miss each other.
 * @source OWN loops closed contact by contact, each in closed form
 */
export function keyStrokeOf(given: StrokeMeasures, count: number): Result<KeyStroke> {
  const wrong = issuesOfMeasures(given);
  if (wrong.length > 0) return refuse(...wrong);
  const course = courseOf(given);
  if (!course.ok) return course;
  const dipMm = (given.dipMm * given.levers.keyFrontMm) / given.keyEdgeMm;
  const travels = Array.from({ length: count }, (_, index) => (dipMm * index) / (count - 1));
  const positions: StrokePosition[] = [];
  for (const travel of travels) {
    const position = positionAt(course.value, travel);
    if ('contact' in position) return refuse(issueOfMiss(given, position));
    positions.push(position);
  }
  return whole(course.value, positions);
}

function courseOf(given: StrokeMeasures): Result<Course> {
  const assembly = assemblyOf(given);
  const [rest, letOff, strike] = [given.blowMm, given.letOffMm, 0].map((below) => hammerTurnAt(assembly, given.stringHeightMm - below)) as [Meeting, Meeting, Meeting];
  for (const meeting of [rest, letOff, strike]) if ('missMm' in meeting) return refuse(issueOfMiss(given, { contact: 'string', ...meeting }));
  const pose = poseOfHammer(assembly, turnOf(rest));
  if ('contact' in pose) return refuse(issueOfMiss(given, pose));
  const found = letOffOf(assembly, turnOf(letOff));
  if ('contact' in found) return refuse(issueOfMiss(given, found));
  const travelOf = (key: number): number => given.levers.keyFrontMm * (key - pose.key) + given.lossMm;
  const toe = toeKeyTurnOf(assembly, found);
  if (toe !== undefined && 'missMm' in toe) return refuse(issueOfMiss(given, { contact: 'toe', ...toe }));
  const toeTravelMm = toe === undefined ? undefined : travelOf(toe.turn);
  if (toeTravelMm !== undefined && toeTravelMm < given.lossMm) return refuse(issueOfMiss(given, { contact: 'toe', missMm: given.lossMm - toeTravelMm }));
  return ok({ given, assembly, rest: pose, letOff: found, letOffTravelMm: travelOf(found.pose.key), toeTravelMm, leverRatio: leverRatiosOf(given.levers).actionRatio });
}

const turnOf = (meeting: Meeting): number => ('turn' in meeting ? meeting.turn : 0);

/** The key where the toe meets the button, the jack still standing in the wippen. */
function toeKeyTurnOf(assembly: Assembly, { buttonHeightMm }: LetOff): Meeting | undefined {
  const { jack, wippen } = assembly;
  if (jack === undefined || buttonHeightMm === undefined) return undefined;
  const met = turnToMeet(from(wippen, along(jack.centre, jack.toe)), point(0, 1), buttonHeightMm - wippen.yMm);
  return 'missMm' in met ? met : keyTurnOf(assembly, met.turn);
}

function positionAt(course: Course, travelMm: number): StrokePosition | Miss {
  const { given, assembly, rest, letOff } = course;
  const key = rest.key + Math.max(0, travelMm - given.lossMm) / given.levers.keyFrontMm;
  if (travelMm <= course.letOffTravelMm) {
    const pose = poseOfKey(assembly, key, letOff.buttonHeightMm);
    return 'contact' in pose ? pose : placed(course, travelMm, pose, phaseAt(course, travelMm));
  }
  const support = supportOfKey(assembly, key, letOff.buttonHeightMm);
  return 'contact' in support ? support : placed(course, travelMm, { ...support, hammer: letOff.pose.hammer }, 'free');
}

function phaseAt({ given, toeTravelMm = Infinity }: Course, travelMm: number): Phase {
  if (travelMm < given.lossMm) return 'slack';
  return travelMm > toeTravelMm ? 'tripping' : 'driven';
}

function placed({ given, assembly, leverRatio }: Course, travelMm: number, pose: Pose, phase: Phase): StrokePosition {
  const height = assembly.hammer.yMm + turned(assembly.strike, pose.hammer).yMm;
  const rates = phase === 'driven' || phase === 'tripping' ? ratesAt(assembly, pose, given.levers.keyFrontMm) : undefined;
  return {
    keyTravelMm: millimetres(travelMm), edgeTravelMm: millimetres((travelMm * given.keyEdgeMm) / given.levers.keyFrontMm), phase, pose,
    hammerRiseMm: millimetres(height - given.stringHeightMm + given.blowMm), hammerToStringMm: millimetres(given.stringHeightMm - height),
    rates, departurePct: rates === undefined ? undefined : departure(rates.actionRatio, leverRatio),
  };
}

const departure = (found: number, lever: number): Percent => percent(100 * (found / lever - 1));

function whole(course: Course, positions: readonly StrokePosition[]): Result<KeyStroke> {
  const { given, assembly, letOff, letOffTravelMm, toeTravelMm, leverRatio } = course;
  const standing: Pose = { key: 0, wippen: 0, jack: 0, hammer: 0 };
  const measured = placed(course, given.lossMm - given.levers.keyFrontMm * course.rest.key, standing, 'driven');
  const letsGo = placed(course, letOffTravelMm, letOff.pose, phaseAt(course, letOffTravelMm));
  const meanRatio = (given.blowMm - given.letOffMm) / (letOffTravelMm - given.lossMm);
  const stuck = stuckIssues(given, [...positions, measured, letsGo], meanRatio);
  if (stuck.length > 0) return refuse(...stuck);
  return ok({
    assembly, positions, measured, letOff: letsGo,
    levers: leverRatiosOf(given.levers),
    buttonHeightMm: letOff.buttonHeightMm === undefined ? undefined : millimetres(letOff.buttonHeightMm),
    toeTravelMm: toeTravelMm === undefined ? undefined : millimetres(toeTravelMm),
    aftertouchMm: millimetres(given.dipMm - letsGo.edgeTravelMm),
    meanRatio: ratio(meanRatio), meanDeparturePct: departure(meanRatio, leverRatio),
    spreadMm: millimetres(lengthOf(from(assembly.hammer, assembly.wippen))),
  });
}

/** A force through a centre somewhere on the way, or a hammer that falls as the key goes down. */
function stuckIssues({ levers }: StrokeMeasures, positions: readonly StrokePosition[], meanRatio: number): readonly Issue[] {
  const ratios = [meanRatio, ...positions.flatMap(({ rates }) => (rates === undefined ? [] : [rates.actionRatio]))];
  if (ratios.every((each) => Number.isFinite(each) && each > 0)) return [];
  return [{ code: 'unsolvable', path: 'levers', given: levers, allowed: 'arms with which the hammer rises all the way the key goes down', params: { reason: 'strokeStuck' } }];
}
