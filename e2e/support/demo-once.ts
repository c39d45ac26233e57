import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the data folder with the demo stands once a test file has asked for it. */
    readonly demoFolder: string;
  }
}

/** Gives all test files of a run one place for the data folder with the demo, and clears it away after them. */
export default async function demoOnce(project: TestProject): Promise<() => Promise<void>> {
  const place = await mkdtemp(path.join(tmpdir(), 'wrestplank-e2e-demo-'));
  project.provide('demoFolder', path.join(place, 'demo'));
  return () => rm(place, { recursive: true, force: true });
}
