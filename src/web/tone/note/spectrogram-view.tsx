import { useEffect, useRef } from 'react';
import { usePreferences } from '../../theme/preferences.ts';
import type { Spectrogram } from './sound-picture.ts';

/** Strength over time and frequency as a picture, from paper to ink as the theme has them. */
export function SpectrogramView({ spectrogram, label }: { readonly spectrogram: Spectrogram; readonly label: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const preferences = usePreferences();
  useEffect(() => {
    if (canvas.current !== null) paint(canvas.current, spectrogram);
  }, [preferences, spectrogram]);
  return <canvas ref={canvas} className="spectrogram" width={spectrogram.columns} height={spectrogram.rows} role="img" aria-label={label} />;
}

/** Fills the picture: every point the ink of the page, as strong as the sound there. */
function paint(canvas: HTMLCanvasElement, { columns, rows, strength }: Spectrogram): void {
  const pen = canvas.getContext('2d');
  if (pen === null) return;
  pen.clearRect(0, 0, columns, rows);
  pen.fillStyle = getComputedStyle(canvas).color;
  for (let column = 0; column < columns; column += 1) {
    for (let row = 0; row < rows; row += 1) {
      const own = strength[column * rows + row] ?? 0;
      if (own === 0) continue;
      pen.globalAlpha = own / 255;
      pen.fillRect(column, rows - 1 - row, 1, 1);
    }
  }
}
