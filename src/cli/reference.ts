import { operations } from '#catalogue';
import { referenceMarkdown, referenceOf } from '#server';
import { createSay } from '#text';
import { PROGRAM } from './language.ts';
import { commandNames, helpOf } from './program.ts';

/** The reference of the docs folder, in English: commands, calculations, routes and problems, all read off the code. */
export async function writtenReference(): Promise<string> {
  const say = createSay('en');
  const commands = [];
  for (const name of ['', ...commandNames]) commands.push({ command: `${PROGRAM} ${name}`.trim(), text: await helpOf(name === '' ? [] : [name]) });
  return referenceMarkdown(referenceOf(operations, (key) => (say.knows(key) ? say(key) : key)), commands, say);
}
