/**
 * Rooms. `whatIf`: a room of 12 surfaces whose floor became another, to all the page shows of it: reverberation by both formulas, target,
 * level, modes and the notes they hold, what to hang, and both drawings as marks (the aim is a picture at once, 16 ms). `screen`: the same
 * in the browser until it is painted, see `room-on-screen.mjs`. `places`: every place of a 0.25 m grid in a room of 7.2 × 5.4 × 3.0 m ranked, cosines and
 * answers laid out once, against the same sum written straight down for each place (naive). `impulse`: a take of six claps,
 * 20 s at 48 kHz, octave by octave, as times real time.
 */
import { compass88 } from '#instrument';
import { surfaceNames } from '#materials';
import { normalColumn, seededRandom } from '#numerics';
import { bandPlot, roomScene } from '#plot';
import { octaveBands, placementsOf, roomImpulseOf, roomModesOf } from '#room';
import { hangingAdviceOf, roomConsequencesOf, roomDraftSchema } from '#workshop';
import { duel, report, spreadOf, timesOf } from './measure.mjs';
import { roomOnScreen } from './room-on-screen.mjs';

const RATE = 48_000;
const TIME_S = 0.8;
const box = { lengthMm: 7200, widthMm: 5400, heightMm: 3000 };

const face = (index) => ({ surface: surfaceNames[index % 12], own: null });
const roomOf = (run) => roomDraftSchema.parse({
  cycle: 1, name: 'Bench', plan: { shape: 'box', lengthMm: box.lengthMm, widthMm: box.widthMm }, heightMm: box.heightMm, use: 'music', people: 4,
  floor: face(run), ceiling: face(1), walls: [0, 0, 0, 0].map(face), things: [6, 7, 8, 9, 10].map((index) => ({ face: face(index), areaM2: 2, on: 1 })),
  piano: { lengthMm: 1830, alongMm: 2500, acrossMm: 2100, tailDeg: 0 }, loudness: { powerDb: 94 }, hoursADay: 2,
});
const rooms = Array.from({ length: 12 }, (_, run) => roomOf(run));
const whatIf = (run) => {
  const known = roomConsequencesOf(rooms[run % rooms.length], { compass: compass88, a4Hz: 440 }).value;
  const words = { title: '', description: '', locale: 'en', widthPx: 560 };
  const plot = bandPlot({ ...words, heightPx: 260, bands: octaveBands.map(String), xLabel: '', yLabel: '', wanted: { ...known.target, value: known.target.seconds }, series: [{ state: 'planned', label: '', values: known.times[known.model] }] });
  const drawing = roomScene({ ...words, mostHeightPx: 440, points: known.input.points, places: [], piano: { ...rooms[0].piano, kind: 'grand', widthMm: 1520 }, wallName: String, lidName: '', scale: { mm: 1000, label: '' } });
  return [hangingAdviceOf(known), plot, drawing];
};

const question = { ...box, temperatureC: 20, reverberationS: TIME_S, gridMm: 250, fromWallMm: 750, heightAboveFloorMm: 800 };

/** The level at each semitone of the bass for one place, nothing laid out beforehand. */
function naivePlace(x, y) {
  const modes = [{ frequencyHz: 0, order: [0, 0, 0] }, ...roomModesOf(box, 20, 260)];
  const damping = (3 * Math.LN10) / TIME_S;
  const levels = Array.from({ length: 33 }, (_, step) => {
    const driven = 2 * Math.PI * 30 * 2 ** (step / 12);
    const energy = modes.reduce((sum, { frequencyHz, order: [nx, ny, nz] }) => {
      const own = 2 * Math.PI * frequencyHz;
      const norm = [nx, ny, nz].reduce((product, n) => product * (n === 0 ? 1 : 2), 1);
      const shape = (Math.cos((Math.PI * nx * x) / box.lengthMm) * Math.cos((Math.PI * ny * y) / box.widthMm) * Math.cos((Math.PI * nz * 800) / box.heightMm)) ** 2;
      return sum + (norm * shape * driven ** 2) / ((own ** 2 - driven ** 2) ** 2 + (2 * damping * driven) ** 2);
    }, 0);
    return 10 * Math.log10(energy);
  });
  const mean = levels.reduce((sum, level) => sum + level, 0) / levels.length;
  return Math.sqrt(levels.reduce((sum, level) => sum + (level - mean) ** 2, 0) / (levels.length - 1));
}
const naive = () => ours.map(({ alongMm, acrossMm }) => naivePlace(alongMm, acrossMm));
const ours = placementsOf(question);
const apart = Math.max(...naive().map((spread, index) => Math.abs(spread - ours[index].spreadDb)));

/** Six claps: noise that dies away, from a seed, so that every run hears the same. */
function claps() {
  const random = seededRandom(1);
  const noise = (lengthS) => normalColumn(lengthS * RATE, random);
  const samples = noise(20).map((value) => 1e-4 * value);
  for (let clap = 0; clap < 6; clap += 1) {
    const from = Math.round((0.5 + 3.2 * clap) * RATE);
    noise(2.4).forEach((value, at) => { samples[from + at] += 0.3 * value * 10 ** ((-3 * at) / RATE / TIME_S); });
  }
  return { sampleRateHz: RATE, channels: [samples] };
}
const take = claps();
const heard = roomImpulseOf(take);
const impulse = spreadOf(await timesOf(() => roomImpulseOf(take), { runs: 5, warm: 1 }));

report('room', {
  whatIfMs: spreadOf(await timesOf(whatIf, { runs: 60, warm: 10 })),
  places: ours.length,
  placesOverNaive: await duel(() => placementsOf(question), naive, { runs: 5, warm: 1 }),
  placesApartDb: apart,
  impulseMs: impulse,
  impulseTimesRealTime: 20_000 / impulse.median,
  clapsFound: heard.impulses,
  screen: await roomOnScreen(),
  t20At1000S: heard.bands.find(({ bandHz }) => bandHz === 1000)?.t20?.seconds,
});
