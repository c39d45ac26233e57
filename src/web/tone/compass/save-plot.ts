import { type Scene, svgOf } from '#plot';

/** Pixels of a picture for each of the drawing, so that it prints sharp. */
const PICTURE_SCALE = 2;

/** A drawing as a file, in the inks of print. */
export function svgFile(scene: Scene): Blob {
  return new Blob([svgOf(scene, 'print', 'sans-serif')], { type: 'image/svg+xml' });
}

/** A drawing as a picture on white paper. */
export async function pngOf(scene: Scene): Promise<Blob> {
  const address = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgOf(scene, 'print', 'sans-serif'))}`;
  const picture = new Image();
  picture.src = address;
  await picture.decode();
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [scene.widthPx * PICTURE_SCALE, scene.heightPx * PICTURE_SCALE];
  const pen = canvas.getContext('2d');
  if (pen === null) throw new Error('this browser draws no pictures');
  pen.fillStyle = 'white';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return await new Promise((resolve, reject) => { canvas.toBlob((blob) => { if (blob === null) reject(new Error('this browser writes no pictures')); else resolve(blob); }, 'image/png'); });
}

/** Rows as comma-separated values after RFC 4180. */
export function csvFile(rows: readonly (readonly (string | number)[])[]): Blob {
  const cell = (value: string | number): string => (/[",\r\n]/u.test(String(value)) ? `"${String(value).replaceAll('"', '""')}"` : String(value));
  return new Blob([rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('')], { type: 'text/csv;charset=utf-8' });
}

/** Hands a file to the device. */
export function saveAs(file: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = name;
  link.click();
  setTimeout(() => { URL.revokeObjectURL(link.href); }, 10_000);
}
