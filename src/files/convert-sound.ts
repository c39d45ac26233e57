import { spawn } from 'node:child_process';
import { type Issue, type Result, ok, refuse } from '#result';

export interface ConvertLimits {
  readonly mostBytes: number;
  readonly mostMs: number;
  /** The converter, where it is not the one found by its name. */
  readonly command?: string;
}

/**
 * Sound of a file this program reads none of itself, such as M4A, as WAV in 32-bit floating point, by an installed ffmpeg.
 * Where none is installed, or it makes nothing of the file, or too much, or takes too long, the issue says so.
 */
export function convertSound(file: string, { mostBytes, mostMs, command = 'ffmpeg' }: ConvertLimits): Promise<Result<Uint8Array>> {
  return new Promise((resolve) => {
    const words = ['-v', 'error', '-nostdin', '-protocol_whitelist', 'file,pipe', '-i', `file:${file}`, '-map', '0:a:0', '-c:a', 'pcm_f32le', '-f', 'wav', 'pipe:1'];
    const child = spawn(command, words, { stdio: ['ignore', 'pipe', 'pipe'], windowsHide: true });
    const pieces: Buffer[] = [];
    let byteCount = 0;
    let complaint = '';
    const done = (result: Result<Uint8Array>): void => {
      clearTimeout(late);
      child.kill('SIGKILL');
      resolve(result);
    };
    const late = setTimeout(() => { done(refuse(convertIssue('recordingConvertSlow', `${String(mostMs / 1000)} s`, 'a file that ffmpeg reads in that time'))); }, mostMs);
    child.once('error', (error: NodeJS.ErrnoException) => { done(refuse(convertIssue(error.code === 'ENOENT' ? 'recordingConverter' : 'recordingConvert', error.code ?? error.message, 'an installed ffmpeg'))); });
    child.stdout.on('data', (piece: Buffer) => {
      byteCount += piece.byteLength;
      if (byteCount > mostBytes) done(refuse(convertIssue('recordingConvertLarge', `more than ${String(mostBytes / 1_000_000)} MB once unpacked`, `at most ${String(mostBytes / 1_000_000)} MB`)));
      else pieces.push(piece);
    });
    child.stderr.on('data', (piece: Buffer) => { complaint = (complaint + piece.toString('utf8')).slice(0, 300); });
    child.once('close', (code) => { done(code === 0 && byteCount > 0 ? ok(new Uint8Array(Buffer.concat(pieces))) : refuse(convertIssue('recordingConvert', complaint.trim().split('\n')[0] ?? `exit code ${String(code)}`, 'a file that ffmpeg reads'))); });
  });
}

function convertIssue(reason: string, given: string, allowed: string): Issue {
  return { code: 'format', path: '', given, allowed, params: { reason } };
}
