import type { Block, Cell, FigureName, ReportDocument, Tone } from './document.ts';

/** A piece of text in a tone. */
export function cell(text: string, tone: Tone = 'plain'): Cell {
  return { text, tone };
}

/** The same cell, naming the derived figure it shows. */
export function opening(shown: Cell, opens: FigureName): Cell {
  return { ...shown, opens };
}

/**
 * Puts a report together and checks that every face can draw it: headings go down one level at a time,
 * rows are as long as their head, figures say what they show.
 * @throws Error when a block is malformed: a broken invariant, never a user's mistake.
 */
export function buildReport(document: ReportDocument): ReportDocument {
  let level = 0;
  for (const block of document.blocks) {
    if (block.type === 'heading') {
      if (block.level > level + 1) throw new Error(`heading “${block.text}” of level ${String(block.level)} below level ${String(level)}`);
      level = block.level;
    }
    checkBlock(block);
  }
  for (const mark of ['{page}', '{pages}']) {
    if (!document.furniture.pageOf.includes(mark)) throw new Error(`page label without ${mark}`);
  }
  return document;
}

function checkBlock(block: Block): void {
  if (block.type === 'figure' && block.alt.trim() === '') throw new Error(`figure “${block.caption}” does not say what it shows`);
  if (block.type !== 'table') return;
  const ragged = block.rows.findIndex((row) => row.length !== block.columns.length);
  if (ragged >= 0) throw new Error(`table “${block.caption}”: row ${String(ragged + 1)} has ${String(block.rows[ragged]?.length ?? 0)} cells for ${String(block.columns.length)} columns`);
}
