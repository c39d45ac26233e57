/** Digits, decimal signs, sums and a trailing g: what may stand on either side of a pair. Fractions of an inch or ounce stay whole. */
const PART = /^[-+\u2212]?[\d.,'’]+(?:\+[\d.,'’]+)*g?$/iu;

/**
 * Splits what was typed for a key into figures: `49/26`, `49 26`, `49;26`, `49, 26`, `49 g / 26 g`; a single figure stays whole.
 * A comma before a space parts two figures; a comma before a digit is a decimal sign.
 */
export function splitFigures(typed: string): readonly string[] {
  const text = typed.trim();
  if (text === '') return [];
  const glued = text.replace(/\s+(?=g\b)/giu, '').replace(/\s*\+\s*/gu, '+');
  const parts = glued
    .split(/\s*[/;\t]\s*|\s*,\s+|\s+/u)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  return parts.length > 1 && parts.every((part) => PART.test(part)) ? parts : [text];
}
