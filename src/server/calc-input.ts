import { openCalcDesk } from '#files';
import { type AnyOperation, type ReadSound, type RunCase, fillSounds, readJson, soundFieldsOf } from '#operation';
import { type Issue, ok, refuse } from '#result';
import type { Context } from 'hono';
import { accepted } from './failure.ts';
import { isForm, readBody } from './read-body.ts';

/** The part of a form that holds the fields that are no recordings, as JSON. */
export const FIELDS_PART = 'input';

/** What a calculation is given over HTTP: JSON, or for one that takes a recording a form with the recording as a part of its own. */
export async function readCalcInput(context: Context, operation: AnyOperation): Promise<unknown> {
  return soundFieldsOf(operation).length > 0 && isForm(context) ? readForm(context, operation) : readBody(context);
}

async function readForm(context: Context, operation: AnyOperation): Promise<unknown> {
  const names = soundFieldsOf(operation);
  const form = await formOf(context);
  const given = form.get(FIELDS_PART);
  const fields = given === null ? {} : accepted(readJson(typeof given === 'string' ? given : await given.text()), 'malformed');
  if (typeof fields !== 'object' || fields === null || Array.isArray(fields)) accepted(refuse({ code: 'type', path: FIELDS_PART, given: fields, allowed: 'a group of fields', params: { kind: 'object' } }));
  const strangers = [...form.keys()].filter((name) => name !== FIELDS_PART && !names.includes(name));
  if (strangers.length > 0) accepted(refuse(...strangers.map((path): Issue => ({ code: 'unknown', path, given: 'a part of the form', allowed: `the parts ${[FIELDS_PART, ...names].join(', ')}` }))));
  const files = names.flatMap((name) => { const part = form.get(name); return part === null ? [] : [[name, part] as const]; });
  return { ...(fields as object), ...Object.fromEntries(files) };
}

async function formOf(context: Context): Promise<FormData> {
  try {
    return await context.req.raw.formData();
  } catch {
    return accepted(refuse({ code: 'format', path: '', given: 'a body that does not hold what its header announces', allowed: 'multipart/form-data (RFC 7578)' }), 'malformed');
  }
}

/** One thread for all that is asked: a second recording waits, so that memory holds one. */
const desk = openCalcDesk({ threads: 1, mostMs: 120_000 });

/** Runs cases with recordings in a thread: the server answers others meanwhile, and after a decoder that failed or hung. */
export function runInThread(operation: AnyOperation): RunCase {
  return async (raw) => {
    const filled = await fillSounds(operation, raw, uploadedBytes);
    return filled.ok ? desk.run(operation.name, filled.value) : filled;
  };
}

/** A recording over HTTP: a part of a form, or bytes in base64. */
const uploadedBytes: ReadSound<unknown> = async (given) => {
  if (given instanceof Blob) return ok(new Uint8Array(await given.arrayBuffer()));
  if (typeof given !== 'string') return refuse({ code: 'type', path: '', given, allowed: 'a recording', params: { kind: 'sound' } });
  if (!/^[A-Za-z\d+/]+={0,2}\s*$/u.test(given)) return refuse({ code: 'format', path: '', given, allowed: 'base64 (RFC 4648)', params: { reason: 'recordingBase64' } });
  return ok(new Uint8Array(Buffer.from(given, 'base64')));
};
