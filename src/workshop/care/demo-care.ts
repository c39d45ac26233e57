import { swaysFrom } from '../demo-sway.ts';
import type { CareDraft } from './records.ts';
import { usualPlan } from './usual.ts';

const DAYS = 364;
const FIRST_DAY = Date.UTC(2025, 10, 27);
const HOUR_MS = 3_600_000;
const YEAR_DAYS = 365;

/** A year of an invented logger, an hour a row: dry in a cold winter, damp in late summer, a heating that was left on in February. @source OWN */
export function demoLoggerText(): string {
  const sway = swaysFrom(5512);
  let [temperatureSway, humiditySway] = [0, 0];
  const rows = Array.from({ length: DAYS * 24 }, (_, hour) => {
    const day = hour / 24;
    temperatureSway = 0.97 * temperatureSway + 0.18 * sway();
    humiditySway = 0.985 * humiditySway + 0.5 * sway();
    const season = Math.cos((2 * Math.PI * (day - 65)) / YEAR_DAYS);
    const heated = Math.exp(-(((day - 78) / 4) ** 2));
    const temperatureC = 20.5 - 1.6 * season + 2.5 * heated + 0.9 * Math.sin((2 * Math.PI * (hour - 9)) / 24) + temperatureSway;
    const humidityPct = 49 - 8.5 * season - 9 * heated - 0.7 * Math.sin((2 * Math.PI * (hour - 9)) / 24) + humiditySway;
    const at = new Date(FIRST_DAY + hour * HOUR_MS).toISOString();
    return `${at.slice(0, 10)} ${at.slice(11, 16)};${temperatureC.toFixed(1)};${humidityPct.toFixed(1)}`;
  });
  return ['Logger, invented', 'Time;Temperature (°C);Humidity (% RH)', ...rows, ''].join('\n');
}

const read = (at: string, temperatureC: number, humidityPct: number, pitchCt: number, bearingDeg: number): CareDraft => ({ kind: 'air', at: `${at}T10:00`, temperatureC, humidityPct, pitchCt, bearingDeg, remark: 'Invented.' });

/** What was read by hand beside the invented logger, the plan of care and the two moves of the invented grand. @source OWN */
export function demoCare(): readonly CareDraft[] {
  return [
    read('2026-05-20', 20.5, 48, -0.6, 0.84), read('2026-07-20', 22, 56, 1.4, 0.9), read('2026-08-15', 22.5, 57, 2.2, 0.92), read('2026-09-28', 21, 53, 0.9, 0.89), read('2026-10-20', 20, 49, -0.9, 0.86), read('2026-11-20', 20, 43, -2.1, 0.81), read('2026-04-10', 20, 45, -0.4, 0.83),
    { ...usualPlan, hoursPerWeek: 10, boardMm: 1380, blockMm: 38, lives: usualPlan.lives.map((life) => (life.part === 'pinblock' ? { ...life, since: '1926-05-01' } : life.part === 'centrePins' || life.part === 'hammerShape' || life.part === 'hammers' ? { ...life, since: '2026-03-15' } : life)), remark: 'Invented for demonstration: keep the room above 40 % in January.' },
    { kind: 'move', on: '2026-02-05', status: 'done', fromPlace: 'Front room, invented', toPlace: 'The shop', weightKg: 330, legs: 3, heaviestPct: 40, areaM2: 3.6, footMm: 60, storey: 'ground', steps: 2, narrowestMm: 920, wrap: 'Two quilts and stretch film, lid tied, on its side on the skid board', arrival: { temperatureC: 20, humidityPct: 44, surfaceC: 3, laterC: 8.5, betweenHours: 6 }, remark: 'Invented.' },
    {
      kind: 'move', on: '2026-12-07', status: 'planned', fromPlace: 'The shop', toPlace: 'Flat of the owner, invented', weightKg: 330, legs: 3, heaviestPct: 40, areaM2: 3.6, footMm: 110, storey: 'upper', steps: 17, narrowestMm: 870, wrap: 'Quilts, film, heated van',
      before: { on: '2026-11-20', points: [{ part: 'case', grade: 'marked', words: 'Shallow dent in the rim by the left leg' }, { part: 'lid', grade: 'marked', words: 'Hairline scratch at the bass corner, 40 mm' }, { part: 'keys', grade: 'good' }, { part: 'pedals', grade: 'good' }], a4Hz: 440, humidityPct: 43 }, remark: 'Invented. Old joists: a structural engineer is asked before the day.',
    },
  ];
}
