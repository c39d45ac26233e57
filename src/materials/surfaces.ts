/** Sound taken in at 125, 250, 500, 1000, 2000 and 4000 Hz, as a share of what falls on a surface from all sides. */
export type Absorption = readonly [number, number, number, number, number, number];

export interface Surface {
  readonly absorption: Absorption;
  /** A key of the bibliography. */
  readonly source: string;
  /** Another published row for the same thing, where tables differ. */
  readonly alsoGiven?: Absorption;
}

const row = (absorption: Absorption, source: string = 'ABSORPTION-TABLE'): Surface => ({ absorption, source });

/** What rooms are made of and hung with. Cloth: m² of wall covered; "half" is two square metres of cloth hung on one of wall. People, chairs and pews: m² of floor they take up; two chairs on one. @source ABSORPTION-TABLE, COX-DANTONIO, VORLAENDER-2008 */
export const surfaces = {
  'plaster-on-brick': row([0.013, 0.015, 0.02, 0.03, 0.04, 0.05]),
  'plaster-on-lath': row([0.14, 0.1, 0.06, 0.04, 0.04, 0.03]),
  'gypsum-board': { ...row([0.1, 0.08, 0.05, 0.03, 0.03, 0.03]), alsoGiven: [0.29, 0.1, 0.06, 0.05, 0.04, 0.04] },
  'window-glass': row([0.35, 0.25, 0.18, 0.12, 0.07, 0.04]),
  'plate-glass': row([0.18, 0.06, 0.04, 0.03, 0.02, 0.02]),
  'wood-on-joists': row([0.15, 0.11, 0.1, 0.07, 0.06, 0.07]),
  'parquet-on-concrete': row([0.04, 0.04, 0.07, 0.06, 0.06, 0.07]),
  'wooden-door': row([0.1, 0.07, 0.05, 0.04, 0.04, 0.04], 'ABSORPTION-PAGE'),
  'carpet-on-concrete': row([0.02, 0.06, 0.14, 0.37, 0.6, 0.65]),
  'carpet-on-felt': row([0.08, 0.24, 0.57, 0.69, 0.71, 0.73]),
  'carpet-latex-backed': row([0.08, 0.27, 0.39, 0.34, 0.48, 0.63]),
  'light-velour-straight': { ...row([0.03, 0.04, 0.11, 0.17, 0.24, 0.35]), alsoGiven: [0.04, 0.05, 0.11, 0.18, 0.3, 0.35] },
  'medium-velour-straight': row([0.05, 0.07, 0.13, 0.22, 0.32, 0.35], 'COX-DANTONIO'),
  'medium-velour-half': row([0.07, 0.31, 0.49, 0.75, 0.7, 0.6], 'COX-DANTONIO'),
  'heavy-velour-straight': row([0.05, 0.12, 0.35, 0.48, 0.38, 0.36]),
  'heavy-velour-half': { ...row([0.14, 0.35, 0.55, 0.72, 0.7, 0.65]), alsoGiven: [0.14, 0.35, 0.55, 0.77, 0.7, 0.65] },
  'cotton-seven-eighths': row([0.03, 0.12, 0.15, 0.27, 0.37, 0.42], 'COX-DANTONIO'),
  'cotton-three-quarters': row([0.04, 0.23, 0.4, 0.57, 0.53, 0.4], 'COX-DANTONIO'),
  'seats-empty': row([0.49, 0.66, 0.8, 0.88, 0.82, 0.7], 'ABSORPTION-PAGE'),
  'seats-occupied': row([0.6, 0.74, 0.88, 0.96, 0.93, 0.85], 'ABSORPTION-PAGE'),
  'audience-one-per-m2': row([0.16, 0.29, 0.55, 0.8, 0.92, 0.9], 'VORLAENDER-2008'),
  'wooden-chairs': row([0.05, 0.08, 0.1, 0.12, 0.12, 0.12], 'VORLAENDER-2008'),
  'folded-curtain-off-wall': row([0.12, 0.6, 0.98, 1, 1, 1], 'VORLAENDER-2008'),
  'wooden-lining-on-frame': row([0.27, 0.23, 0.22, 0.15, 0.1, 0.07], 'VORLAENDER-2008'),
  'mineral-wool-off-wall': row([0.7, 0.45, 0.65, 0.6, 0.75, 0.65], 'VORLAENDER-2008'),
  'pews-occupied': row([0.57, 0.61, 0.75, 0.86, 0.91, 0.86], 'ABSORPTION-PAGE'),
} as const satisfies Readonly<Record<string, Surface>>;

export type SurfaceName = keyof typeof surfaces;
/** Names of the table of surfaces. */
export const surfaceNames = Object.keys(surfaces) as readonly SurfaceName[] as readonly [SurfaceName, ...SurfaceName[]];
