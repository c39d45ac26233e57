/** An invented scale for the benchmarks: no piano has it. 88 notes, bridge lengths with a wobble of 0.6 %, plain sizes and wound candidates. */
import { metricWireSizes, steelWire } from '#materials';

/** A sequence of numbers in [0, 1) that is the same each time. */
export function repeatable(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state * 1664525 + 1013904223) >>> 0;
    return state / 4294967296;
  };
}

/** 21 plain sizes, 0.775 to 1.3 mm. */
export const plainSizes = metricWireSizes.slice(2, 23).map(({ diameterMm }) => ({ diameterMm }));

const COPPER = 8.96;
const ringOf = (inner, wire) => (COPPER * Math.PI ** 2 * wire * (inner + wire)) / 4;
const wireFor = (inner, mass) => (-inner + Math.sqrt(inner ** 2 + (16 * Math.max(mass, 0.2)) / (COPPER * Math.PI ** 2))) / 2;
const inStock = (diameter) => Math.max(0.2, Math.round(diameter * 40) / 40);

/** Single or double windings around a tension: ten cores, each with wraps from 3/4 to 5/4 of the mass wanted. */
function windings({ frequencyHz, speakingLengthMm, targetTensionN }, count) {
  const mass = (targetTensionN * 1e3) / (4 * (speakingLengthMm * 1e-3) ** 2 * frequencyHz ** 2);
  const each = Math.ceil(count / 10);
  return Array.from({ length: count }, (_, index) => {
    const core = 0.85 + 0.075 * Math.floor(index / each);
    const wanted = Math.max(mass - (steelWire.densityKgM3.value / 1e3) * Math.PI * core ** 2 / 4, 0.5) * (0.75 + (0.5 * (index % each)) / each);
    const single = wireFor(core, wanted);
    if (single <= 1.6) return { coreDiameterMm: core, wraps: [{ wireDiameterMm: inStock(single) }], bareFrontMm: 18, bareRearMm: 16 };
    const inner = inStock(0.4 * single + 0.1);
    const outer = inStock(wireFor(core + 2 * inner, wanted - ringOf(core, inner)));
    return { coreDiameterMm: core, wraps: [{ wireDiameterMm: inner }, { wireDiameterMm: outer }], bareFrontMm: 18, bareRearMm: 16 };
  });
}

/** The lowest 28 notes wound, the seven above the break from either, plain above; `from` and `wound` make smaller ones. */
export function inventedScale({ from = 1, to = 88, wound = 150, plain = plainSizes } = {}) {
  const random = repeatable(7);
  return Array.from({ length: 88 }, (_, index) => index + 1).map((key) => {
    const wobble = 1 + 0.006 * (2 * random() - 1);
    const isBass = key <= 28;
    const note = {
      key, frequencyHz: 440 * 2 ** ((key - 49) / 12), strings: key <= 10 ? 1 : isBass ? 2 : 3,
      speakingLengthMm: wobble * (isBass ? 1000 + (28 - key) * 22 : 52 * 2 ** (((88 - key) / 12) * 0.935)),
      targetTensionN: key <= 10 ? 1100 : isBass ? 900 : 720,
    };
    return { ...note, candidates: [...(key >= 22 ? plain : []), ...(isBass ? windings(note, wound) : [])] };
  }).filter(({ key }) => key >= from && key <= to);
}
