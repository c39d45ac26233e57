import type { Block, ReportDocument } from './document.ts';

/** The words of a report in reading order, one line each: for searching, and for those who want no layout. */
export function textOf(document: ReportDocument): string {
  return [document.title, document.subtitle, ...document.blocks.flatMap(linesOf)].join('\n');
}

function linesOf(block: Block): readonly string[] {
  switch (block.type) {
    case 'heading':
    case 'paragraph':
    case 'note':
    case 'caution': return [block.text];
    case 'keyValues': return block.rows.map(({ label, value }) => `${label}: ${value.text}`);
    case 'headline': return block.items.map(({ label, value, detail }) => `${label}: ${value} ${detail}`);
    case 'table': return [block.columns.map(({ label }) => label).join('\t'), ...block.rows.map((row) => row.map(({ text }) => text).join('\t'))];
    case 'figure': return [block.caption, block.alt];
    case 'list': return block.items;
    case 'pageBreak': return [];
  }
}
