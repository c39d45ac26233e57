/* eslint house/colour-tokens: "off" -- this is the token file of print */
import type { Ink } from './theme.ts';

/** Inks on white paper, for drawings and documents; near the light theme of the screens. */
export const printInks: Readonly<Record<Ink, string>> = {
  paper: '#ffffff',
  ink: '#22252a',
  soft: '#555a61',
  rule: '#d8d6cf',
  band: '#e2efe5',
  accent: '#1f5c73',
  found: '#8a4b12',
  planned: '#5d5f8f',
  finished: '#1f5c73',
  flag: '#9c2f26',
  natural: '#fffdf8',
  sharp: '#2f3236',
  keyMark: '#22252a',
  keyFlag: '#9c2f26',
  highlight: '#b9d9e3',
};
