/** A photo made smaller: its bytes, and its size in pixels before and after. */
export interface Shrunk {
  readonly blob: Blob;
  readonly before: readonly [widthPx: number, heightPx: number];
  readonly after: readonly [widthPx: number, heightPx: number];
}

const QUALITY = 0.9;
/** Each try has half the pixels of the one before. */
const STEP = Math.SQRT1_2;
const MOST_TRIES = 8;

/** Draws a photo smaller until it fits; in the same proportions, as JPEG. @throws Error for a file the browser cannot draw. */
export async function shrunkTo(file: Blob, limitBytes: number): Promise<Shrunk> {
  const picture = await createImageBitmap(file);
  const before = [picture.width, picture.height] as const;
  try {
    for (let scale = 1, tries = 0; tries < MOST_TRIES; tries += 1, scale *= STEP) {
      const after = [Math.max(1, Math.round(before[0] * scale)), Math.max(1, Math.round(before[1] * scale))] as const;
      const blob = await drawn(picture, after);
      if (blob.size <= limitBytes) return { blob, before, after };
    }
  } finally {
    picture.close();
  }
  throw new Error(`no size of this photo fits ${String(limitBytes)} bytes`);
}

async function drawn(picture: ImageBitmap, [width, height]: readonly [number, number]): Promise<Blob> {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  canvas.getContext('2d')?.drawImage(picture, 0, 0, width, height);
  return await new Promise((resolve, reject) => {
    canvas.toBlob((blob) => {
      if (blob === null) reject(new Error('the browser could not draw the photo'));
      else resolve(blob);
    }, 'image/jpeg', QUALITY);
  });
}
