import { type AnyOperation, runnableExample, soundFieldsOf } from '#operation';
import type { Samples } from '#numerics';
import { writeWav } from '#recording';

/** The example of an operation as it is sent in JSON: a recording as a WAV file in base64. */
export function httpExampleOf(operation: AnyOperation): Readonly<Record<string, unknown>> {
  const sounds = runnableExample(operation) as Readonly<Record<string, Samples>>;
  const files = soundFieldsOf(operation).map((name) => [name, Buffer.from(writeWav(sounds[name] as Samples)).toString('base64')] as const);
  return { ...(operation.example as object), ...Object.fromEntries(files) };
}
