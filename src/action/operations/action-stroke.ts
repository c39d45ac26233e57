import { defineOperation, field } from '#operation';
import { map } from '#result';
import { degrees, millimetres, percent } from '#units';
import { z } from 'zod';
import type { Point } from '../plane.ts';
import { fields } from '../schemas.ts';
import { drawingOf, drawnParts } from '../stroke/drawing.ts';
import type { Rates } from '../stroke/rates.ts';
import { type KeyStroke, type StrokePosition, keyStrokeOf, phases } from '../stroke/stroke.ts';

const MAX_POSITIONS = 500;

const height = (describe: string) => field.millimetres({ min: -1000, max: 1000, describe: `${describe}, above the key bed` });
const length = (describe: string) => field.millimetres({ min: 0.01, max: 1000, describe });
const tilt = (describe: string) => field.degrees({ min: -20, max: 20, describe }).default(degrees(0));
const spot = z.strictObject({ xMm: field.millimetres(), yMm: field.millimetres() });

const jack = z.strictObject({
  heightMm: length('Jack centre to the top'),
  toeMm: length('Jack centre to where the let-off button meets the toe'),
  overlapMm: field.millimetres({ min: 0, max: 100, describe: 'Contact with the roller to the edge of the top the roller slips off' }),
}).describe('Left out: the jack is taken to let go at once. Its centre is taken straight below the contact, its toe level with it');

const input = z.strictObject({
  levers: fields.levers.describe('Lever arms, each taken level from centre to contact at the measured position'),
  keyEdgeMm: length('Balance point to the front edge'),
  balanceHeightMm: height('Where the key turns'),
  capstanHeightMm: height('Top of the capstan at the measured position'),
  wippenCentreHeightMm: height('Wippen centre'),
  jackTopHeightMm: height('Jack top under the roller at the measured position'),
  hammerCentreHeightMm: height('Hammer centre'),
  stringHeightMm: height('String at the strike point'),
  capstanRadiusMm: field.millimetres({ min: 0, max: 1000, describe: 'Radius of the head of the capstan' }),
  rollerDiameterMm: length('Diameter of the roller'),
  blowMm: length('Hammer at rest to string'),
  letOffMm: field.millimetres({ min: 0, max: 1000, describe: 'Hammer to string where the jack lets go' }),
  dipMm: length('Travel of the front edge'),
  lossMm: field.millimetres({ min: 0, max: 100, describe: 'Key travel at the measuring point before the hammer moves' }).default(millimetres(0)),
  measuredAtPct: field.percent({ min: 0, max: 100, describe: 'Where the arms were taken: share of the blow the hammer had risen; 0 at rest, 50 at half stroke' }).default(percent(50)),
  heelTiltDeg: tilt('Heel at the measured position, from level, rising away from the player'),
  jackTiltDeg: tilt('Jack top at the measured position, from level, rising away from the player'),
  jack: jack.optional(),
  positions: field.count({ min: 2, max: MAX_POSITIONS, describe: 'How many positions from rest to the bottom' }).default(41),
});

const rates = z.strictObject({
  keyBackMm: field.millimetres(),
  wippenHeelMm: field.millimetres(),
  wippenJackMm: field.millimetres(),
  rollerMm: field.millimetres(),
  hammerMm: field.millimetres(),
  keyRatio: field.ratio(),
  wippenRatio: field.ratio(),
  hammerRatio: field.ratio(),
  actionRatio: field.ratio({ describe: 'Rise of the hammer for travel of the measuring point, here' }),
  capstanSliding: field.ratio({ describe: 'Millimetres for a millimetre of travel of the measuring point' }),
  rollerSliding: field.ratio({ describe: 'The same at the roller' }),
});

const position = z.strictObject({
  keyTravelMm: field.millimetres({ describe: 'At the measuring point' }),
  edgeTravelMm: field.millimetres({ describe: 'At the front edge' }),
  phase: z.enum(phases),
  keyDeg: field.degrees({ describe: 'From the measured position, counter-clockwise' }),
  wippenDeg: field.degrees(),
  jackDeg: field.degrees(),
  hammerDeg: field.degrees(),
  hammerRiseMm: field.millimetres(),
  hammerToStringMm: field.millimetres(),
  rates: rates.nullable().describe('null where the key does not drive the hammer'),
  departurePct: field.percent({ describe: 'Ratio here from K·W·H of the levers' }).nullable(),
  segments: z.array(z.strictObject({ part: z.enum(drawnParts), from: spot, to: spot })),
  circles: z.array(z.strictObject({ part: z.enum(drawnParts), centre: spot, radiusMm: field.millimetres() })),
});

/** A grand action followed from rest to the bottom of the key. */
export const actionStrokeOperation = defineOperation({
  name: 'action-stroke',
  input,
  output: z.strictObject({
    leverRatio: field.ratio({ describe: 'K·W·H' }),
    meanRatio: field.ratio({ describe: 'Rise to let-off over the travel it takes' }),
    meanDeparturePct: field.percent({ describe: 'Mean ratio from that of the levers' }),
    letsOff: z.boolean().describe('Whether the jack lets go before the key lands'),
    travelToLetOffMm: field.millimetres({ describe: 'At the measuring point' }),
    edgeTravelToLetOffMm: field.millimetres(),
    aftertouchMm: field.millimetres({ describe: 'At the front edge; below 0 the key lands before the jack lets go' }),
    toeTravelMm: field.millimetres({ describe: 'Travel of the measuring point where the toe meets the button' }).nullable(),
    buttonHeightMm: field.millimetres({ describe: 'Underside of the let-off button above the key bed' }).nullable(),
    spreadMm: field.millimetres({ describe: 'Hammer centre to wippen centre' }),
    wippenCentre: spot,
    hammerCentre: spot,
    measured: position.describe('Where the arms were taken'),
    letOff: position,
    positions: z.array(position).describe('From rest to the bottom, evenly spaced in travel; x away from the player from the balance point, y up from the key bed'),
  }),
  formula: [
    'capstan: n(β)·(C(α) − W) = h_heel',
    'jack: n(ψ)·(Q(φ) − J(β)) = h_top; ψ = β, or held by the toe',
    'toe: J_y(β) + T_y(ψ) = button',
    'ratio: ω_h·x_strike/a, with ω₂/ω₁ = p₁/p₂ at each contact',
  ],
  sources: ['OWN', 'ARONHOLD-KENNEDY'],
  example: {
    levers: { keyFrontMm: 225, keyBackMm: 115, wippenHeelMm: 65, wippenJackMm: 96, rollerMm: 18, hammerMm: 130 },
    keyEdgeMm: 238, balanceHeightMm: 25, capstanHeightMm: 72, wippenCentreHeightMm: 85, jackTopHeightMm: 127, hammerCentreHeightMm: 142, stringHeightMm: 192,
    capstanRadiusMm: 6, rollerDiameterMm: 10, blowMm: 45, letOffMm: 1.5, dipMm: 10, lossMm: 0.3, measuredAtPct: 50,
    jack: { heightMm: 52, toeMm: 25, overlapMm: 2 }, positions: 3,
  },
  run: ({ positions, ...measures }) => map(keyStrokeOf(measures, positions), (stroke) => answerOf(stroke, measures)),
});

type Scale = Parameters<typeof drawingOf>[2];

function answerOf(stroke: KeyStroke, scale: Scale) {
  const { letOff, aftertouchMm, meanRatio, meanDeparturePct, spreadMm } = stroke;
  return {
    leverRatio: stroke.levers.actionRatio, meanRatio, meanDeparturePct, letsOff: aftertouchMm >= 0,
    travelToLetOffMm: letOff.keyTravelMm, edgeTravelToLetOffMm: letOff.edgeTravelMm, aftertouchMm,
    toeTravelMm: stroke.toeTravelMm ?? null, buttonHeightMm: stroke.buttonHeightMm ?? null, spreadMm,
    wippenCentre: spotOf(stroke.assembly.wippen), hammerCentre: spotOf(stroke.assembly.hammer),
    measured: shown(stroke, stroke.measured, scale), letOff: shown(stroke, letOff, scale),
    positions: stroke.positions.map((each) => shown(stroke, each, scale)),
  };
}

function shown({ assembly }: KeyStroke, { pose, rates: found, departurePct, ...at }: StrokePosition, scale: Scale) {
  const { segments, circles } = drawingOf(assembly, pose, scale);
  return {
    ...at, keyDeg: inDegrees(pose.key), wippenDeg: inDegrees(pose.wippen), jackDeg: inDegrees(pose.jack), hammerDeg: inDegrees(pose.hammer),
    rates: found === undefined ? null : { ...(found satisfies Rates) }, departurePct: departurePct ?? null,
    segments: segments.map(({ part, from, to }) => ({ part, from: spotOf(from), to: spotOf(to) })),
    circles: circles.map(({ part, centre, radiusMm }) => ({ part, centre: spotOf(centre), radiusMm: millimetres(radiusMm) })),
  };
}

const inDegrees = (radians: number) => degrees((radians * 180) / Math.PI);
const spotOf = ({ xMm, yMm }: Point) => ({ xMm: millimetres(xMm), yMm: millimetres(yMm) });
