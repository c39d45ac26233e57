/** The pages of a piano that there are, in the order of the work. */
export const pianoPages = ['story', 'readings', 'strings', 'belly', 'action', 'tone', 'work', 'worth', 'room', 'papers', 'care', 'proof'] as const;
export type PianoPage = (typeof pianoPages)[number];
