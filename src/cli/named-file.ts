import { type FileHandle, open } from 'node:fs/promises';
import path from 'node:path';
import { buffer } from 'node:stream/consumers';
import { MAX_FILE_BYTES, fileTooLarge } from '#files';
import { type Issue, type Result, ok, refuse } from '#result';

interface SizeLimit {
  readonly max: number;
  readonly issue: (byteCount: number) => Issue;
}

const TABLE_LIMIT: SizeLimit = { max: MAX_FILE_BYTES, issue: fileTooLarge };

/** The bytes of a file named on the command line, or in words why there are none: missing, a folder, not to be read, too large. */
export async function readNamed(name: string, { max, issue }: SizeLimit = TABLE_LIMIT): Promise<Result<Uint8Array>> {
  let file: FileHandle | undefined;
  try {
    file = await open(name);
    const stat = await file.stat();
    if (stat.isDirectory()) return refuse(fileIssue(name, 'EISDIR', 'read'));
    if (stat.size > max) return refuse({ ...issue(stat.size), path: name });
    return ok(new Uint8Array(await buffer(file.createReadStream({ end: max, autoClose: false }))));
  } catch (error) {
    return refuse(fileIssue(name, error, 'read'));
  } finally {
    await file?.close();
  }
}

type Doing = 'read' | 'write';

const REASONS: Readonly<Record<string, Readonly<Record<Doing, string>>>> = {
  ENOENT: { read: 'fileMissing', write: 'fileNoFolder' },
  ENOTDIR: { read: 'fileMissing', write: 'fileNoFolder' },
  EISDIR: { read: 'fileFolder', write: 'fileFolder' },
  ENOTEMPTY: { read: 'fileFolder', write: 'fileFolder' },
  EACCES: { read: 'fileForbidden', write: 'fileForbidden' },
  EPERM: { read: 'fileForbidden', write: 'fileForbidden' },
  EROFS: { read: 'fileForbidden', write: 'fileForbidden' },
  ENOSPC: { read: 'fileTrouble', write: 'fileFull' },
};

/** What stood in the way of a file, as an issue that names it; `error` is the system's own, or its code. */
export function fileIssue(name: string, error: unknown, doing: Doing, at = name): Issue {
  const code = typeof error === 'string' ? error : error instanceof Error && 'code' in error ? String(error.code) : String(error);
  const allowed = doing === 'read' ? 'a file that can be read' : 'a file that can be written, in a folder that exists';
  return { code: 'format', path: at, given: code, allowed, params: { reason: REASONS[code]?.[doing] ?? 'fileTrouble', doing, file: name } };
}

/** True when two names on the command line are the same file. */
export function isSameFile(one: string, other: string): boolean {
  return path.resolve(one) === path.resolve(other);
}
