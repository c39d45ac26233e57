import type { Samples } from '#numerics';
import { type Issue, type Result, ok, refuse, under } from '#result';
import { z } from 'zod';
import { checkInput } from './check.ts';
import { fieldRowsOf, type JsonSchema } from './field-rows.ts';
import type { AnyOperation } from './operation.ts';

/** Media type by which the schema of a field says that a recording belongs there. */
export const SOUND_MEDIA_TYPE = 'audio/*';

const WHAT_IT_TAKES = 'A recording: WAV, FLAC, OGG Vorbis or MP3. At the command line the path of a file; over HTTP its bytes in base64, or a part of a form of several parts.';

/**
 * A field that takes a recording. `run` is given its samples; what a recording is before that differs by door
 * (a path, an upload, a file in the browser), and each door reads it by `fillSounds`.
 */
export function soundField(describe = ''): z.ZodType<Samples> {
  const schema = z.custom<Samples>(isSamples, { error: 'a recording', params: { kind: 'sound' } });
  const description = describe === '' ? WHAT_IT_TAKES : `${describe} ${WHAT_IT_TAKES}`;
  schema._zod.toJSONSchema = () => ({ type: 'string', contentMediaType: SOUND_MEDIA_TYPE, description });
  return schema;
}

/** Turns what stands in a sound field at one door into samples, or into what another place makes samples of; issues have paths below the field. */
export type ReadSound<T = Samples> = (given: unknown) => Promise<Result<T>>;

/** Names of the fields of an operation that take a recording, in their order. */
export function soundFieldsOf(operation: AnyOperation): readonly string[] {
  const known = namesByOperation.get(operation);
  if (known !== undefined) return known;
  const schema = z.toJSONSchema(operation.input, { io: 'input', unrepresentable: 'throw' }) as JsonSchema;
  const names = fieldRowsOf(schema).flatMap(({ path, kind }) => (kind === 'recording' ? [path] : []));
  namesByOperation.set(operation, names);
  return names;
}

const namesByOperation = new WeakMap<AnyOperation, readonly string[]>();

/**
 * One case with its recordings read. Where one cannot be read, what is wrong with the other fields is said in the same breath.
 * A field that is missing stays so, for the schema to speak about.
 */
export async function fillSounds(operation: AnyOperation, raw: unknown, read: ReadSound<unknown>): Promise<Result<unknown>> {
  const names = soundFieldsOf(operation);
  if (names.length === 0 || typeof raw !== 'object' || raw === null) return ok(raw);
  const filled: Record<string, unknown> = { ...raw };
  const issues: Issue[] = [];
  for (const name of names.filter((each) => filled[each] !== undefined)) {
    const sound = await read(filled[name]);
    if (sound.ok) filled[name] = isSamples(sound.value) ? new Sound(sound.value) : sound.value;
    else issues.push(...under(name, sound.issues));
  }
  if (issues.length === 0) return ok(filled);
  const others = checkInput<unknown>(operation.input, filled);
  return refuse(...issues, ...(others.ok ? [] : others.issues.filter(({ path }) => !names.includes(path))));
}

/** The example of an operation with the recording it names made up, ready to run. */
export function runnableExample(operation: AnyOperation): unknown {
  const { example, exampleSound } = operation;
  const names = soundFieldsOf(operation);
  if (names.length === 0) return example;
  if (exampleSound === undefined) throw new Error(`${operation.name} takes a recording and makes none for its example`);
  return { ...(example as object), ...Object.fromEntries(names.map((name) => [name, new Sound(exampleSound())])) };
}

/** Samples that print in a message as what they are, not as millions of figures. */
class Sound implements Samples {
  readonly sampleRateHz: number;
  readonly channels: readonly Float64Array[];

  constructor({ sampleRateHz, channels }: Samples) {
    this.sampleRateHz = sampleRateHz;
    this.channels = channels;
  }

  toJSON(): string {
    return `a recording of ${String(this.channels.length)} × ${String(this.channels[0]?.length ?? 0)} samples at ${String(this.sampleRateHz)} Hz`;
  }
}

function isSamples(value: unknown): value is Samples {
  if (typeof value !== 'object' || value === null || !('sampleRateHz' in value) || !('channels' in value)) return false;
  const { sampleRateHz, channels } = value;
  if (typeof sampleRateHz !== 'number' || !(sampleRateHz > 0) || !Number.isFinite(sampleRateHz) || !Array.isArray(channels)) return false;
  const [first] = channels as readonly unknown[];
  return first instanceof Float64Array && first.length > 0 && channels.every((one) => one instanceof Float64Array && one.length === first.length);
}
