import type { Condition } from './condition.ts';
import type { PaperRule, PaperRuleFile } from './rule.ts';

const CHECKED = { lastChecked: '2026-11-25', reviewBy: '2027-05-25' } as const;
const dealing = ['sell', 'buy', 'hire', 'offer', 'keep-for-sale', 'export-sold', 'import-sold'] as const;
const kingdom = ['GB', 'NI'] as const;
const inBoth = (words: string): { readonly en: string; readonly de: string } => ({ en: words, de: words });
const unionAuthority = { en: 'The national management authority of the convention', de: 'Die nationale Vollzugsbehörde der Konvention' };
const before1975 = { fact: 'yearMade', below: 1975 } as const;

/** More than half. */
const OVER_HALF = 50.000001;
const smallShare: Condition = { all: [
  { fact: 'ivoryMassG', below: 200 }, { not: { fact: 'ivoryMassHow', is: 'estimated' } }, { fact: 'yearMade', below: 2016 }, { fact: 'ivoryRaw', is: false }, { fact: 'ivoryFixed', is: true },
  { not: { fact: 'ivoryVolPct', atLeast: OVER_HALF } }, { not: { fact: 'ivoryShareOfValuePct', atLeast: OVER_HALF } },
  { any: [{ fact: 'importedToUSBefore1990', is: true }, { fact: 'preConventionCertificate', is: true }, { fact: 'takenFromWildBefore1976', is: true }] },
] };
const antique: Condition = { all: [{ fact: 'ageYears', atLeast: 100 }, { fact: 'repairedWithListedSpeciesSince1973', is: false }] };

const rules: readonly PaperRule[] = [
  {
    id: 'uk-ivory-ban', jurisdictions: [...kingdom], deeds: [...dealing], materials: ['ivory:elephant', 'ivory:hippopotamus', 'ivory:killer-whale', 'ivory:narwhal', 'ivory:sperm-whale'],
    when: { any: [{ fact: 'yearMade', atLeast: 1975 }, { fact: 'ivoryVolPct', atLeast: 20 }] }, outcome: 'prohibited', papers: [],
    text: { en: 'Dealing in ivory is barred unless an exemption holds; the one for instruments ends with those made from 1975 on, and with a fifth of ivory by volume.', de: 'Der Handel mit Elfenbein ist verboten, solange keine Ausnahme greift; die für Instrumente endet mit dem Baujahr 1975 und bei einem Fünftel Elfenbein nach Volumen.' },
    source: 'Ivory Act 2018, sections 1, 8 and 37; SI 2025/9', effectiveFrom: '2022-06-06', seen: 'read', authority: inBoth('APHA'), ...CHECKED,
  },
  {
    id: 'uk-ivory-register', jurisdictions: [...kingdom], deeds: [...dealing], materials: ['ivory:elephant', 'ivory:hippopotamus', 'ivory:killer-whale', 'ivory:narwhal', 'ivory:sperm-whale'],
    when: { all: [before1975, { not: { fact: 'ivoryVolPct', atLeast: 20 } }] }, outcome: 'papers',
    papers: [{ en: 'Registration under the Ivory Act before the piano is offered; again for each new dealing', de: 'Registrierung nach dem Ivory Act, bevor das Instrument angeboten wird; für jeden weiteren Handel erneut' }],
    text: { en: 'An instrument made before 1975 with less than a fifth of ivory by volume may be registered as exempt.', de: 'Ein vor 1975 gebautes Instrument mit weniger als einem Fünftel Elfenbein nach Volumen kann als Ausnahme registriert werden.' },
    source: 'Ivory Act 2018, sections 8 and 10', effectiveFrom: '2022-06-06', seen: 'read', authority: inBoth('APHA'), ...CHECKED,
  },
  {
    id: 'uk-article-10', jurisdictions: ['GB'], deeds: ['sell', 'offer'], materials: ['appendix-I'],
    when: { not: { all: [{ fact: 'yearMade', below: 1947 }, { fact: 'ivoryRaw', is: false }] } }, outcome: 'papers',
    papers: [{ en: 'Article 10 certificate, beside any registration', de: 'Bescheinigung nach Artikel 10, neben einer Registrierung' }],
    text: { en: 'Selling a specimen of the strictest list asks for a certificate unless it was worked before 3 March 1947.', de: 'Der Verkauf eines Exemplars der strengsten Liste braucht eine Bescheinigung, außer es wurde vor dem 3. März 1947 verarbeitet.' },
    source: 'Retained Regulation 338/97, article 8', effectiveFrom: '1997-06-01', seen: 'second-hand', authority: inBoth('APHA'), ...CHECKED,
  },
  {
    id: 'eu-ivory-within', jurisdictions: ['EU'], deeds: ['sell', 'buy', 'offer', 'move-sold'], materials: ['ivory:elephant'],
    when: before1975, outcome: 'papers', otherwise: 'prohibited',
    papers: [{ en: 'Certificate of the member state, also for antiques from before 1947; older certificates lapsed on 19 January 2023', de: 'Bescheinigung des Mitgliedstaats, auch für Antiquitäten von vor 1947; ältere Bescheinigungen sind seit 19. Januar 2023 erloschen' }],
    text: { en: 'Inside the union worked ivory may change hands only in instruments from before 1975 and in antiques from before 1947, each with a certificate. What only decorates is not covered.', de: 'Innerhalb der Union darf verarbeitetes Elfenbein nur in Instrumenten von vor 1975 und in Antiquitäten von vor 1947 gehandelt werden, jeweils mit Bescheinigung. Bloßer Zierrat fällt nicht darunter.' },
    source: 'Regulation 865/2006 as changed by 2021/2280; Notice 2021/C 528/03', effectiveFrom: '2022-01-19', seen: 'second-hand', authority: unionAuthority, ...CHECKED,
  },
  {
    id: 'eu-ivory-across', jurisdictions: ['EU'], deeds: ['export-sold', 'import-sold'], materials: ['ivory:elephant'],
    when: { all: [before1975, { fact: 'playedUntilRecently', is: true }] }, outcome: 'papers', otherwise: 'prohibited',
    papers: [{ en: 'Permit of the union for export or import, with proof of age and of use by a performer', de: 'Aus- oder Einfuhrgenehmigung der Union mit Nachweis des Alters und der Nutzung durch Spielende' }],
    text: { en: 'Guidance holds back export and import of worked ivory, save for instruments from before 1975 that a performer used until recently.', de: 'Die Leitlinien setzen Aus- und Einfuhr verarbeiteten Elfenbeins aus, außer bei Instrumenten von vor 1975, die bis vor kurzem gespielt wurden.' },
    source: 'Notice 2021/C 528/03', effectiveFrom: '2022-01-19', seen: 'second-hand', authority: unionAuthority, ...CHECKED,
  },
  {
    id: 'eu-ivory-raw', jurisdictions: ['EU'], deeds: ['sell', 'buy'], materials: ['ivory:elephant'],
    when: { all: [{ fact: 'ivoryRaw', is: true }, { not: { fact: 'repairOfInstrumentBefore1975', is: true } }] }, outcome: 'prohibited', papers: [],
    text: { en: 'Trade in raw ivory is held back save for repairing instruments from before 1975, and then with a certificate.', de: 'Der Handel mit Rohelfenbein ist ausgesetzt, außer zur Reparatur von Instrumenten von vor 1975, und dann mit Bescheinigung.' },
    source: 'Notice 2021/C 528/03, introduction', effectiveFrom: '2022-01-19', seen: 'read', authority: unionAuthority, ...CHECKED,
  },
  {
    id: 'us-small-share', jurisdictions: ['US'], deeds: ['sell', 'offer', 'export-sold'], materials: ['ivory:african-elephant'],
    when: { any: [smallShare, antique] },
    outcome: 'papers', otherwise: 'prohibited',
    papers: [{ en: 'Proof of every condition of the small share (under 200 g, fixed, worked, at most half of value and volume, made before 6 July 2016, lawful entry or age), or of the antique', de: 'Nachweis jeder Bedingung des geringen Anteils (unter 200 g, fest verbaut, verarbeitet, höchstens die Hälfte von Wert und Volumen, vor 6. Juli 2016 gefertigt, rechtmäßige Einfuhr oder Alter) oder der Antiquität' }],
    text: { en: 'Selling between states asks that all conditions of the small share hold, or that the piano counts as an antique. States such as New York, New Jersey, California, Washington and Hawaii may be stricter.', de: 'Der Verkauf zwischen Bundesstaaten verlangt, dass alle Bedingungen des geringen Anteils erfüllt sind oder das Instrument als Antiquität gilt. Staaten wie New York, New Jersey, Kalifornien, Washington und Hawaii können strenger sein.' },
    source: '50 CFR 17.40(e)(3); 81 FR 36387', effectiveFrom: '2016-07-06', seen: 'read', authority: { en: 'US Fish and Wildlife Service, and the state’s agency', de: 'US Fish and Wildlife Service und die Behörde des Bundesstaats' }, ...CHECKED,
  },
  {
    id: 'us-asian-ivory', jurisdictions: ['US'], deeds: ['sell', 'offer', 'export-sold', 'import-sold'], materials: ['ivory:asian-elephant'],
    outcome: 'ask', papers: [],
    text: { en: 'There is no small share for Asian elephant ivory; only an antique of a hundred years may be open.', de: 'Für Elfenbein vom Asiatischen Elefanten gibt es keinen geringen Anteil; offen steht allenfalls die hundertjährige Antiquität.' },
    source: 'US Fish and Wildlife Service, page on ivory', effectiveFrom: '2016-07-06', seen: 'second-hand', authority: inBoth('US Fish and Wildlife Service'), ...CHECKED,
  },
  {
    id: 'us-antique', jurisdictions: ['US'], deeds: ['sell', 'offer', 'export-sold'], materials: ['ivory', 'tortoiseshell'],
    when: antique, outcome: 'papers',
    papers: [{ en: 'Proof of an age of 100 years, of the species, and of entry by a port for antiques where asked; papers of the convention for export', de: 'Nachweis von 100 Jahren Alter, der Art und, wo verlangt, der Einfuhr über einen Hafen für Antiquitäten; für die Ausfuhr Papiere der Konvention' }],
    text: { en: 'A hundred years old and never repaired with listed species since 27 December 1973. New ivory on the keys can end this for good.', de: 'Hundert Jahre alt und seit 27. Dezember 1973 nie mit geschützten Arten repariert. Neues Elfenbein auf den Tasten kann das für immer beenden.' },
    source: 'Endangered Species Act, section 10(h); Director’s Order 210', effectiveFrom: '2014-02-25', seen: 'read', authority: inBoth('US Fish and Wildlife Service'), ...CHECKED,
  },
  {
    id: 'us-import-sold', jurisdictions: ['US'], deeds: ['import-sold'], materials: ['ivory:african-elephant'], outcome: 'prohibited', papers: [],
    text: { en: 'Bringing African elephant ivory in for sale is barred, antiques too; the small share does not open the border.', de: 'Die Einfuhr von Elfenbein vom Afrikanischen Elefanten zum Verkauf ist verboten, auch als Antiquität; der geringe Anteil öffnet die Grenze nicht.' },
    source: 'African Elephant Conservation Act; Director’s Order 210', effectiveFrom: '2014-02-25', seen: 'second-hand', authority: inBoth('US Fish and Wildlife Service'), ...CHECKED,
  },
  {
    id: 'convention-travel', jurisdictions: ['convention'], deeds: ['travel'], materials: ['appendix-I', 'appendix-II'], outcome: 'papers',
    papers: [{ en: 'Musical instrument certificate, up to three years and many crossings, stamped at each border', de: 'Musikinstrumentenbescheinigung, bis zu drei Jahre und viele Grenzübertritte, an jeder Grenze gestempelt' }],
    text: { en: 'For travel without sale only: the instrument must come back in the same hands.', de: 'Nur für Reisen ohne Verkauf: Das Instrument muss in denselben Händen zurückkehren.' },
    source: 'Resolution Conf. 16.8 (Rev. CoP17); Regulation 865/2006, articles 44h to 44p', effectiveFrom: '2013-06-12', seen: 'read', authority: unionAuthority, ...CHECKED,
  },
  {
    id: 'convention-list-one', jurisdictions: ['convention'], deeds: ['export-sold', 'import-sold', 'export-own', 'import-own'], materials: ['appendix-I'], outcome: 'papers',
    papers: [{ en: 'Certificate from before the convention, or permits of both countries, in hand before the crate moves', de: 'Vorerwerbsbescheinigung oder Genehmigungen beider Länder, vorhanden, bevor die Kiste bewegt wird' }],
    text: { en: 'What stands on the strictest list does not cross a border for trade unless it is older than its listing.', de: 'Was auf der strengsten Liste steht, überschreitet keine Grenze zum Handel, außer es ist älter als seine Aufnahme.' },
    source: 'Convention on trade in endangered species, articles III and VII(2)', effectiveFrom: '1975-07-01', seen: 'second-hand', authority: { en: 'The management authorities of both countries', de: 'Die Vollzugsbehörden beider Länder' }, ...CHECKED,
  },
  {
    id: 'convention-rosewood', jurisdictions: ['convention'], deeds: ['export-sold', 'import-sold', 'export-own', 'import-own', 'travel'], materials: ['wood:other-rosewood', 'wood:bubinga'],
    when: { any: [{ fact: 'finished', is: true }, { not: { fact: 'listedWoodG', atLeast: 500.000001 } }] }, outcome: 'note', otherwise: 'papers',
    papers: [{ en: 'Export papers of the convention for veneer, boards and blanks of more than 500 g', de: 'Ausfuhrpapiere der Konvention für Furniere, Bretter und Rohlinge über 500 g' }],
    text: { en: 'Finished instruments, parts and accessories, and up to 500 g an item, are outside the list; veneer, boards and blanks are not finished.', de: 'Fertige Instrumente, Teile und Zubehör sowie bis 500 g je Stück stehen außerhalb der Liste; Furniere, Bretter und Rohlinge sind nicht fertig.' },
    source: 'Appendix II, annotation 15 (CoP18), kept at CoP20', effectiveFrom: '2019-11-26', seen: 'second-hand', authority: unionAuthority, ...CHECKED,
  },
  {
    id: 'convention-other-woods', jurisdictions: ['convention'], deeds: ['export-sold', 'import-sold', 'export-own', 'import-own'], materials: ['wood:mahogany-neotropical', 'wood:cedrela-neotropical', 'wood:african-mahogany', 'wood:ebony-madagascar'], outcome: 'ask', papers: [],
    text: { en: 'The list speaks of logs, boards, veneer and plywood: a finished case mostly stands outside, spare veneer inside. The wording now in force decides.', de: 'Die Liste nennt Stämme, Bretter, Furnier und Sperrholz: Ein fertiges Gehäuse steht meist außerhalb, Furnier auf Vorrat innerhalb. Es gilt der jetzige Wortlaut.' },
    source: 'Appendices of the convention', effectiveFrom: '2003-11-15', seen: 'memory', authority: unionAuthority, ...CHECKED,
  },
  {
    id: 'us-plant-declaration', jurisdictions: ['US'], deeds: ['import-sold', 'import-own'], materials: ['wood'], outcome: 'papers',
    papers: [{ en: 'Declaration of plants (PPQ 505): genus, species, country of harvest', de: 'Pflanzenerklärung (PPQ 505): Gattung, Art, Ernteland' }],
    text: { en: 'Pianos stand on the schedule of goods whose woods are to be declared; old ones have codes of their own.', de: 'Klaviere stehen auf der Liste der Waren, deren Hölzer zu erklären sind; für alte gibt es eigene Schlüssel.' },
    source: 'Lacey Act as amended 2008', effectiveFrom: '2010-04-01', seen: 'second-hand', authority: inBoth('USDA APHIS'), ...CHECKED,
  },
  {
    id: 'crate-mark', jurisdictions: ['convention'], deeds: ['export-sold', 'import-sold', 'export-own', 'import-own', 'travel'], materials: ['crate:solid-wood'], outcome: 'papers',
    papers: [{ en: 'Mark of ISPM 15 on crate and dunnage', de: 'ISPM-15-Stempel auf Kiste und Stauholz' }],
    text: { en: 'Solid wood of the crate must be treated and marked; the piano itself is not meant.', de: 'Vollholz der Kiste muss behandelt und gestempelt sein; das Instrument selbst ist nicht gemeint.' },
    source: 'ISPM 15', effectiveFrom: '2002-03-15', seen: 'memory', authority: { en: 'The plant health service', de: 'Der Pflanzenschutzdienst' }, ...CHECKED,
  },
  {
    id: 'lead', jurisdictions: ['EU', 'GB', 'NI', 'US'], deeds: ['restore', 'sell', 'dispose'], materials: ['lead'], outcome: 'note', papers: [],
    text: { en: 'Wash hands, no dry sanding or drilling dust, keep swarf apart as hazardous waste; test old coatings before sanding. In the union a trade buyer is told of more than 0.1 % of lead, others when they ask.', de: 'Hände waschen, kein trockenes Schleifen, kein Bohrstaub, Späne getrennt als Sondermüll; alte Lacke vor dem Schleifen prüfen. In der Union erfährt gewerbliche Kundschaft von mehr als 0,1 % Blei, andere auf Nachfrage.' },
    source: '29 CFR 1910.1025; Control of Lead at Work 2002; REACH article 33', effectiveFrom: '2008-06-01', seen: 'memory', authority: { en: 'The regulator for health and safety at work', de: 'Die Arbeitsschutzbehörde' }, ...CHECKED,
  },
  {
    id: 'celluloid', jurisdictions: ['convention'], deeds: ['export-sold', 'import-sold', 'export-own', 'import-own', 'travel', 'restore', 'dispose'], materials: ['celluloid'], outcome: 'note', papers: [],
    text: { en: 'Celluloid burns fiercely and is dangerous goods in bulk: ask the carrier, keep it from heat and sparks.', de: 'Zelluloid brennt heftig und ist in Mengen Gefahrgut: beim Spediteur fragen, von Hitze und Funken fernhalten.' },
    source: 'Common practice, no source', effectiveFrom: '1900-01-01', seen: 'memory', authority: { en: 'The carrier and the fire service', de: 'Spedition und Feuerwehr' }, ...CHECKED,
  },
];

/** The rules that come with the program. */
export const shippedRules: PaperRuleFile = { schema: 'wrestplank-papers/1', issued: '2026-11-26', rules: [...rules] };
