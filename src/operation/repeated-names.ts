import type { Issue } from '#result';

/** An object or array that is still open: the names seen in it, or the place reached. */
interface Open {
  readonly path: string;
  readonly names?: Set<string>;
  index: number;
  /** The name whose value comes next; undefined while a name is expected. */
  name: string | undefined;
}

/**
 * Names that stand twice in one object of JSON text, each as an issue at its place, such as `[3].downWeightG`.
 * A parser keeps the last of them in silence; whoever typed the first would never know. The text must be whole JSON.
 */
export function repeatedNamesIn(text: string): readonly Issue[] {
  const issues: Issue[] = [];
  const open: Open[] = [];
  for (let at = 0; at < text.length; at += 1) {
    const inside = open.at(-1);
    switch (text[at]) {
      case '{':
        open.push({ path: pathOf(inside), names: new Set(), index: 0, name: undefined });
        break;
      case '[':
        open.push({ path: pathOf(inside), index: 0, name: undefined });
        break;
      case '}':
      case ']':
        open.pop();
        break;
      case ',':
        if (inside !== undefined) Object.assign(inside, { index: inside.index + 1, name: undefined });
        break;
      case '"': {
        const end = endOfString(text, at);
        if (inside?.names !== undefined && inside.name === undefined) take(inside, JSON.parse(text.slice(at, end + 1)) as string, issues);
        at = end;
        break;
      }
      default:
    }
  }
  return issues;
}

function take(object: Open, name: string, issues: Issue[]): void {
  object.name = name;
  if (object.names?.has(name) === true) issues.push({ code: 'duplicate', path: pathOf(object), given: name, allowed: 'each name once in an object', params: { reason: 'jsonName' } });
  object.names?.add(name);
}

function pathOf(inside: Open | undefined): string {
  if (inside === undefined) return '';
  if (inside.names === undefined) return `${inside.path}[${String(inside.index)}]`;
  return inside.path === '' ? (inside.name ?? '') : `${inside.path}.${inside.name ?? ''}`;
}

/** Place of the quote that closes the string opened at `from`. */
function endOfString(text: string, from: number): number {
  let at = from + 1;
  while (at < text.length && text[at] !== '"') at += text[at] === '\\' ? 2 : 1;
  return at;
}
