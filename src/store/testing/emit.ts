import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const LEFT_OUT = /(^|\/)(web|testing)\/|\.test\.tsx?$/u;

/**
 * Writes the built form of every source file that is newer than it, without type checks, as the build does.
 * Node 20 runs no TypeScript in threads and child processes, so tests that start those call this first.
 * Runs as vitest's global setup; two runs at once write the same bytes, each file whole.
 */
export function emitBuilt(): void {
  const { options } = ts.parseJsonConfigFileContent(ts.readConfigFile(join(root, 'tsconfig.build.json'), ts.sys.readFile).config, ts.sys, root);
  const sources = readdirSync(join(root, 'src'), { recursive: true, encoding: 'utf8' }).map((path) => path.replaceAll('\\', '/'));
  for (const path of sources.filter((name) => /\.tsx?$/u.test(name) && !name.endsWith('.d.ts') && !LEFT_OUT.test(name))) {
    const source = join(root, 'src', path);
    const target = join(root, 'dist', path.replace(/\.tsx?$/u, '.js'));
    if (existsSync(target) && statSync(target).mtimeMs > statSync(source).mtimeMs) continue;
    const { outputText } = ts.transpileModule(readFileSync(source, 'utf8'), { compilerOptions: { ...options, module: ts.ModuleKind.ESNext, sourceMap: false }, fileName: source });
    mkdirSync(dirname(target), { recursive: true });
    const whole = `${target}.${String(process.pid)}`;
    writeFileSync(whole, outputText);
    renameSync(whole, target);
  }
  cpSync(join(root, 'src/store/migrations'), join(root, 'dist/store/migrations'), { recursive: true });
}

export default emitBuilt;
