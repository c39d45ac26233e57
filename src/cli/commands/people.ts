import type { CardOf } from '#workshop';
import type { CommandModule } from 'yargs';
import { refused } from '../failure.ts';
import { PROGRAM, say } from '../language.ts';
import { aligned, note, print, printJson } from '../output.ts';
import { dataOption, whoOption, withStore, writerOf } from '../with-store.ts';

type Contact = CardOf<'contact'>;

interface PeopleArguments {
  readonly action: string;
  readonly person?: string;
  readonly data?: string;
  readonly who?: string;
  readonly json: boolean;
}

/** `people`, `people export PERSON`, `people forget PERSON`: who is in the book of the shop, and what is held of one. */
export const people: CommandModule<object, PeopleArguments> = {
  command: 'people [action] [person]',
  describe: say('cli.people'),
  builder: (yargs) =>
    yargs
      .positional('action', { choices: ['list', 'export', 'forget'] as const, default: 'list' as const, describe: say('cli.people.action') })
      .positional('person', { type: 'string', describe: say('cli.people.person') })
      .options({ ...dataOption, ...whoOption })
      .option('json', { type: 'boolean', default: false, describe: say('cli.json') }),
  handler: (given) =>
    withStore(given, async (store) => {
      const contacts = (await store.listShopCards()).cards.filter((card): card is Contact => card.kind === 'contact' && card.details !== null);
      if (given.action === 'list') return list(contacts, given.json);
      const contact = find(contacts, given.person);
      if (given.action === 'export') return printJson(await store.exportPerson(contact.id));
      await store.erasePerson(contact.id, await writerOf(store, given.who));
      note(say('cli.people.forgotten', { name: contact.details?.name ?? '' }));
      return given.json ? printJson({ forgotten: contact.id }) : undefined;
    }),
};

async function list(contacts: readonly Contact[], asJson: boolean): Promise<void> {
  if (asJson) return printJson(contacts);
  if (contacts.length === 0) note(say('cli.people.none'));
  return print(aligned(contacts.map(({ id, details, roles, workshopId }) => [
    id, details?.name ?? '', roles.map((role) => say(`shop.role.${role}`)).join(', '), workshopId === 'demo' ? say('cli.pianos.demo') : '',
  ])));
}

/** The person named: by id, by the beginning of an id, or by the exact name. */
function find(contacts: readonly Contact[], named: string | undefined): Contact {
  if (named === undefined) throw refused([{ code: 'required', path: 'person', given: undefined, allowed: 'an id or a name' }], say('cli.people.needed'));
  const fitting = contacts.filter(({ id, details }) => id === named || details?.name === named || (named.length >= 4 && id.startsWith(named)));
  const [found] = fitting;
  if (found !== undefined && fitting.length === 1) return found;
  if (found === undefined) throw refused([], say('cli.people.unknown', { name: named, program: PROGRAM }), 'notFound');
  throw refused([], say('cli.people.several', { name: named, names: fitting.map(({ id, details }) => `${details?.name ?? ''} (${id})`).join(', ') }));
}
