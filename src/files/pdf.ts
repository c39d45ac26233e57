import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { printInks, svgOf } from '#plot';
import type { ReportDocument } from '#report';
import { type NodeCompiler as Compiler, NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';

/** Paper a report is set on: ISO 216 A4 or ANSI Letter. */
export type Paper = 'a4' | 'letter';

/** The faces a report is set in; DejaVu Sans stands in where Source Sans 3 has no sign, as for ♯ and ♭. */
const FACES = [
  '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf',
  '@expo-google-fonts/source-sans-3/400Regular_Italic/SourceSans3_400Regular_Italic.ttf',
  '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf',
  'dejavu-fonts-ttf/ttf/DejaVuSans.ttf',
  'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf',
];

const template = new URL('./templates/report.typ', import.meta.url);

/** Typesetter and template, made at the first document and kept: making it costs more than setting a document. */
let setter: { readonly compiler: Compiler; readonly source: string } | undefined;

function setterOnce(): { readonly compiler: Compiler; readonly source: string } {
  const { resolve } = createRequire(import.meta.url);
  setter ??= {
    compiler: NodeCompiler.create({ workspace: fileURLToPath(new URL('.', template)), fontArgs: [{ fontBlobs: FACES.map((face) => readFileSync(resolve(face))) }] }),
    source: readFileSync(template, 'utf8'),
  };
  return setter;
}

/**
 * Sets a report as a tagged PDF/UA-1 document with every font embedded and plots as vectors.
 * Only when a text has a sign none of the kept faces can draw are the machine's own fonts asked,
 * and only when those fail too is the accessibility standard given up: no word is ever left out.
 */
export function renderPdf(document: ReportDocument, options: { readonly paper: Paper }): Promise<Uint8Array> {
  const { compiler, source } = setterOnce();
  const blocks = document.blocks.map((block) => (block.type === 'figure' ? { ...block, scene: undefined, svg: svgOf(block.scene, 'print') } : block));
  const inputs = { paper: options.paper === 'a4' ? 'a4' : 'us-letter', inks: JSON.stringify(printInks), data: JSON.stringify({ ...document, blocks }) };
  const set = (fallback: 'yes' | 'no', pdfStandard?: string): Uint8Array =>
    compiler.pdf({ mainFileContent: source, inputs: { ...inputs, fallback } }, pdfStandard === undefined ? {} : { pdfStandard });
  try {
    return Promise.resolve(set('no', 'ua-1'));
  } catch {
    return Promise.resolve(set('yes'));
  } finally {
    compiler.evictCache(10);
  }
}
