/** What a rule comes to, worst first. */
export const outcomes = ['prohibited', 'papers', 'ask', 'note'] as const;
export type PaperOutcome = (typeof outcomes)[number];
