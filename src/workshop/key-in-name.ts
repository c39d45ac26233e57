import { type Compass, keyCountOf, keyOfNote } from '#instrument';

/** The key a file name speaks of, if it plainly names one: `C#4.wav`, `A0 loud.wav`, `key 40.wav`, `040.wav`. */
export function keyInName(fileName: string, compass: Compass): number | undefined {
  const name = fileName.replace(/\.\w{2,4}$/u, '');
  const [, letter, sign = '', octave] = /(?:^|[^\p{L}\d])([A-Ga-g])([#♯s]?)(-?\d)(?![\d])/u.exec(name) ?? [];
  if (letter !== undefined && octave !== undefined) return keyOfNote(compass, `${letter.toUpperCase()}${sign === '' ? '' : '♯'}${octave}`);
  const [, number] = /^(?:key[ _-]?)?0*(\d{1,3})(?:$|[^\d])/iu.exec(name) ?? [];
  const key = Number(number);
  return number !== undefined && key >= 1 && key <= keyCountOf(compass) ? key : undefined;
}
