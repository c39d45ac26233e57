import type { KeptRecording } from '#instrument';
import { ApiProblem } from '../../api/problem.ts';

interface Sending {
  /** 0 to 1. */
  readonly onProgress: (progress: number) => void;
  readonly signal: AbortSignal;
}

/** Sends the bytes of a sound file to be kept whole, saying how far it has come. @throws ApiProblem, or what the signal was given. */
export async function sendSound(bytes: Blob, { onProgress, signal }: Sending): Promise<KeptRecording> {
  return await new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', '/api/recordings');
    request.setRequestHeader('content-type', 'application/octet-stream');
    request.setRequestHeader('accept', 'application/json');
    request.upload.addEventListener('progress', ({ loaded, total }) => { onProgress(total === 0 ? 0 : loaded / total); });
    request.addEventListener('load', () => {
      if (request.status === 200) resolve(JSON.parse(request.responseText) as KeptRecording);
      else reject(problemOfText(request.status, request.responseText));
    });
    request.addEventListener('error', () => { reject(new ApiProblem({ status: 0, title: 'no answer' })); });
    request.addEventListener('abort', () => { reject(signal.reason as Error); });
    signal.addEventListener('abort', () => { request.abort(); });
    request.send(bytes);
  });
}

function problemOfText(status: number, text: string): ApiProblem {
  try {
    return new ApiProblem({ ...(JSON.parse(text) as object), status });
  } catch {
    return new ApiProblem({ status, title: text.slice(0, 300) });
  }
}

/** Where a kept sound file is heard from: its address is the hash of its bytes. */
export const soundAddress = (hash: string): string => `/api/recordings/${hash}`;
