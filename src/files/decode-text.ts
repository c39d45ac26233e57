import { type Result, ok, refuse } from '#result';

export type TextEncoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

export interface DecodedText {
  readonly encoding: TextEncoding;
  readonly text: string;
}

/**
 * Text of a file whose encoding nobody told: the byte order mark decides; without one UTF-16 is known by its zero bytes, UTF-8 by
 * being valid, and what is left is read as windows-1252, the old encoding of spreadsheets. The mark is no part of the text.
 * Errors: zero bytes within the text, which no table has.
 */
export function decodeText(bytes: Uint8Array): Result<DecodedText> {
  const encoding = encodingOf(bytes);
  const text = encoding === 'windows-1252' ? decodeWindows1252(bytes) : new TextDecoder(encoding).decode(bytes);
  if (text.includes('\0')) return refuse({ code: 'format', path: 'file', given: `${encoding} text with zero bytes`, allowed: 'a table as CSV, TSV or XLSX', params: { reason: 'importBinary' } });
  return ok({ encoding, text });
}

/** Signs of the bytes 0x80 to 0x9F. @source WHATWG Encoding Standard, index windows-1252 */
const WINDOWS_1252 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008DŽ\u008F\u0090‘’“”•–—˜™š›œ\u009DžŸ';

/** Decoded here because Node 20 takes windows-1252 for ISO 8859-1 and makes control signs of its quotes and dashes. */
function decodeWindows1252(bytes: Uint8Array): string {
  return new TextDecoder('latin1').decode(bytes).replace(/[\u0080-\u009F]/gu, (control) => WINDOWS_1252[control.charCodeAt(0) - 0x80] ?? control);
}

function encodingOf(bytes: Uint8Array): TextEncoding {
  const [first, second, third, fourth] = bytes;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  if (bytes.length >= 4 && bytes.length % 2 === 0) {
    if (first !== 0 && second === 0 && third !== 0 && fourth === 0) return 'utf-16le';
    if (first === 0 && second !== 0 && third === 0 && fourth !== 0) return 'utf-16be';
  }
  return isUtf8(bytes) ? 'utf-8' : 'windows-1252';
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}
