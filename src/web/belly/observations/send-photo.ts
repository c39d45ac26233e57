import { PHOTO_LIMIT_BYTES, type Photo, photoTypes } from '#instrument';
import { ApiProblem, problemOf } from '../../api/problem.ts';
import { type Shrunk, shrunkTo } from './shrink-photo.ts';

/** A photo that was kept, and what was done to it to make it fit. */
export interface SentPhoto {
  readonly photo: Photo;
  readonly shrunk?: Shrunk;
}

/** Keeps a photo on the server as it is; only one over the limit is made smaller first. @throws ApiProblem, or Error with a word key for a file that is no photo. */
export async function sendPhoto(file: File): Promise<SentPhoto> {
  if (!photoTypes.some((type) => type === file.type)) throw new NoPhoto(file.name, file.type);
  const shrunk = file.size > PHOTO_LIMIT_BYTES ? await shrunkTo(file, PHOTO_LIMIT_BYTES) : undefined;
  const { hash } = await keep(shrunk?.blob ?? file);
  return { photo: { hash, name: file.name.slice(0, 255) }, ...(shrunk === undefined ? {} : { shrunk }) };
}

/** A file that is no photo of a kind that is kept. */
export class NoPhoto extends Error {
  readonly type: string;
  constructor(name: string, type: string) {
    super(name);
    this.name = 'NoPhoto';
    this.type = type;
  }
}

/** Where a photo is shown from: its address is the hash of its bytes. */
export const photoAddress = ({ hash }: Pick<Photo, 'hash'>): string => `/api/photos/${hash}`;

async function keep(blob: Blob): Promise<{ readonly hash: string }> {
  const response = await fetch('/api/photos', { method: 'POST', headers: { accept: 'application/json', 'content-type': blob.type }, body: blob }).catch((cause: unknown) => {
    throw new ApiProblem({ status: 0, title: 'no answer', detail: cause instanceof Error ? cause.message : String(cause) });
  });
  if (!response.ok) throw await problemOf(response);
  return (await response.json()) as { readonly hash: string };
}
