import { writeFileSync } from 'node:fs';
import { strToU8, zipSync } from 'fflate';

const folder = new URL('./', import.meta.url);
const utf8 = (text) => Buffer.from(text, 'utf8');
const latin = (text) => Buffer.from(text, 'latin1');
const utf16le = (text) => Buffer.from(text, 'utf16le');
const utf16be = (text) => Buffer.from(text, 'utf16le').swap16();
const joined = (...parts) => Buffer.concat(parts.map((part) => (typeof part === 'string' ? utf8(part) : Buffer.from(part))));

const PAIRS = [['key', 'downWeightG', 'upWeightG'], ['1', '49', '26'], ['2', '50', '27']];
const COMMA = [['key', 'downWeightG', 'upWeightG'], ['1', '49,5', '26,5'], ['2', '50,25', '27']];
const text = (file, why, bytes, rows, { encoding = 'utf-8', delimiter = ',' } = {}) => ({ file, why, bytes, table: { encoding, delimiter, sheet: null, sheets: [], rows } });
const refused = (file, why, bytes, code, reason) => ({ file, why, bytes, refused: { code, reason } });

// --- Workbooks, written part by part so that every oddity is here on purpose ---

const NS = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const REL = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>';
const MADE = { mtime: new Date(2026, 0, 5, 12) };

function workbook(sheets, { strings = [], extra = {} } = {}) {
  const names = Object.keys(sheets);
  const parts = {
    '[Content_Types].xml': `${XML}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/></Types>`,
    '_rels/.rels': `${XML}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${REL}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `${XML}<workbook ${NS} xmlns:r="${REL}"><sheets>${names.map((name, index) => `<sheet name="${name}" sheetId="${index + 1}" r:id="rId${index + 1}"/>`).join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `${XML}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${names.map((_, index) => `<Relationship Id="rId${index + 1}" Type="${REL}/worksheet" Target="worksheets/sheet${index + 1}.xml"/>`).join('')}<Relationship Id="rIdS" Type="${REL}/sharedStrings" Target="sharedStrings.xml"/><Relationship Id="rIdT" Type="${REL}/styles" Target="styles.xml"/></Relationships>`,
    'xl/styles.xml': `${XML}<styleSheet ${NS}><numFmts count="1"><numFmt numFmtId="164" formatCode="d.m.yyyy"/></numFmts><cellXfs count="3"><xf numFmtId="0"/><xf numFmtId="164" applyNumberFormat="1"/><xf numFmtId="2" applyNumberFormat="1"/></cellXfs></styleSheet>`,
    'xl/sharedStrings.xml': `${XML}<sst ${NS} count="${strings.length}" uniqueCount="${strings.length}">${strings.map((string) => `<si>${string.startsWith('<') ? string : `<t xml:space="preserve">${string}</t>`}</si>`).join('')}</sst>`,
    ...Object.fromEntries(Object.values(sheets).map((rows, index) => [`xl/worksheets/sheet${index + 1}.xml`, `${XML}<worksheet ${NS}><sheetData>${rows}</sheetData></worksheet>`])),
    ...extra,
  };
  return Buffer.from(zipSync(Object.fromEntries(Object.entries(parts).map(([name, content]) => [name, strToU8(content)])), { ...MADE, level: 9 }));
}
const row = (number, ...cells) => `<row r="${number}">${cells.join('')}</row>`;
const str = (at, index) => `<c r="${at}" t="s"><v>${index}</v></c>`;
const num = (at, value, style = 0) => `<c r="${at}" s="${style}"><v>${value}</v></c>`;
const book = (file, why, bytes, sheet, sheets, rows, options = {}) => ({ file, why, bytes, ...options, table: { encoding: 'xlsx', delimiter: '', sheet, sheets, rows } });

const HEADS = ['key', 'downWeightG', 'upWeightG'];
const head = row(1, str('A1', 0), str('B1', 1), str('C1', 2));

const exhibits = [
  text('plain.csv', 'what a script writes', utf8('key,downWeightG,upWeightG\n1,49,26\n2,50,27\n'), PAIRS),
  text('no-newline-at-end.csv', 'the last row ends with the file', utf8('key,downWeightG,upWeightG\n1,49,26\n2,50,27'), PAIRS),
  text('crlf-and-trailing-blank-rows.csv', 'trailing newlines and rows of nothing but separators are no rows', utf8('key,downWeightG,upWeightG\r\n1,49,26\r\n2,50,27\r\n,,\r\n\r\n\r\n'), PAIRS),
  text('old-line-ends.csv', 'carriage returns alone, as very old spreadsheets wrote', utf8('key,downWeightG,upWeightG\r1,49,26\r2,50,27\r'), PAIRS),
  text('mixed-line-ends.csv', 'two files pasted together', utf8('key,downWeightG,upWeightG\r\n1,49,26\n2,50,27\r'), PAIRS),
  text('bom-utf8.csv', 'a byte order mark is no part of the first header', joined([0xef, 0xbb, 0xbf], 'key,downWeightG,upWeightG\n1,49,26\n2,50,27\n'), PAIRS),
  text('bom-utf16le.txt', 'Unicode text as spreadsheets save it: UTF-16 and tabs', joined([0xff, 0xfe], utf16le('key\tdownWeightG\tupWeightG\r\n1\t49\t26\r\n2\t50\t27\r\n')), PAIRS, { encoding: 'utf-16le', delimiter: '\t' }),
  text('bom-utf16be.txt', 'the same, bytes the other way round', joined([0xfe, 0xff], utf16be('key\tdownWeightG\tupWeightG\r\n1\t49\t26\r\n2\t50\t27\r\n')), PAIRS, { encoding: 'utf-16be', delimiter: '\t' }),
  text('utf16le-without-bom.txt', 'UTF-16 that does not say so', utf16le('key;downWeightG;upWeightG\n1;49;26\n2;50;27\n'), PAIRS, { encoding: 'utf-16le', delimiter: ';' }),
  text('german-windows.csv', 'a German spreadsheet: windows-1252, semicolons, decimal commas, umlauts', latin('Taste;Niedergewicht (g);Aufgewicht (g);Bemerkung\r\n1;49,5;26,5;h\xe4ngt bei K\xe4lte\r\n2;50,25;27;\x84fest\x93\r\n'), [['Taste', 'Niedergewicht (g)', 'Aufgewicht (g)', 'Bemerkung'], ['1', '49,5', '26,5', 'hängt bei Kälte'], ['2', '50,25', '27', '„fest“']], { encoding: 'windows-1252', delimiter: ';' }),
  text('german-utf8.csv', 'the same in UTF-8 without a mark', utf8('Taste;Niedergewicht;Bemerkung\n1;49,5;hängt bei Kälte\n'), [['Taste', 'Niedergewicht', 'Bemerkung'], ['1', '49,5', 'hängt bei Kälte']], { delimiter: ';' }),
  text('decimal-comma.csv', 'decimal commas with semicolons: as many commas as semicolons in the rows', utf8('key;downWeightG;upWeightG\n1;49,5;26,5\n2;50,25;27\n'), COMMA, { delimiter: ';' }),
  text('decimal-comma-quoted.csv', 'decimal commas in quotes, columns parted by commas', utf8('key,downWeightG,upWeightG\n1,"49,5","26,5"\n2,"50,25",27\n'), COMMA),
  text('decimal-comma-unquoted.csv', 'decimal commas without quotes, columns parted by commas: rows longer than the header, for the plan to refuse', utf8('key,downWeightG,upWeightG\n1,49,5,26,5\n'), [['key', 'downWeightG', 'upWeightG'], ['1', '49', '5', '26', '5']]),
  text('no-header-decimal-comma.csv', 'no header, decimal commas: both signs part the rows evenly', utf8('1;49,5;26,5\n2;50,25;27,0\n'), [['1', '49,5', '26,5'], ['2', '50,25', '27,0']], { delimiter: ';' }),
  text('sep-line.csv', 'a first line that names the separator', utf8('sep=;\r\nkey;downWeightG;upWeightG\r\n1;49,5;26,5\r\n2;50,25;27\r\n'), COMMA, { delimiter: ';' }),
  text('sep-line-odd.csv', 'a separator nobody would guess', utf8('"sep=^"\nkey^downWeightG^upWeightG\n1^49^26\n2^50^27\n'), PAIRS, { delimiter: '^' }),
  text('tabs.tsv', 'tabs', utf8('key\tdownWeightG\tupWeightG\n1\t49\t26\n2\t50\t27\n'), PAIRS, { delimiter: '\t' }),
  text('bars.txt', 'vertical bars', utf8('key|downWeightG|upWeightG\n1|49|26\n2|50|27\n'), PAIRS, { delimiter: '|' }),
  text('title-rows.csv', 'a title and a blank row above the header', utf8('Weights, as found\n\nkey,downWeightG,upWeightG\n1,49,26\n'), [['Weights', ' as found'], [''], ['key', 'downWeightG', 'upWeightG'], ['1', '49', '26']]),
  text('blank-rows-between.csv', 'blank rows keep their places, so that row numbers stay true', utf8('key,downWeightG,upWeightG\n1,49,26\n\n,,\n2,50,27\n'), [PAIRS[0], PAIRS[1], [''], ['', '', ''], PAIRS[2]]),
  text('quotes-and-newlines.csv', 'a remark with separators, doubled quotes and a line end of its own', utf8('key,downWeightG,remark\n1,49,"says ""tight"",\r\nsince winter"\n2,50,\n'), [['key', 'downWeightG', 'remark'], ['1', '49', 'says "tight",\r\nsince winter'], ['2', '50', '']]),
  text('inches.csv', 'a quote within a cell means inches', utf8('key,keyFrontMm\nnaturals,8 3/4"\nsharps,"6 3/4"""\n'), [['key', 'keyFrontMm'], ['naturals', '8 3/4"'], ['sharps', '6 3/4"']]),
  text('semicolons-in-remarks.csv', 'semicolons within remarks do not part columns', utf8('key,downWeightG,remark\n1,49,dry; slow\n2,50,tight; noisy\n3,51,worn; loose\n'), [['key', 'downWeightG', 'remark'], ['1', '49', 'dry; slow'], ['2', '50', 'tight; noisy'], ['3', '51', 'worn; loose']]),
  text('ragged.csv', 'rows shorter and longer than the header', utf8('key,downWeightG,upWeightG\n1,49\n2,50,27,,\n3\n'), [PAIRS[0], ['1', '49'], ['2', '50', '27', '', ''], ['3']]),
  text('double-headers.csv', 'the same header twice: for the plan to tell', utf8('key,DW,DW\n1,49,50\n'), [['key', 'DW', 'DW'], ['1', '49', '50']]),
  text('spaces-around.csv', 'spaces stay where they were typed', utf8('key, downWeightG , upWeightG\n 1, 49 ,26 \n'), [['key', ' downWeightG ', ' upWeightG'], [' 1', ' 49 ', '26 ']]),
  text('digits-kept.csv', 'leading and trailing zeros and long fractions stay as typed', utf8('key,downWeightG\n01,49.50\n2,50.123456789012345678\n'), [['key', 'downWeightG'], ['01', '49.50'], ['2', '50.123456789012345678']]),
  text('dates-by-autocorrect.csv', 'a spreadsheet took 1.5 for a date: the text stays, for the plan to refuse', utf8('Taste;Niedergewicht\n1;01. Mai\n2;49,5\n'), [['Taste', 'Niedergewicht'], ['1', '01. Mai'], ['2', '49,5']], { delimiter: ';' }),
  text('one-column.csv', 'one column alone has no separator', utf8('downWeightG\n49\n50\n'), [['downWeightG'], ['49'], ['50']]),

  book('plain.xlsx', 'shared strings and numbers', workbook({ Readings: head + row(2, num('A2', 1), num('B2', 49), num('C2', 26)) + row(3, num('A3', 2), num('B3', 50), num('C3', 27)) }, { strings: HEADS }), 'Readings', ['Readings'], PAIRS),
  book('float-noise.xlsx', 'numbers as workbooks store them: seventeen digits, exponents', workbook({ Readings: head + row(2, num('A2', 1), num('B2', '49.299999999999997'), num('C2', '2.6100000000000001E1')) + row(3, num('A3', 2), num('B3', '0.10000000000000001'), num('C3', '26.123456789012344')) }, { strings: HEADS }), 'Readings', ['Readings'], [HEADS, ['1', '49.3', '26.1'], ['2', '0.1', '26.123456789012344']]),
  book('text-numbers.xlsx', 'figures typed as text keep their zeros, commas and spaces', workbook({ Readings: head + row(2, str('A2', 3), str('B2', 4), str('C2', 5)) }, { strings: [...HEADS, '01', '49,50', ' 26 '] }), 'Readings', ['Readings'], [HEADS, ['01', '49,50', ' 26 ']]),
  book('dates.xlsx', 'a cell that became a date stays a date, in words nobody takes for a weight', workbook({ Readings: head + row(2, num('A2', 1), num('B2', 46143, 1), num('C2', 26)) }, { strings: HEADS }), 'Readings', ['Readings'], [HEADS, ['1', '2026-05-01', '26']]),
  book('error-values.xlsx', 'error values stay to be refused by name, never read as empty', workbook({ Readings: head + row(2, num('A2', 1), '<c r="B2" t="e"><f>1/0</f><v>#DIV/0!</v></c>', num('C2', 26)) }, { strings: HEADS }), 'Readings', ['Readings'], [HEADS, ['1', '#DIV/0!', '26']]),
  book('formulas-and-flags.xlsx', 'results of formulas, inline and rich text, yes and no', workbook({ Readings: head + row(2, num('A2', 1), '<c r="B2"><f>48.5+1</f><v>49.5</v></c>', '<c r="C2" t="str"><f>"st"&amp;"icks"</f><v>sticks</v></c>') + row(3, num('A3', 2), '<c r="B3" t="inlineStr"><is><t>50 g</t></is></c>', '<c r="C3" t="b"><v>1</v></c>') + row(4, num('A4', 3), str('B4', 3)) }, { strings: [...HEADS, '<r><t>49</t></r><r><rPr><b/></rPr><t>,5</t></r>'] }), 'Readings', ['Readings'], [HEADS, ['1', '49.5', 'sticks'], ['2', '50 g', 'TRUE'], ['3', '49,5', '']]),
  book('gaps.xlsx', 'rows and cells left out of the file keep their places', workbook({ Readings: row(3, str('B3', 0), str('D3', 1)) + row(6, num('B6', 1), num('D6', 49)) }, { strings: HEADS }), 'Readings', ['Readings'], [['', '', '', ''], ['', '', '', ''], ['', 'key', '', 'downWeightG'], ['', '', '', ''], ['', '', '', ''], ['', '1', '', '49']]),
  book('two-sheets.xlsx', 'the first sheet is read, and all are named', workbook({ 'as found': head + row(2, num('A2', 1), num('B2', 49), num('C2', 26)), 'R &amp; D': row(1, str('A1', 0)) }, { strings: HEADS }), 'as found', ['as found', 'R & D'], [HEADS, ['1', '49', '26']]),
  book('two-sheets.xlsx', 'or the sheet that is asked for', null, 'R & D', ['as found', 'R & D'], [['key']], { sheet: 'R & D' }),
  book('workbook-named.csv', 'a workbook whatever its name says', workbook({ Readings: head + row(2, num('A2', 1), num('B2', 49), num('C2', 26)) }, { strings: HEADS }), 'Readings', ['Readings'], [HEADS, ['1', '49', '26']]),

  refused('empty.csv', 'nothing in it', Buffer.alloc(0), 'required', 'importEmpty'),
  refused('open-quote.csv', 'a quote that never closes would swallow the rest', utf8('key,downWeightG,remark\n1,49,"tight\n2,50,\n'), 'format', 'importQuote'),
  refused('binary.csv', 'no text at all', Buffer.from([0x4d, 0x5a, 0x90, 0x00, 0x03, 0x00, 0x00, 0x01, 0x04, 0x07]), 'format', 'importBinary'),
  refused('older-workbook.xls', 'the binary workbook of old', Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0]), 'format', 'importBinary'),
  refused('broken.xlsx', 'a workbook cut off in the middle', workbook({ Readings: head }, { strings: HEADS }).subarray(0, 400), 'format', 'importWorkbook'),
  refused('document.ods', 'another kind of archive', Buffer.from(zipSync({ mimetype: strToU8('application/vnd.oasis.opendocument.spreadsheet'), 'content.xml': strToU8('<a/>') }, MADE)), 'format', 'importWorkbook'),
  refused('unclosed-xml.xlsx', 'a sheet that is no XML', workbook({ Readings: '<row r="1"><c r="A1"><v>1</v>' }, { extra: { 'xl/worksheets/sheet1.xml': `${XML}<worksheet ${NS}><sheetData><row r="1"><c r="A1"` } }), 'format', 'importWorkbook'),
  refused('unpacks-to-a-hundred-megabytes.xlsx', 'a hundred kilobytes that would fill the memory', workbook({ Readings: ' '.repeat(100 * 1024 * 1024) }), 'length', 'importUnpacked'),
  refused('cell-far-down.xlsx', 'one cell in the last row of all', workbook({ Readings: row(1048576, num('A1048576', 1)) }), 'length', 'importRowLimit'),
  refused('cell-far-right.xlsx', 'one cell in the last column of all', workbook({ Readings: row(1, num('XFD1', 1)) }), 'length', 'importColumnLimit'),
  refused('row-beyond-any-sheet.xlsx', 'a row number no sheet has would be filled up to', workbook({ Readings: '<row r="99999999999"></row>' }), 'length', 'importRowLimit'),
];

for (const { file, bytes } of exhibits) if (bytes !== null) writeFileSync(new URL(file, folder), bytes);
const manifest = exhibits.map(({ bytes: _, ...exhibit }) => `  ${JSON.stringify(exhibit)}`);
writeFileSync(new URL('manifest.json', folder), `[\n${manifest.join(',\n')}\n]\n`);
