import { causes, caveats, evidences, nextMeasurements, remedies, verdicts } from '#action';
import { bases, outcomes, quantityNames, states } from '#instrument';
import { createSay, languages } from '#text';
import { describe, expect, it } from 'vitest';

const { knows: isMessageKey } = createSay('en');

const named = (area: string, names: readonly string[], ends: readonly string[]): readonly string[] => names.flatMap((name) => ends.map((end) => `${area}.${name}${end}`));

const KEYS: readonly string[] = [
  ...named('quantity', quantityNames, ['.name', '.short', '.howTo', '.mistakes']),
  ...named('cause', causes, ['', '.why']),
  ...named('remedy', remedies, ['', '.how']),
  ...named('next', nextMeasurements, ['', '.why']),
  ...named('verdict', verdicts, ['']),
  ...named('evidence', evidences, ['']),
  ...named('caveat', caveats, ['']),
  ...named('outcome', outcomes, ['']),
  ...named('state', states, ['']),
  ...named('basis', bases, ['']),
  ...named('stage', ['0', '1', '2', '3', '4', '5'], ['']),
  ...named('intent', ['downWeight', 'balanceWeight', 'curve'], ['', '.consequence']),
  ...named('register', ['bass', 'middle', 'treble'], ['']),
  ...named('colour', ['natural', 'sharp'], ['']),
];

describe('words of the touch', () => {
  const [english, german] = languages.map((language) => createSay(language));

  it.each(KEYS)('%s is said in both languages, and not alike', (key) => {
    expect(isMessageKey(key)).toBe(true);
    if (!isMessageKey(key) || english === undefined || german === undefined) return;
    expect(english(key)).not.toBe('');
    expect(german(key)).not.toBe('');
    if (!ALIKE.has(key)) expect(german(key)).not.toBe(english(key));
  });

  it('shows the usual caution wherever lead is handled', () => {
    for (const key of ['remedy.checkSwollenLeads.how', 'remedy.addLead.how', 'remedy.removeLead.how'] as const) {
      expect(english?.(key)).toMatch(/rules/u);
      expect(german?.(key)).toMatch(/Vorschriften/u);
    }
  });
});

/** Words the two languages share. */
const ALIKE: ReadonlySet<string> = new Set(['quantity.hammerWeightG.short', 'stage.3', 'register.bass']);
