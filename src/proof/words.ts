import { type Compass, type TouchIntent, noteNameOf } from '#instrument';
import { type Tongue, asStated } from '#report';
import { formatMeasure } from '#units';

/** Decimals of weights in print; what is reckoned with is never rounded. */
const WEIGHT_DECIMALS = 1;

/** A weight with its unit. */
export function grams(value: number, { locale }: Tongue, options: { readonly signed?: boolean; readonly decimals?: number } = {}): string {
  return formatMeasure(value, { locale, unit: 'g', decimals: options.decimals ?? WEIGHT_DECIMALS, signed: options.signed ?? false });
}

/** The same with grams behind it. */
export function statedGrams(value: number, tongue: Tongue): string {
  return `${asStated(value, tongue)}\u00A0g`;
}

/** What was asked for, in words: `down weight 49 ± 2 g`. */
export function intentWords(intent: TouchIntent, compass: Compass, tongue: Tongue): string {
  const { say } = tongue;
  const tolerance = asStated(intent.toleranceG, tongue);
  if (intent.even !== 'curve') return say(`proof.intent.${intent.even}`, { target: asStated(intent.targetG, tongue), tolerance });
  const anchors = intent.anchors.map(({ key, downWeightG }) => `${noteNameOf(compass, key)} ${statedGrams(downWeightG, tongue)}`).join(', ');
  return say('proof.intent.curve', { anchors, tolerance });
}
