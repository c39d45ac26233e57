import { type Celsius, type CubicMetres, type Hertz, type Millimetres, type Seconds, cubicMetres, hertz, millimetres } from '#units';

/** A rectangular room. */
export interface Shoebox {
  readonly lengthMm: Millimetres;
  readonly widthMm: Millimetres;
  readonly heightMm: Millimetres;
}

/** Half waves along length, width and height. */
export type ModeOrder = readonly [length: number, width: number, height: number];

/** Standing waves by how many pairs of walls they run between. */
export const modeKinds = ['axial', 'tangential', 'oblique'] as const;
export type ModeKind = (typeof modeKinds)[number];

export interface RoomMode {
  readonly frequencyHz: Hertz;
  readonly order: ModeOrder;
  /** Between two, four or six walls. */
  readonly kind: ModeKind;
}

/** Speed of sound in air: 331.3·√(1 + t/273.15). Metres a second. @source SPEED-OF-SOUND */
export const speedOfSoundMPerS = (temperatureC: Celsius): number => 331.3 * Math.sqrt(1 + temperatureC / 273.15);

/** Cubic metres. */
export const volumeOf = ({ lengthMm, widthMm, heightMm }: Shoebox): CubicMetres => cubicMetres((lengthMm / 1000) * (widthMm / 1000) * (heightMm / 1000));

/** How many modes a room has up to a frequency, roughly: 4πV f³/(3c³) and what walls and edges add. @source BOLT-1939 */
export function modeCountOf(room: Shoebox, temperatureC: Celsius, upToHz: Hertz): number {
  const [l, w, h] = [room.lengthMm / 1000, room.widthMm / 1000, room.heightMm / 1000];
  const wave = upToHz / speedOfSoundMPerS(temperatureC);
  return (4 * Math.PI * l * w * h * wave ** 3) / 3 + (Math.PI * (l * w + w * h + h * l) * wave ** 2) / 2 + ((l + w + h) * wave) / 2;
}

/** Standing waves of a room with hard walls: f = (c/2)·√((n_x/L)² + (n_y/W)² + (n_z/H)²), lowest first. Hertz. @source RAYLEIGH-1896 */
export function roomModesOf(room: Shoebox, temperatureC: Celsius, upToHz: Hertz): readonly RoomMode[] {
  const half = speedOfSoundMPerS(temperatureC) / 2;
  const steps = [room.lengthMm, room.widthMm, room.heightMm].map((side) => half / (side / 1000)) as [number, number, number];
  const counts = steps.map((step) => Math.floor(upToHz / step));
  const modes: RoomMode[] = [];
  for (let x = 0; x <= (counts[0] ?? 0); x += 1) for (let y = 0; y <= (counts[1] ?? 0); y += 1) for (let z = 0; z <= (counts[2] ?? 0); z += 1) {
    const frequency = Math.hypot(x * steps[0], y * steps[1], z * steps[2]);
    if (frequency > 0 && frequency <= upToHz) modes.push({ frequencyHz: hertz(frequency), order: [x, y, z], kind: kindOf([x, y, z]) });
  }
  return modes.sort((a, b) => a.frequencyHz - b.frequencyHz);
}

/** Walls so near that no wave heard stands between them. */
const NEAR_MM = millimetres(1);
const sides = ['lengthMm', 'widthMm', 'heightMm'] as const;

/** What notes are held against: all standing waves up to one frequency, and up to another those between two walls alone, by which partials are held. Lowest first. @source RAYLEIGH-1896 */
export function notingModesOf(room: Shoebox, temperatureC: Celsius, { allToHz, axialToHz }: { readonly allToHz: Hertz; readonly axialToHz: Hertz }): readonly RoomMode[] {
  const others = roomModesOf(room, temperatureC, allToHz).filter(({ kind }) => kind !== 'axial');
  const axial = sides.flatMap((side) => roomModesOf({ lengthMm: NEAR_MM, widthMm: NEAR_MM, heightMm: NEAR_MM, [side]: room[side] }, temperatureC, axialToHz));
  return [...others, ...axial].sort((a, b) => a.frequencyHz - b.frequencyHz);
}

const kindOf = (order: ModeOrder): ModeKind => modeKinds[order.filter((n) => n > 0).length - 1] ?? 'oblique';

/** Above it modes overlap so far that none is heard alone: 2000·√(T/V). Hertz. @source SCHROEDER-1962 */
export const schroederOf = (volumeM3: CubicMetres, reverberation: Seconds): Hertz => hertz(2000 * Math.sqrt(reverberation / volumeM3));

/** How broad a mode rings, at half its energy: 2.2/T. Hertz. @source KUTTRUFF */
export const modeWidthOf = (reverberation: Seconds): Hertz => hertz(2.2 / reverberation);
