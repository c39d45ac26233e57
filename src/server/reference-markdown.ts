import type { FieldRow } from '#operation';
import { sourceOf } from '#sources';
import type { Say } from '#text';
import { type OperationReference, type Reference, fieldCells } from './reference.ts';

/** Help of one command as the terminal shows it. */
export interface CommandHelp {
  readonly command: string;
  readonly text: string;
}

/** The reference as Markdown, for the docs folder. */
export function referenceMarkdown(reference: Reference, commands: readonly CommandHelp[], say: Say): string {
  const parts = [
    `# ${say('route.docsTitle')}`,
    say('route.api'),
    `## ${say('route.commands')}`,
    ...commands.map(({ command, text }) => `### \`${command}\`\n\n\`\`\`text\n${text.trim()}\n\`\`\``),
    `## ${say('route.calculations')}`,
    say('route.calc'),
    ...reference.operations.flatMap((operation) => operationParts(operation, say)),
    `## ${say('route.routes')}`,
    table([say('route.method'), say('route.path'), say('route.says')], reference.routes.map(({ method, path, says }) => [method, code(path), says])),
    `## ${say('route.problems')}`,
    say('route.problem'),
    table(['type', 'status', 'title'], reference.problems.map(({ kind, status, title }) => [code(`/api/docs#problem-${kind}`), String(status), title])),
  ];
  return `${parts.join('\n\n')}\n`;
}

function operationParts({ name, title, help, formula, sources, example, input, output }: OperationReference, say: Say): readonly string[] {
  return [
    `### \`${name}\``,
    `${title}. ${help}`,
    `\`\`\`text\n${formula.join('\n')}\n\`\`\``,
    `**${say('route.input')}**`,
    fieldTable(input, 'input', say),
    `**${say('route.output')}**`,
    fieldTable(output, 'output', say),
    `**${say('route.example')}**`,
    `\`\`\`sh\necho '${JSON.stringify(example)}' | wrestplank calc ${name} --json\n\`\`\``,
    `${say('route.sources')} ${sources.map((key) => `${sourceOf(key).title} [${key}]`).join('; ')}`,
  ];
}

function fieldTable(rows: readonly FieldRow[], side: 'input' | 'output', say: Say): string {
  const { heads, cells } = fieldCells(rows, side, say);
  return table(heads, cells.map(([name = '', ...rest]) => [code(name), ...rest]));
}

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.map((cell) => cell.replaceAll('|', '\\|').replaceAll('\n', ' ')).join(' | ')} |`;
  return [line(heads), line(heads.map(() => '---')), ...rows.map(line)].join('\n');
}

function code(text: string): string {
  return `\`${text}\``;
}
