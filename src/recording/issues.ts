import { type Issue, type Result, refuse } from '#result';

/** What is wrong inside a recording, by the reason under which the message catalogue knows it. */
type Fault =
  | 'recordingKind'
  | 'recordingCodec'
  | 'recordingHeader'
  | 'recordingCut'
  | 'recordingDamaged'
  | 'recordingValue'
  | 'recordingChanges';

/** Refuses a recording: what was found in it, and what may stand there instead. */
export function refuseFile(reason: Fault, given: string | number, allowed: string, path = '', params: Issue['params'] = {}): Result<never> {
  return refuse({ code: 'format', path, given, allowed, params: { ...params, reason } });
}

/** Refuses a file that ends before its own end: seconds that can be read, of those its header announces where it does. */
export function refuseCut(hasS: number, saysS?: number): Result<never> {
  const has = rounded(hasS);
  const says = saysS === undefined ? 'none' : String(rounded(saysS));
  return refuseFile('recordingCut', saysS === undefined ? `${String(has)} s` : `${String(has)} s of ${says} s`, 'a whole file', 'durationS', { has, says });
}

/** Refuses a file whose content is damaged, naming the second at which it can no longer be read. */
export function refuseDamaged(atS: number, what: string): Result<never> {
  return refuseFile('recordingDamaged', what, 'a file without damage', '', { at: rounded(atS) });
}

/** Refuses a header that contradicts itself or is no header: the field, what stands there, what may stand there. */
export function refuseHeader(field: string, given: string | number, allowed: string): Result<never> {
  return refuseFile('recordingHeader', given, allowed, `header.${field}`, { field });
}

const rounded = (seconds: number): number => Math.round(seconds * 1000) / 1000;
