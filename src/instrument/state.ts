/** The three states every figure belongs to. */
export const states = ['found', 'planned', 'finished'] as const;
export type State = (typeof states)[number];

/** What a weighing may end in when there is no number: always outside tolerance, never a number. */
export const outcomes = ['sticks', 'noReturn', 'overRange', 'missing', 'unweighable'] as const;
export type Outcome = (typeof outcomes)[number];

/** How a figure came about. */
export const bases = ['measured', 'estimated', 'derived'] as const;
export type Basis = (typeof bases)[number];
