import { type Compass, keyCountOf, keyOfNote } from '#instrument';

/** A key as typed: its number or its note. */
export function keyTyped(typed: string, compass: Compass): number | undefined {
  const text = typed.trim();
  if (!/^\d+$/u.test(text)) return keyOfNote(compass, text);
  const key = Number(text);
  return key >= 1 && key <= keyCountOf(compass) ? key : undefined;
}
