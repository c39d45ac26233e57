import { type Result, map } from '#result';
import { type KeyFigure, type KeyOffset, alongKeysOf } from './along-keys.ts';

/** How a hammer sounds beside its neighbours. */
export const voices = ['bright', 'dull', 'even'] as const;

/** A hammer: how far off, and by how much that is beyond what repeating the strike would explain. */
export interface HammerVoice extends KeyOffset {
  readonly voice: (typeof voices)[number];
  /** |offset| less twice the standard uncertainty of it; 0 where that explains it. */
  readonly beyond: number;
}

/** Voicing along the keys. */
export interface VoicingMap {
  readonly hammers: readonly HammerVoice[];
  readonly scatter: number;
  readonly bright: readonly number[];
  readonly dull: readonly number[];
}

/**
 * Which hammers are bright and which dull beside a smooth curve through their neighbours, at one level: |offset| > 2·√(s² + u²), s the
 * repeatability of a strike and u the uncertainty of the figure. Brightness is whichever descriptor the figures are of; higher is brighter.
 * @source JCGM-100
 */
export function voicingMapOf(figures: readonly KeyFigure[], repeatability: number, lambda?: number): Result<VoicingMap> {
  return map(alongKeysOf(figures, lambda), ({ keys, scatter }) => {
    const hammers = keys.map((key): HammerVoice => {
      const beyond = Math.max(0, Math.abs(key.offset) - 2 * Math.hypot(repeatability, key.uncertainty ?? 0));
      return { ...key, beyond, voice: beyond === 0 ? 'even' : key.offset > 0 ? 'bright' : 'dull' };
    });
    const of = (voice: HammerVoice['voice']): readonly number[] => hammers.filter((hammer) => hammer.voice === voice).map(({ key }) => key);
    return { hammers, scatter, bright: of('bright'), dull: of('dull') };
  });
}
