import { type PublishedCase, type PublishedFigure, figuresFrom, printedTo } from '#sources';
import { celsius, cubicMetres, decibels, decibelsA, hertz, hours, kilopascals, millimetres, percent, seconds, squareMetres } from '#units';
import { airAbsorptionOf } from './air-absorption.ts';
import { dailyExposureOf } from './exposure.ts';
import { reverberantLevelOf } from './level.ts';
import { roomModesOf, schroederOf, volumeOf } from './modes.ts';
import { ownTimeOf } from './own-target.ts';
import { type Room, absorptionOf, reverberationOf } from './reverberation.ts';
import { reverberationTargetOf } from './target.ts';

const air = (temperature: number, humidity: number) => ({ temperatureC: celsius(temperature), humidityPct: percent(humidity), pressureKPa: kilopascals(101.325) });

/** Table 2: dB/km from 63 to 8000 Hz, and half of the last place printed. */
const alphas = [
  { temperature: 10, humidity: 70, dbPerKm: [0.1, 0.4, 1.0, 1.9, 3.7, 9.7, 32.8, 117] },
  { temperature: 20, humidity: 70, dbPerKm: [0.1, 0.3, 1.1, 2.8, 5.0, 9.0, 22.9, 76.6] },
  { temperature: 30, humidity: 70, dbPerKm: [0.1, 0.3, 1.0, 3.1, 7.4, 12.7, 23.1, 59.3] },
  { temperature: 15, humidity: 20, dbPerKm: [0.3, 0.6, 1.2, 2.7, 8.2, 28.2, 88.8, 202] },
] as const;
const alphaCases = (decimals: number): readonly PublishedCase[] => alphas.flatMap(({ temperature, humidity, dbPerKm }) => dbPerKm.flatMap((expected, band): readonly PublishedCase[] => {
  const midband = 1000 * 10 ** ((3 * (band - 4)) / 10);
  return (expected > 100 ? 0 : 1) === decimals ? [['air, dB/km', `${String(temperature)} °C, ${String(humidity)} %, ${midband.toFixed(0)} Hz`, expected, () => airAbsorptionOf(air(temperature, humidity), hertz(midband))]] : [];
}));

const classroom: Room = { volumeM3: cubicMetres(480), surfaces: [{ areaM2: squareMetres(376), absorption: [0.0685, 0.0685, 0.0685, 0.0685, 0.0685, 0.0685] }] };

const daily = (level: number, time: number) => (): number => dailyExposureOf([{ levelDbA: decibelsA(level), hours: hours(time) }]);
const exposures: readonly PublishedCase[] = [[88, 4], [91, 2], [94, 1], [97, 0.5], [100, 0.25]].map(([level = 0, time = 0]): PublishedCase => ['daily exposure, dB(A)', `${String(level)} dB(A) for ${String(time)} h`, 85, daily(level, time)]);

const study = { lengthMm: millimetres(4200), widthMm: millimetres(3500), heightMm: millimetres(2500) };
const mode = (index: number) => (): number => roomModesOf(study, celsius(20), hertz(80))[index]?.frequencyHz ?? Number.NaN;

/** Figures of rooms that others worked out, beside this program's. */
export const publishedRoomFigures: readonly PublishedFigure[] = [
  ...figuresFrom('ISO-9613-2', 'table 2', printedTo(1), ...alphaCases(1)),
  ...figuresFrom('ISO-9613-2', 'table 2', { tolerance: 0.55, because: 'printed to a whole number' }, ...alphaCases(0)),
  ...figuresFrom('EXAM-SABINE', 'question 57435', { tolerance: 0.002, because: 'mean absorption printed to 4 decimals' },
    ['reverberation, s', '10 × 8 × 6 m, mean absorption 0.0685', 3, () => reverberationOf(classroom, 'sabine')[2]]),
  ...figuresFrom('EXAM-SABINE', 'question 57435', printedTo(1),
    ['absorption, m²', 'the same', 25.8, () => absorptionOf(classroom, 'sabine')[2]]),
  ...figuresFrom('DIN-18041', 'group A by volume, worked from the equation', printedTo(2),
    ['music, s', '100 m³: 0.45·2 + 0.07', 0.97, () => reverberationTargetOf(cubicMetres(100), 'music').seconds],
    ['speech, s', '1000 m³: 0.37·3 − 0.14', 0.97, () => reverberationTargetOf(cubicMetres(1000), 'speech').seconds],
    ['teaching, s', '100 m³: 0.32·2 − 0.17', 0.47, () => reverberationTargetOf(cubicMetres(100), 'teaching').seconds]),
  ...figuresFrom('DIN-18041', 'the same equation written down as a target of one’s own', printedTo(2),
    ['music, s', '100 m³: slope 0.45, offset 0.07', 0.97, () => ownTimeOf({ time: { slopeS: seconds(0.45), offsetS: seconds(0.07) } }, cubicMetres(100))],
    ['speech, s', '1000 m³: slope 0.37, offset −0.14', 0.97, () => ownTimeOf({ time: { slopeS: seconds(0.37), offsetS: seconds(-0.14) } }, cubicMetres(1000))]),
  ...figuresFrom('EU-2003-10', 'article 3, as a scientific committee tabulates it', { tolerance: 0.1, because: '3 dB for half the time is 3.01' }, ...exposures),
  ...figuresFrom('OWN', 'room of 4.2 × 3.5 × 2.5 m at 20 °C, worked by hand', printedTo(1),
    ['first mode, Hz', 'along the length', 40.9, mode(0)], ['second mode, Hz', 'along the width', 49.0, mode(1)], ['third mode, Hz', 'tangential', 63.8, mode(2)], ['fourth mode, Hz', 'along the height', 68.6, mode(3)]),
  ...figuresFrom('OWN', 'room of 4.2 × 3.5 × 2.5 m at 20 °C, worked by hand', printedTo(0),
    ['Schroeder frequency, Hz', 'T = 0.6 s', 256, () => schroederOf(volumeOf(study), seconds(0.6))],
    ['level of the room, dB', '94 dB of power, 37 m³, T = 0.6 s', 90, () => reverberantLevelOf({ volumeM3: cubicMetres(37), reverberationS: seconds(0.6) }, decibels(94))],
    ['level of the room, dB', '94 dB of power, 117 m³, T = 1.0 s', 87, () => reverberantLevelOf({ volumeM3: cubicMetres(117), reverberationS: seconds(1) }, decibels(94))]),
];
