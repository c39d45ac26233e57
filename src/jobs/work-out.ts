import type { Result } from '#result';
import { refuse } from '#result';
import type { ToThread } from './messages.ts';

export function workOut(_given: ToThread, _onProgress: (progress: number) => void): Promise<Result<unknown>> {
  return Promise.resolve(refuse({ code: 'unknown', path: 'file', given: '', allowed: '' }));
}
