import { shipmentTitle } from '#report';
import { createSay } from '#text';
import { type RuleBook, type ShopCardDraft, judgeShipment, ruleBookOf, shipmentsOf } from '#workshop';
import type { BenchStore } from '#store';
import type { CommandModule, InferredOptionTypes } from 'yargs';
import { localeAsked } from '../document-file.ts';
import { refused } from '../failure.ts';
import { say } from '../language.ts';
import { readNamed } from '../named-file.ts';
import { aligned, note, print, printJson } from '../output.ts';
import { documentOptions } from '../prove-options.ts';
import { dataOption, findInstrument, whoOption, withStore, writerOf } from '../with-store.ts';

const options = {
  rules: { type: 'string', requiresArg: true, describe: say('cli.papers.rules') },
  lang: documentOptions.lang, json: documentOptions.json, ...dataOption, ...whoOption,
} as const;

type PapersArguments = InferredOptionTypes<typeof options> & { readonly instrument?: string };

/** `papers INSTRUMENT`: what the rules say of its shipments; `papers --rules FILE` takes in a newer file of rules first. */
export const papers: CommandModule<object, PapersArguments> = {
  command: 'papers [instrument]',
  describe: say('cli.papers'),
  builder: (yargs) => yargs.positional('instrument', { type: 'string', describe: say('cli.instrument') }).options(options),
  handler: async (given) => {
    const { instrument, rules } = given;
    if (instrument === undefined && rules === undefined) throw refused([{ code: 'required', path: 'instrument', given: undefined, allowed: 'an id or a name, or --rules' }], say('cli.papers.needed'));
    const file = rules === undefined ? undefined : await rulesNamed(rules);
    await withStore(given, async (store) => {
      if (file !== undefined) await takeIn(store, file, given);
      if (instrument !== undefined) await tell(store, instrument, given);
    });
  },
};

/** The JSON of a file; whether it is one of rules, the store says cell by cell. */
async function rulesNamed(name: string): Promise<unknown> {
  const bytes = await readNamed(name);
  if (!bytes.ok) throw refused(bytes.issues);
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes.value));
  } catch (error) {
    throw refused([{ code: 'format', path: '--rules', given: name, allowed: `JSON in UTF-8 (${error instanceof Error ? error.message : String(error)})` }]);
  }
}

async function takeIn(store: BenchStore, file: unknown, given: PapersArguments): Promise<void> {
  const { SHOP } = await import('#store');
  const kept = await store.addShopCard(SHOP, { kind: 'ruleFile', file } as ShopCardDraft, await writerOf(store, given.who));
  if (kept.kind === 'ruleFile') note(say('cli.papers.taken', { day: kept.file.issued, count: kept.file.rules.length }));
}

async function tell(store: BenchStore, named: string, { lang, json }: PapersArguments): Promise<void> {
  const locale = localeAsked(lang);
  const tongue = { say: createSay(locale), locale };
  const { id, name } = await findInstrument(store, named);
  const [piano, { cards }] = [await store.getPiano(id), await store.listShopCards()];
  const book: RuleBook = ruleBookOf(cards);
  const judged = shipmentsOf(cards, id).map((shipment) => judgeShipment(shipment, piano.papers, book));
  if (json) return printJson(judged.map(({ shipment: { person: _person, details: _details, ...shipment }, outcome, reasons, issued }) => ({ ...shipment, outcome, rulesIssued: issued, reasons: reasons.map(({ rule, ...reason }) => ({ ...reason, rule: rule?.id ?? null })) })));
  note(tongue.say('papers.caution'));
  if (judged.length === 0) note(say('cli.papers.noShipments', { name }));
  return print(aligned(judged.map(({ shipment, outcome }) => [tongue.say(`papers.outcome.${outcome}`), shipmentTitle(shipment, tongue)])));
}
