/**
 * Tone against its bars: made-up notes whose truth is known, and the open set of sixteen strikes of each of thirty keys.
 * Speed: f0, B, decay and descriptors as multiples of real time (bar 50), by the time this process worked and by the clock, beside a general
 * library's five features; a run of 88 keys in three strengths, 8 s each, found, named and measured (bar 60 s of one core).
 * Truth: error over the Cramér–Rao bound, and beside a general library that reads the period. Strikes: spread of B and f0 of one string,
 * each strike by itself and fitted together; partials beside a second estimator; noise, clipping and hum put on real notes; two notes at once.
 * Brightness: Kendall's tau against the strikes; how the decay repeats, on every second strike, with `--whole` on all.
 * `--small` takes a part of everything, `--no-recordings` leaves the set out.
 */
import path from 'node:path';
import { listenToNote, refitOn, soundOfNote, strikesTogether, takeOf } from '#tone';
import Meyda from 'meyda';
import { PitchDetector } from 'pitchy';
import { createServer } from 'vite';
import { report, spreadOf } from './measure.mjs';

const small = process.argv.includes('--small');
const RATE = 48_000;
const vite = await createServer({ root: path.join(import.meta.dirname, '..'), configFile: false, logLevel: 'error', server: { middlewareMode: true, hmr: false, ws: false, watch: null }, optimizeDeps: { noDiscovery: true }, ssr: { resolve: { conditions: ['wrestplank', 'module', 'node'] } } });
const testing = (name) => vite.ssrLoadModule(`/src/tone/testing/${name}.ts`);
const { syntheticNote } = await testing('synthetic');
const { diceOf, drawnSeed } = await testing('dice');
const { cramerRaoOf } = await testing('cramer-rao');
const { pulsePairHz } = await testing('second-estimator');
const { recordedNotes, recordedLayers, recordedStrike } = await testing('recordings');
const { expectedInharmonicityOf } = await vite.ssrLoadModule('/src/tone/comb.ts');

const seed = drawnSeed();
const dice = diceOf(seed);
const middle = (list) => [...list].sort((a, b) => a - b)[list.length >> 1] ?? Number.NaN;
const quantile = (list, share) => [...list].sort((a, b) => a - b)[Math.floor(share * (list.length - 1))];
const scatterOf = (list) => 1.4826 * middle(list.map((x) => Math.abs(x - middle(list))));
const rms = (list) => Math.sqrt(list.reduce((sum, x) => sum + x * x, 0) / list.length);
const cents = (hz, against) => 1200 * Math.log2(hz / against);
const said = (list) => list.join('; ') || 'none';
const round = (x, digits = 3) => Number(x.toPrecision(digits));

/** Milliseconds this process worked, whatever else the machine did, and those of the clock. */
function timed(work) {
  const [cpu, wall] = [process.cpuUsage(), performance.now()];
  const result = work();
  const { user, system } = process.cpuUsage(cpu);
  return { result, workedMs: (user + system) / 1000, clockMs: performance.now() - wall };
}

/** A struck string of a key with the stiffness to be expected. */
function madeUp(key, spec = {}) {
  const f0Hz = 440 * 2 ** ((key - 49) / 12) * 2 ** (dice.between(-10, 10) / 1200);
  const inharmonicityB = expectedInharmonicityOf(f0Hz) * dice.between(0.7, 1.4);
  return { f0Hz, inharmonicityB, ...syntheticNote({ seed: Math.floor(dice.even() * 2 ** 31), f0Hz, inharmonicityB, seconds: 8.2, partials: 30, snrDb: 55, knockDb: -14, unisonCents: key < 13 ? [0] : [-0.3, 0.2], ...spec }) };
}

function meydaFeatures(channel) {
  Meyda.bufferSize = 2048;
  Meyda.sampleRate = RATE;
  for (let at = 0; at + 2048 <= channel.length; at += 2048) Meyda.extract(['spectralCentroid', 'spectralSlope', 'spectralRolloff', 'perceptualSharpness', 'loudness'], Float32Array.from(channel.subarray(at, at + 2048)));
}

/** Multiples of real time, the second of two rounds over the keys: what is compiled on the way is not counted. */
function speeds() {
  const notes = [1, 13, 25, 37, 49, 61, 73, 85].map((key) => madeUp(key).samples);
  const whole = (samples) => {
    const note = listenToNote(samples);
    if (note.heard) soundOfNote(samples, note);
    return note.heard;
  };
  const round1 = notes.map(whole);
  const rows = notes.map((samples) => ({ whole: timed(() => whole(samples)), listen: timed(() => listenToNote(samples)), library: timed(() => meydaFeatures(samples.channels[0])) }));
  const times = (name, clock) => spreadOf(rows.map((row) => 8200 / row[name][clock]));
  const total = (name, clock) => (8200 * rows.length) / rows.reduce((sum, row) => sum + row[name][clock], 0);
  return { heard: `${round1.filter(Boolean).length} of ${notes.length}`, allTogetherXRealTimeWorked: round(total('whole', 'workedMs')), allTogetherXRealTimeClock: round(total('whole', 'clockMs')), bar: 50, byNoteWorked: times('whole', 'workedMs'), listenAloneWorked: round(total('listen', 'workedMs')), meydaFiveFeaturesWorked: round(total('library', 'workedMs')) };
}

/** 88 keys in three strengths, 8 s each, in takes of 11 keys. */
function compassRun() {
  const sums = { workedMs: 0, clockMs: 0, seconds: 0, found: 0, right: 0, missing: 0, doubled: 0, keys: 0 };
  const firsts = Array.from({ length: 8 }, (_, index) => 1 + 11 * index).slice(0, small ? 1 : 8);
  for (const peak of small ? [0.2] : [0.05, 0.2, 0.6]) for (const first of firsts) {
    const keys = Array.from({ length: 11 }, (_, index) => first + index);
    const lead = Float64Array.from({ length: RATE / 5 }, () => 1e-5 * dice.normal());
    const channel = new Float64Array(lead.length + 11 * 8 * RATE);
    channel.set(lead);
    keys.forEach((key, index) => channel.set(madeUp(key, { seconds: 8, leadS: 0, peak }).samples.channels[0], lead.length + index * 8 * RATE));
    const samples = { sampleRateHz: RATE, channels: [channel] };
    const { result: take, workedMs, clockMs } = timed(() => {
      const found = takeOf(samples);
      for (const { startS, endS, note } of found.notes) {
        const [from, to] = [startS - 0.03, endS].map((s) => Math.max(0, Math.round(s * RATE)));
        soundOfNote({ sampleRateHz: RATE, channels: [channel.subarray(from, to)] }, note);
      }
      return found;
    });
    const rightOnes = keys.filter((key, index) => take.notes.some(({ startS, note }) => note.key === key && Math.abs(startS - (0.2 + 8 * index)) < 0.05)).length;
    for (const [name, value] of Object.entries({ workedMs, clockMs, seconds: channel.length / RATE, found: take.notes.length, right: rightOnes, missing: take.missingKeys.length, doubled: take.duplicateKeys.length, keys: 11 })) sums[name] += value;
  }
  const { workedMs, clockMs, seconds, keys, ...counts } = sums;
  return { notes: keys, ...counts, workedS: round(workedMs / 1000), clockS: round(clockMs / 1000), barS: small ? 'not asked of a part' : 60, xRealTimeWorked: round((1000 * seconds) / workedMs) };
}

/** Errors over the Cramér–Rao bound of f0 and of B (bar 5), and a period detector on the same notes. */
function truth() {
  const trials = small ? 6 : 24;
  const rows = [[1, 40], [25, 40], [49, 20], [64, 40], [88, 20]].map(([key, snrDb]) => {
    const misses = Array.from({ length: trials }, () => {
      const made = madeUp(key, { snrDb, seconds: key === 1 ? 4.6 : 3, partials: 24, knockDb: undefined, unisonCents: [0] });
      const note = listenToNote(made.samples);
      if (!note.heard) return undefined;
      const bound = cramerRaoOf({ lines: made.lines[0], f0Hz: made.f0Hz, inharmonicityB: made.inharmonicityB, noise: made.noise, onsetS: made.onsetS, fromS: note.windowFromS, toS: note.windowToS, sampleRateHz: RATE });
      return { f0: cents(note.f0Hz, made.f0Hz) / bound.f0Cents, b: (note.inharmonicityB / made.inharmonicityB - 1) / bound.relativeB };
    }).filter(Boolean);
    return `key ${key} at ${snrDb} dB: f0 ${round(rms(misses.map(({ f0 }) => f0)), 2)}, B ${round(rms(misses.map(({ b }) => b)), 2)} (${misses.length} of ${trials} heard)`;
  });
  const period = [13, 25, 37, 49, 61].map((key) => {
    const made = madeUp(key, { snrDb: 60, seconds: 3, unisonCents: [0] });
    const from = Math.round((made.onsetS + 0.1) * RATE);
    const [hz] = PitchDetector.forFloat64Array(8192).findPitch(made.samples.channels[0].subarray(from, from + 8192), RATE);
    const note = listenToNote(made.samples);
    return `key ${key}: ${round(cents(hz, made.f0Hz))} by the period, ${note.heard ? round(cents(note.f0Hz, made.f0Hz), 2) : 'not heard'} by the law`;
  });
  return { timesCramerRaoBound: said(rows), centsBesidePitchy: said(period) };
}

/** Two notes at once, by interval, and single notes taken for two. */
function twoAtOnce() {
  const missed = [];
  const falsely = [];
  const trials = small ? 12 : 72;
  for (let trial = 0; trial < trials; trial += 1) {
    const [key, up] = [10 + Math.floor(dice.even() * 55), 1 + (trial % 12)];
    const [low, high] = [key, key + up].map((one) => madeUp(one, { snrDb: 40, seconds: 2.5 }).samples.channels[0]);
    const note = listenToNote({ sampleRateHz: RATE, channels: [low.map((x, at) => (x + high[at]) / 2)] });
    if (note.heard && !note.quality.warnings.includes('two-notes')) missed.push(up);
    const alone = listenToNote({ sampleRateHz: RATE, channels: [low] });
    if (alone.heard && alone.quality.warnings.includes('two-notes')) falsely.push(key);
  }
  return { trials, flagged: trials - missed.length, missedSemitones: said(missed), bar: '95 %', octavesMissed: `${missed.filter((up) => up === 12).length} of ${trials / 12}`, singleTakenForTwo: falsely.length };
}

const BARS = [{ upTo: 51, b: 0.3, f0: 0.15 }, { upTo: 63, b: 1, f0: 0.3 }, { upTo: 75, b: 5, f0: Infinity }];

function spreads(fits) {
  const b = fits.map(({ inharmonicityB }) => inharmonicityB);
  return { b: (100 * scatterOf(b)) / middle(b), f0: scatterOf(fits.map(({ f0Hz }) => cents(f0Hz, 440))) };
}

/** One key of the open set: all strikes listened to, known by the tenth. */
async function strikesOf({ note: name, key }) {
  const strikes = [];
  for (const layer of recordedLayers) {
    const samples = await recordedStrike(name, layer);
    const note = listenToNote(samples, { key });
    strikes.push({ layer, samples, note, right: note.heard && note.key === key });
  }
  return { name, key, strikes, heard: strikes.flatMap(({ note, right }) => (right ? [note] : [])) };
}

function oneString({ name, key, heard }) {
  const lists = heard.map(({ partials }) => partials);
  const together = lists.length < 2 ? undefined : strikesTogether(lists, 'one-term');
  if (together === undefined) return undefined;
  const numbers = together.string.partials.map(({ n }) => n);
  const first = heard.flatMap(({ partials }) => partials.filter(({ n }) => n === 1).map(({ frequencyHz }) => cents(frequencyHz, 440)));
  return { name, key, partials: numbers.length, own: spreads(lists.flatMap((list) => refitOn(list, numbers, 'one-term') ?? [])), together: spreads(together.strikes.flatMap((fit) => fit ?? [])), firstCents: first.length < 8 ? undefined : scatterOf(first) };
}

function oneStringTold(rows) {
  const over = (which) => rows.flatMap(({ name, key, partials, ...row }) => {
    const bar = BARS.find(({ upTo }) => key <= upTo);
    const { b, f0 } = row[which];
    return bar === undefined || partials < 4 || (b <= bar.b && f0 <= bar.f0) ? [] : [`${name} B ${round(b, 2)} %, f0 ${round(f0, 2)} ct`];
  });
  const firsts = rows.filter(({ firstCents }) => firstCents !== undefined);
  return {
    keysWithABar: rows.filter(({ key, partials }) => key <= 75 && partials >= 4).length, bars: 'B 0.3 % and f0 0.15 ct to B4, 1 % and 0.3 ct to B5, 5 % to B6',
    overFittedTogether: said(over('together')), overEachByItself: said(over('own')),
    spreads: said(rows.map(({ name, own, together }) => `${name} ${round(own.b, 2)} → ${round(together.b, 2)} %, ${round(own.f0, 2)} → ${round(together.f0, 2)} ct`)),
    firstPartialWithin03Cents: `${firsts.filter(({ firstCents }) => firstCents <= 0.3).length} of ${firsts.length} (bar 80 %); over ${said(firsts.filter(({ firstCents }) => firstCents > 0.3).map(({ name, firstCents }) => `${name} ${round(firstCents, 2)}`))}`,
  };
}

/** Partials of one strike beside an estimator in time, and B through both. */
function besideSecond({ strikes }) {
  const { samples, note } = strikes[8];
  if (!note.heard) return { offs: [] };
  const others = note.partials.map(({ n, frequencyHz }) => ({ n, frequencyHz: pulsePairHz(samples, { placeHz: frequencyHz, spacingHz: note.f0Hz, fromS: note.windowFromS, toS: note.windowToS }), frequencyUncertaintyHz: 0 }));
  const [own, theirs] = [note.partials, others].map((list) => refitOn(list, note.fittedPartials, 'one-term'));
  return { offs: note.partials.map(({ frequencyHz }, at) => Math.abs(cents(others[at].frequencyHz, frequencyHz))), b: own && theirs ? 100 * Math.abs(own.inharmonicityB / theirs.inharmonicityB - 1) : undefined };
}

/** Strike 10 with white noise 20 dB down, with its tops cut 6 dB down, and with hum: what moves on the partials both have. */
function spoilt({ name, strikes }) {
  const { samples, note } = strikes[9];
  if (!note.heard) return undefined;
  const { channels } = samples;
  const from = Math.round(note.onsetS * RATE);
  const power = channels.reduce((sum, channel) => sum + channel.subarray(from, from + 2 * RATE).reduce((all, x) => all + x * x, 0) / (2 * RATE), 0) / channels.length;
  const top = channels.reduce((most, channel) => channel.reduce((high, x) => Math.max(high, Math.abs(x)), most), 0);
  const moved = (change) => {
    const other = listenToNote({ ...samples, channels: channels.map((channel) => channel.map(change)) });
    const pair = other.heard ? strikesTogether([note.partials, other.partials], 'one-term')?.strikes : undefined;
    const [a, b] = pair ?? [];
    return { told: other.quality.warnings, partials: pair === undefined ? 0 : a?.partials.length ?? 0, f0: a && b ? Math.abs(cents(b.f0Hz, a.f0Hz)) : undefined, b: a && b ? 100 * Math.abs(b.inharmonicityB / a.inharmonicityB - 1) : undefined };
  };
  const hum = (at) => [1, 2, 3, 4, 5].reduce((sum, h) => sum + Math.cos((2 * Math.PI * 50 * h * at) / RATE + h) / h, 0) * top * 0.1;
  return { name, clean: note.quality, noise: moved((x) => x + Math.sqrt(power) * 0.1 * dice.normal()), clip: moved((x) => Math.max(-top / 2, Math.min(top / 2, x))), hum: moved((x, at) => x + hum(at)) };
}

function spoiltTold(all, which, { f0, b }) {
  const rows = all.map((row) => ({ name: row.name, ...row[which] }));
  const asked = rows.filter(({ partials }) => partials >= 4);
  const over = asked.filter((row) => !(row.f0 <= f0) || !(row.b <= b));
  return { keysWith4SharedPartials: asked.length, bar: `${f0} ct${Number.isFinite(b) ? `, ${b} %` : ''}`, within: asked.length - over.length, over: said(over.map((row) => `${row.name} ${round(row.f0, 2)} ct ${round(row.b, 2)} %`)), fewerOrNotHeard: said(rows.filter(({ partials }) => partials < 4).map(({ name }) => name)), told: `${rows.filter(({ told }) => told.includes({ noise: 'noisy', clip: 'clipped', hum: 'hum' }[which])).length} of ${rows.length}` };
}

const tau = (values) => {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) for (let j = 0; j < i; j += 1) sum += Math.sign(values[i] - values[j]);
  return (2 * sum) / (values.length * (values.length - 1));
};

/** Brightness and decay of all strikes on the partials of the tenth. */
function sounds({ name, key, strikes }) {
  const known = strikes[9].note;
  if (!known.heard) return undefined;
  const taken = strikes.filter(({ layer }) => process.argv.includes('--whole') || layer % 2 === 0);
  const all = taken.map(({ samples, note }) => soundOfNote(samples, { ...known, onsetS: note.heard ? note.onsetS : known.onsetS, endS: undefined }));
  const of = (figure) => all.flatMap(({ descriptors }) => descriptors?.[figure] ?? []);
  const decayOf = (figure) => all.filter((_, at) => taken[at].layer >= 6).flatMap(({ decay }) => decay?.[figure] ?? []);
  return { name, key, centroid: of('harmonicCentroid'), balance: of('balanceDb'), sharpness: of('sharpnessAcum'), edt: decayOf('edt10S'), t20: decayOf('t20S') };
}

function soundsTold(rows) {
  const told = (figure, bar) => {
    const taus = rows.filter((row) => row[figure].length >= 8).map((row) => ({ name: row.name, tau: tau(row[figure]) }));
    return `${taus.filter((row) => row.tau >= 0.9).length} of ${taus.length} keys at 0.9${bar}; below: ${said(taus.filter((row) => row.tau < 0.9).map((row) => `${row.name} ${row.tau.toFixed(2)}`))}`;
  };
  const repeats = (figure) => spreadOf(rows.filter((row) => row[figure].length >= 5).map((row) => (100 * scatterOf(row[figure])) / middle(row[figure])));
  return { harmonicCentroidTau: told('centroid', ' (bar 90 %)'), balanceTau: told('balance', ' (bar 85 %)'), sharpnessTau: told('sharpness', ''), edt10SpreadPct: repeats('edt'), t20SpreadPct: repeats('t20') };
}

async function recordings() {
  const rows = { strings: [], second: [], spoilt: [], sounds: [] };
  let [strikes, right] = [0, 0];
  for (const one of recordedNotes.filter((_, index) => !small || index % 10 === 4)) {
    const known = await strikesOf(one);
    strikes += known.strikes.length;
    right += known.heard.length;
    for (const [list, found] of [[rows.strings, oneString(known)], [rows.spoilt, spoilt(known)], [rows.sounds, sounds(known)]]) if (found !== undefined) list.push(found);
    if (one.key >= 13 && one.key <= 52) rows.second.push(besideSecond(known));
    process.stderr.write(`${one.note} `);
  }
  const offs = rows.second.flatMap(({ offs: list }) => list);
  return {
    heardAndNamedRight: `${right} of ${strikes} strikes`, oneString: oneStringTold(rows.strings),
    besideSecondEstimator: { partials: offs.length, medianCents: round(middle(offs)), p95Cents: round(quantile(offs, 0.95)), bars: '0.1 and 1', worstBPct: round(Math.max(...rows.second.flatMap(({ b }) => b ?? []))) },
    noise20Db: spoiltTold(rows.spoilt, 'noise', { f0: 0.1, b: 0.5 }), clipped6Db: spoiltTold(rows.spoilt, 'clip', { f0: 0.2, b: 0.3 }), hum20Db: spoiltTold(rows.spoilt, 'hum', { f0: 0.2, b: Infinity }),
    ...soundsTold(rows.sounds),
  };
}

const figures = { seed, ...speeds(), run: compassRun(), ...truth(), twoAtOnce: twoAtOnce(), ...(process.argv.includes('--no-recordings') ? {} : await recordings()) };
await vite.close();
report('tone', figures);
