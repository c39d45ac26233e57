import type { Scene } from '#plot';
import type { SVGProps } from 'react';

/** The size of a drawing on screen; its shape is told apart, so that one out of view keeps its place without being drawn. */
export function frameOf({ widthPx, heightPx }: Pick<Scene, 'widthPx' | 'heightPx'>): Pick<SVGProps<SVGSVGElement>, 'viewBox' | 'width' | 'height' | 'style'> {
  return { viewBox: `0 0 ${String(widthPx)} ${String(heightPx)}`, width: widthPx, height: heightPx, style: { aspectRatio: `${String(widthPx)} / ${String(heightPx)}` } };
}
