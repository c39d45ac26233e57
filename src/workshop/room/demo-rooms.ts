import type { DemoStep } from '../demo-step.ts';
import type { RoomDraft, RoomFace } from './record.ts';

const of = (surface: NonNullable<RoomFace['surface']>): RoomFace => ({ surface, own: null });
const PLASTER = of('plaster-on-brick');

/** A bare drawing room, and the same once a rug lies and a curtain hangs. */
const BARE: RoomDraft = {
  cycle: 1, name: 'Drawing room, bare (invented)', plan: { shape: 'box', lengthMm: 7200, widthMm: 5400 }, heightMm: 3000,
  floor: of('wood-on-joists'), ceiling: of('plaster-on-lath'), walls: [PLASTER, PLASTER, PLASTER, PLASTER],
  things: [{ words: 'Windows', face: of('window-glass'), areaM2: 6, on: 1 }, { words: 'Door', face: of('wooden-door'), areaM2: 2, on: 3 }],
  people: 4, temperatureC: 20, humidityPct: 48, use: 'music', piano: { lengthMm: 1830, alongMm: 2500, acrossMm: 2100, tailDeg: 0 },
  loudness: { powerDb: 94 }, playerMm: 700, listenerMm: 3500, hoursADay: 2, remark: 'Invented for demonstration. The power is what a grand is said to send out at forte, from memory.',
};
const FURNISHED: RoomDraft = {
  ...BARE, name: 'Drawing room, rug and lining (invented)',
  things: [...(BARE.things ?? []), { words: 'Rug on felt', face: of('carpet-on-felt'), areaM2: 9, on: 'floor' }, { words: 'Wooden lining on a frame', face: of('wooden-lining-on-frame'), areaM2: 16, on: 2 }],
};

/** The invented rooms of the demo grand, two choices beside each other. */
export const demoRooms = (): readonly DemoStep[] => [BARE, FURNISHED].map((draft): DemoStep => ({ kind: 'room', draft }));
