/**
 * Tone beyond the pitch. Decay and descriptors of made-up notes, as multiples of real time, beside a general audio library's five features
 * on the same samples; then a run of 88 keys in three strengths, 8 s each, found and named (budget 60 s of one core; all times are time worked).
 * On the open set: Kendall's tau of brightness against the 16 strikes of each of 30 keys (bars: harmonic centroid 0.9 on 90 % of the keys
 * up to C6, high/low balance 0.9 on 85 % of all), and how the decay repeats over strikes 6 to 16. `--no-recordings` leaves that out.
 */
import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { listenToNote, soundOfNote, takeOf } from '#tone';
import { OggVorbisDecoder } from '@wasm-audio-decoders/ogg-vorbis';
import Meyda from 'meyda';
import { report, spreadOf } from './measure.mjs';

const RATE = 48_000;
/** Time this process worked, ms: what else the machine does does not count. */
const worked = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
const hzOf = (key) => 440 * 2 ** ((key - 49) / 12);

/** A struck string: partials of a stiff law that fall by 7 dB an octave and die faster upwards, a thump, a hiss. */
function madeUp(key, { seconds, peak = 0.4 }) {
  const f0 = hzOf(key);
  const stiffness = 8e-5 * 2 ** ((key - 30) / 8);
  const out = new Float64Array(Math.round(seconds * RATE));
  for (let n = 1; n <= 20; n += 1) {
    const hz = n * f0 * Math.sqrt(1 + stiffness * n * n);
    if (hz > 12_000) break;
    const step = (2 * Math.PI * hz) / RATE;
    const shrink = Math.exp((-Math.log(1000) * n ** 0.5) / (12 * (f0 / 110) ** -0.6 * RATE));
    const [c, s] = [shrink * Math.cos(step), shrink * Math.sin(step)];
    let [re, im] = [n ** -1.2 * Math.cos(n), n ** -1.2 * Math.sin(n)];
    for (let at = 0; at < out.length; at += 1) {
      out[at] += re;
      [re, im] = [re * c - im * s, re * s + im * c];
    }
  }
  const top = out.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  return out.map((x, at) => (peak * x) / top + 0.05 * (Math.random() - 0.5) * Math.exp(-at / 700) + 1e-4 * (Math.random() - 0.5));
}

const lead = new Float64Array(RATE / 5).map(() => 1e-4 * (Math.random() - 0.5));
const withLead = (sound) => {
  const out = new Float64Array(lead.length + sound.length);
  out.set(lead);
  out.set(sound, lead.length);
  return out;
};

function speeds() {
  const rows = [1, 13, 25, 37, 49, 61, 73, 85].map((key) => {
    const channel = withLead(madeUp(key, { seconds: 8 }));
    const samples = { sampleRateHz: RATE, channels: [channel] };
    const seconds = channel.length / RATE;
    const timed = (work) => {
      work();
      const begin = worked();
      const result = work();
      return { result, ms: worked() - begin };
    };
    const listened = timed(() => listenToNote(samples));
    const sounded = listened.result.heard ? timed(() => soundOfNote(samples, listened.result)) : undefined;
    return { key, listen: (seconds * 1000) / listened.ms, sound: sounded && (seconds * 1000) / sounded.ms, both: sounded && (seconds * 1000) / (listened.ms + sounded.ms), library: (seconds * 1000) / timed(() => library(channel)).ms };
  });
  const of = (name) => spreadOf(rows.flatMap((row) => row[name] ?? []));
  return { notHeard: rows.filter(({ sound }) => sound === undefined).map(({ key }) => key).join(' ') || 'none', listenXRealTime: of('listen'), decayAndDescriptorsXRealTime: of('sound'), togetherXRealTime: of('both'), libraryFiveFeaturesXRealTime: of('library') };
}

/** The general library: five features, frame after frame. */
function library(channel) {
  Meyda.bufferSize = 2048;
  Meyda.sampleRate = RATE;
  for (let at = 0; at + 2048 <= channel.length; at += 2048) Meyda.extract(['spectralCentroid', 'spectralSlope', 'spectralRolloff', 'perceptualSharpness', 'loudness'], Float32Array.from(channel.subarray(at, at + 2048)));
}

/** 88 keys in three strengths, 8 s each, in takes of 11 keys: one long take would only be more memory. */
function run() {
  let [ms, found, right, missing, doubled, seconds] = [0, 0, 0, 0, 0, 0];
  for (const peak of [0.05, 0.2, 0.6]) for (let first = 1; first <= 88; first += 11) {
    const keys = Array.from({ length: 11 }, (_, index) => first + index);
    const channel = Float64Array.from(keys.flatMap((key) => Array.from(madeUp(key, { seconds: 8, peak }))));
    const samples = { sampleRateHz: RATE, channels: [withLead(channel)] };
    const begin = worked();
    const take = takeOf(samples);
    for (const { startS, endS, note } of take.notes) {
      const [from, to] = [startS - 0.03, endS].map((s) => Math.max(0, Math.round(s * RATE)));
      soundOfNote({ sampleRateHz: RATE, channels: [samples.channels[0].subarray(from, to)] }, note);
    }
    ms += worked() - begin;
    seconds += channel.length / RATE;
    found += take.notes.length;
    right += keys.filter((key, index) => take.notes.some(({ startS, note }) => note.key === key && Math.abs(startS - (0.2 + 8 * index)) < 0.05)).length;
    missing += take.missingKeys.length;
    doubled += take.duplicateKeys.length;
  }
  return { notes: 264, found, rightKeyAtRightPlace: right, missing, doubled, seconds: ms / 1000, budgetSeconds: 60, within: ms < 60_000, xRealTime: (seconds * 1000) / ms };
}

const tau = (values) => {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) for (let j = 0; j < i; j += 1) sum += Math.sign(values[i] - values[j]);
  return (2 * sum) / (values.length * (values.length - 1));
};

async function strike(name, layer) {
  const home = import.meta.resolve(`@audio-samples/piano-velocity${layer}/package.json`);
  const decoder = new OggVorbisDecoder();
  await decoder.ready;
  const { channelData, sampleRate } = await decoder.decodeFile(await readFile(fileURLToPath(new URL(`audio/${encodeURIComponent(name)}v${layer}.ogg`, home))));
  decoder.free();
  return { sampleRateHz: sampleRate, channels: channelData.map((channel) => Float64Array.from(channel)) };
}

/** Robust standard deviation over the median, per cent. */
const spreadPct = (values) => {
  const middle = (list) => [...list].sort((a, b) => a - b)[list.length >> 1];
  return (148.26 * middle(values.map((value) => Math.abs(value - middle(values))))) / middle(values);
};

async function recordings() {
  const rows = [];
  for (let key = 1; key <= 88; key += 3) {
    const name = `${['A', 'C', 'D#', 'F#'][((key - 1) / 3) % 4]}${Math.floor((key + 8) / 12)}`;
    const known = listenToNote(await strike(name, 10));
    if (!known.heard) continue;
    const sounds = [];
    for (let layer = 1; layer <= 16; layer += 1) {
      const samples = await strike(name, layer);
      const own = listenToNote(samples);
      sounds.push(soundOfNote(samples, { ...known, onsetS: own.heard ? own.onsetS : known.onsetS, endS: undefined }));
    }
    const of = (figure) => sounds.flatMap(({ descriptors }) => descriptors?.[figure] ?? []);
    const decayOf = (figure) => sounds.slice(5).flatMap(({ decay }) => decay?.[figure] ?? []);
    rows.push({ name, key, centroid: of('harmonicCentroid'), balance: of('balanceDb'), sharpness: of('sharpnessAcum'), edt: decayOf('edt10S'), t20: decayOf('t20S') });
    process.stderr.write(`${name} centroid ${tau(of('harmonicCentroid')).toFixed(2)} balance ${tau(of('balanceDb')).toFixed(2)} (${of('balanceDb').length}) edt ${spreadPct(decayOf('edt10S'))?.toFixed(1)} t20 ${spreadPct(decayOf('t20S'))?.toFixed(1)} (${decayOf('t20S').length})\n`);
  }
  const taus = (figure) => rows.filter((row) => row[figure].length >= 8).map((row) => ({ name: row.name, tau: tau(row[figure]) }));
  const told = (figure) => ({ keys: taus(figure).length, atLeast09: taus(figure).filter((row) => row.tau >= 0.9).length, below: taus(figure).filter((row) => row.tau < 0.9).map((row) => `${row.name} ${row.tau.toFixed(2)}`).join(' ') || 'none' });
  const repeats = (figure) => spreadOf(rows.filter((row) => row[figure].length >= 6).map((row) => spreadPct(row[figure])));
  return { harmonicCentroid: told('centroid'), balance: told('balance'), sharpness: told('sharpness'), edt10SpreadPct: repeats('edt'), t20SpreadPct: repeats('t20') };
}

const wanted = process.argv.includes('--no-recordings') ? {} : { openSet: await recordings() };
report('tone-sound', { speeds: speeds(), run: run(), ...wanted });
