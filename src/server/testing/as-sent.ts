import type { AnyOperation } from '#operation';
import { writeWav } from '#recording';

/** The example of a calculation as it goes over HTTP: a recording as its bytes in base64. */
export function asSent({ example, exampleSound }: Pick<AnyOperation, 'example' | 'exampleSound'>): object {
  return exampleSound === undefined ? (example as object) : { ...(example as object), file: Buffer.from(writeWav(exampleSound())).toString('base64') };
}
