import { type Point, along, dot, from, point, turned, turnedAbout } from '../plane.ts';
import type { Assembly } from './assembly.ts';
import { type Meeting, turnToMeet } from './meet.ts';

/** Turns of the parts from the measured position, radians counter-clockwise. */
export interface Pose {
  readonly key: number;
  readonly wippen: number;
  /** In the plane, not against the wippen. */
  readonly jack: number;
  readonly hammer: number;
}

/** The contacts of an action, from the key up. */
export const contacts = ['capstan', 'jack', 'edge', 'toe', 'string'] as const;

/** A contact that cannot come about, and by how much. */
export interface Miss {
  readonly contact: (typeof contacts)[number];
  readonly missMm: number;
}

const UP = point(0, 1);

/** The jack centre with the wippen turned; the wippen centre where no jack is known. */
export function jackCentreAt(assembly: Assembly, wippenTurn: number): Point {
  return assembly.jack === undefined ? assembly.wippen : turnedAbout(assembly.wippen, assembly.jack.centre, wippenTurn);
}

/**
 * How wippen and jack stand with the key turned: the heel rests on the capstan's head, and the jack is held by its toe once
 * that has met the let-off button.
 * @source OWN a circle on a flat, solved in closed form
 */
export function supportOfKey(assembly: Assembly, keyTurn: number, buttonHeightMm = Infinity): Omit<Pose, 'hammer'> | Miss {
  const capstan = along(assembly.balance, turned(assembly.capstan, keyTurn));
  const heel = turnToMeet(from(assembly.wippen, capstan), assembly.heelNormal, assembly.heelLevelMm);
  if ('missMm' in heel) return { contact: 'capstan', ...heel };
  const wippen = 0 - heel.turn;
  const jack = jackTurnOf(assembly, wippen, buttonHeightMm);
  return 'missMm' in jack ? { contact: 'toe', ...jack } : { key: keyTurn, wippen, jack: jack.turn };
}

/** How all parts stand with the key turned: {@link supportOfKey}, and the roller on the jack top. @source OWN */
export function poseOfKey(assembly: Assembly, keyTurn: number, buttonHeightMm?: number): Pose | Miss {
  const support = supportOfKey(assembly, keyTurn, buttonHeightMm);
  if ('contact' in support) return support;
  const hammer = hammerTurnOf(assembly, support.wippen, support.jack);
  return 'missMm' in hammer ? { contact: 'jack', ...hammer } : { ...support, hammer: hammer.turn };
}

function jackTurnOf({ jack, ...assembly }: Assembly, wippenTurn: number, buttonHeightMm: number): Meeting {
  if (jack === undefined) return { turn: wippenTurn };
  const centre = turnedAbout(assembly.wippen, jack.centre, wippenTurn);
  if (centre.yMm + turned(jack.toe, wippenTurn).yMm <= buttonHeightMm) return { turn: wippenTurn };
  return turnToMeet(jack.toe, UP, buttonHeightMm - centre.yMm);
}

function hammerTurnOf(assembly: Assembly, wippenTurn: number, jackTurn: number): Meeting {
  const centre = jackCentreAt(assembly, wippenTurn);
  const normal = turned(assembly.topNormal, jackTurn);
  const level = assembly.jack?.levelMm ?? assembly.topLevelMm;
  return turnToMeet(assembly.roller, normal, level - dot(normal, from(centre, assembly.hammer)));
}

/** The turn of the hammer that brings its strike point to a height above the key bed. @source OWN */
export function hammerTurnAt(assembly: Assembly, strikeHeightMm: number): Meeting {
  return turnToMeet(assembly.strike, UP, strikeHeightMm - assembly.hammer.yMm);
}

/**
 * How all parts stand with the hammer turned and the jack standing in the wippen: {@link poseOfKey} the other way round.
 * @source OWN
 */
export function poseOfHammer(assembly: Assembly, hammerTurn: number): Pose | Miss {
  const roller = along(assembly.hammer, turned(assembly.roller, hammerTurn));
  const top = turnToMeet(from(assembly.wippen, roller), assembly.topNormal, assembly.topLevelMm);
  if ('missMm' in top) return { contact: 'jack', ...top };
  const wippen = 0 - top.turn;
  const key = keyTurnOf(assembly, wippen);
  return 'missMm' in key ? { contact: 'capstan', ...key } : { key: key.turn, wippen, jack: wippen, hammer: hammerTurn };
}

/** The turn of the key that carries the wippen at a turn. @source OWN */
export function keyTurnOf(assembly: Assembly, wippenTurn: number): Meeting {
  const normal = turned(assembly.heelNormal, wippenTurn);
  return turnToMeet(assembly.capstan, normal, assembly.heelLevelMm - dot(normal, from(assembly.wippen, assembly.balance)));
}
