import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What a PDF holds. */
export interface PdfText {
  /** Text of each page. */
  readonly pages: readonly string[];
  /** Size of the first page in points. */
  readonly widthPt: number;
  readonly heightPt: number;
}

/** Reads a PDF page by page. */
export async function readPdf(bytes: Uint8Array): Promise<PdfText> {
  const pdf = await getDocument({ data: new Uint8Array(bytes) }).promise;
  const pages: string[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const { items } = await (await pdf.getPage(number)).getTextContent();
    pages.push(items.map((item) => ('str' in item ? item.str : '')).join(' '));
  }
  const { width, height } = (await pdf.getPage(1)).getViewport({ scale: 1 });
  return { pages, widthPt: width, heightPt: height };
}
