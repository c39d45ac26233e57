import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const LEFT_OUT = /(^|\/)(web|testing)\/|\.test\.tsx?$|\.d\.ts$/u;

interface Pair {
  readonly source: string;
  readonly target: string;
}

/**
 * Writes the built form of every source file that is newer than it, without type checks, as the build does.
 * Node 20 runs no TypeScript in threads and child processes, so tests that start those need it.
 * It is vitest's global setup; two runs at once write the same bytes, each file whole.
 */
export default async function emitBuilt(): Promise<void> {
  const stale = pairs().filter(({ source, target }) => !existsSync(target) || statSync(target).mtimeMs <= statSync(source).mtimeMs);
  if (stale.length > 0) await emit(stale);
  cpSync(join(root, 'src/store/migrations'), join(root, 'dist/store/migrations'), { recursive: true });
}

function pairs(): readonly Pair[] {
  const names = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' }).map((name) => name.replaceAll('\\', '/'));
  return names.filter((name) => /\.tsx?$/u.test(name) && !LEFT_OUT.test(name))
    .map((name) => ({ source: join(root, 'src', name), target: join(root, 'dist', name.replace(/\.tsx?$/u, '.js')) }));
}

async function emit(stale: readonly Pair[]): Promise<void> {
  const { default: ts } = await import('typescript');
  const { options } = ts.parseJsonConfigFileContent(ts.readConfigFile(join(root, 'tsconfig.build.json'), (path) => ts.sys.readFile(path)).config, ts.sys, root);
  const compilerOptions = { ...options, module: ts.ModuleKind.ESNext, sourceMap: false };
  for (const { source, target } of stale) {
    const { outputText } = ts.transpileModule(readFileSync(source, 'utf8'), { compilerOptions, fileName: source });
    mkdirSync(dirname(target), { recursive: true });
    const whole = `${target}.${String(process.pid)}`;
    writeFileSync(whole, outputText);
    renameSync(whole, target);
  }
}
