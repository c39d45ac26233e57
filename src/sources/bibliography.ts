/** How far a source was seen: `read` = the source itself; `second-hand` = through another text; `memory` = from memory; `practice` = common practice, no source; `own` = derived here. */
export type SourceAccess = 'read' | 'second-hand' | 'memory' | 'practice' | 'own';

export interface Source {
  readonly title: string;
  readonly access: SourceAccess;
}

/** Every source a constant, formula or check of the program names. */
export const bibliography = {
  PRACTICE: { title: 'Common practice, no source', access: 'practice' },
  OWN: { title: 'Derived here; the derivation stands beside the formula', access: 'own' },
  'CGPM-1901': { title: '3rd General Conference on Weights and Measures (1901): standard gravity 9.80665 m/s²', access: 'memory' },
  'NIST-SP811': { title: 'NIST Special Publication 811, Guide for the Use of the SI, appendix B (conversion factors)', access: 'memory' },
  'NEUMAIER-1974': { title: 'A. Neumaier, Rundungsfehleranalyse einiger Verfahren zur Summation endlicher Summen, ZAMM 54 (1974)', access: 'memory' },
  'JCGM-100': { title: 'JCGM 100:2008, Guide to the expression of uncertainty in measurement', access: 'memory' },
  'JCGM-106': { title: 'JCGM 106:2012, The role of measurement uncertainty in conformity assessment', access: 'memory' },
  'OIML-R111': { title: 'OIML R 111-1:2004, Weights of classes E1 to M3', access: 'memory' },
  'ISO-16': { title: 'ISO 16:1975, Standard tuning frequency: A4 = 440 Hz', access: 'memory' },
  'TECH-LIST-1998': { title: 'Technicians’ mailing-list post of 12 October 1998 on balance weight and friction', access: 'read' },
  'TECH-LIST-LESSON': { title: 'College-and-university technicians’ list attachment on balance weight and friction', access: 'read' },
  'TECH-LIST-2007': { title: 'Technicians’ mailing-list post of 22 September 2007 on the ratio by distance', access: 'read' },
  'BIRKETT-LIST': { title: 'S. Birkett, technicians’ mailing-list posts of 26 July 1995 and 28 April 2003 on moment and inertia of key leads', access: 'read' },
  'MALLORY-2007': { title: 'R. Mallory, Inertia in the Grand Piano Action (2007)', access: 'read' },
  'STULOV-2008': { title: 'A. Stulov, fit to the hammer masses of one full set (2008), eq. 11, as quoted in a public source file', access: 'second-hand' },
  'CONKLIN-1990': { title: 'H. A. Conklin, Piano design factors, in Five Lectures on the Acoustics of the Piano (KTH 1990): where the hammer should hit the string', access: 'read' },
  'STULOV-1995': { title: 'A. Stulov, A simple grand piano hammer felt model (1995), table 1, as quoted in a public source file', access: 'second-hand' },
  'TECH-LIST-BORE': { title: 'Technicians’ mailing-list thread of 18 January 2004 on string height and bore; the figures put in are invented', access: 'read' },
  'TECH-LIST-2002': { title: 'Technicians’ mailing-list post of 18 October 2002: dip and blow of grands', access: 'read' },
  'TECH-LIST-UPRIGHT': { title: 'Technicians’ mailing-list post of 12 March 1998: regulation of uprights', access: 'read' },
  'TRADE-1919': { title: 'Piano Tone Building (1919 trade conference), quoted in a technicians’ list archive', access: 'read' },
  'LAGRANGE-1795': { title: 'J.-L. Lagrange, Leçons élémentaires sur les mathématiques (1795): the polynomial through given points', access: 'memory' },
  'ARONHOLD-KENNEDY': { title: 'Theorem of the three instant centres (S. Aronhold 1872, A. Kennedy 1886), as textbooks of gears and mechanisms have it', access: 'memory' },
  'RFC-8785': { title: 'RFC 8785 (2020), JSON Canonicalization Scheme', access: 'memory' },
  'HOARE-1961': { title: 'C. A. R. Hoare, Algorithm 65: Find, Communications of the ACM 4 (1961)', access: 'memory' },
  'SEN-1968': { title: 'P. K. Sen, Estimates of the regression coefficient based on Kendall’s tau, JASA 63 (1968), after H. Theil (1950)', access: 'memory' },
  'EILERS-WHITTAKER': { title: 'P. H. C. Eilers, A perfect smoother, Analytical Chemistry 75 (2003), after E. T. Whittaker (1923)', access: 'memory' },
  'GOLUB-VAN-LOAN': { title: 'G. H. Golub, C. F. Van Loan, Matrix Computations, chapter on special linear systems (banded and positive definite)', access: 'memory' },
  'SHAPLEY-1953': { title: 'L. S. Shapley, A value for n-person games, Contributions to the Theory of Games II (1953)', access: 'memory' },
  'MERSENNE-1636': { title: 'M. Mersenne, Harmonie universelle (1636): pitch of a string from length, tension and mass', access: 'memory' },
  'FLETCHER-1964': { title: 'H. Fletcher, Normal vibration frequencies of a stiff piano string, J. Acoust. Soc. Am. 36 (1964), 203', access: 'memory' },
  'YOUNG-1952': { title: 'R. W. Young, Inharmonicity of plain wire piano strings, J. Acoust. Soc. Am. 24 (1952), 267–273 (abstract)', access: 'read' },
  'SCHUCK-YOUNG-1943': { title: 'O. H. Schuck, R. W. Young, Observations on the vibrations of piano strings, J. Acoust. Soc. Am. 15 (1943), 1–11 (abstract)', access: 'read' },
  'CHAIGNE-ASKENFELT-1994': { title: 'A. Chaigne, A. Askenfelt, Numerical simulations of piano strings II, J. Acoust. Soc. Am. 95 (1994), 1631–1640: string values as quoted in a public student code', access: 'second-hand' },
  'WITTRICK-WILLIAMS-1971': { title: 'W. H. Wittrick, F. W. Williams, A general algorithm for computing natural frequencies of elastic structures, Q. J. Mech. Appl. Math. 24 (1971)', access: 'memory' },
  'SHIGLEY-10-4': { title: 'J. E. Shigley, Mechanical Engineering Design, table 10-4: strength of music wire as a power of its diameter', access: 'memory' },
  'ASTM-A228': { title: 'ASTM A228, Steel wire, music spring quality: tensile requirements, as a wire distributor’s page reproduces them', access: 'second-hand' },
  'EN-10270-1': { title: 'EN 10270-1, Steel wire for mechanical springs, class SM, as a spring maker’s glossary reproduces it', access: 'second-hand' },
  'WIRE-DATA-PAGE': { title: 'Public materials-data page on ASTM A228 music wire: modulus, expansion, density', access: 'read' },
  'WIRE-CHART': { title: 'Public chart of music wire sizes in inches', access: 'read' },
  'TECH-LIST-2003': { title: 'Technicians’ mailing-list table of wire sizes of 12 June 2003', access: 'read' },
  'METALS-MEMORY': { title: 'Handbook values for copper, iron, cast iron, lead and tungsten', access: 'memory' },
  'EBU-3306': { title: 'EBU Tech 3306 (2009), MBWF / RF64: an extended file format for audio', access: 'memory' },
  'RFC-9639': { title: 'RFC 9639 (2024), Free Lossless Audio Codec (FLAC)', access: 'memory' },
  'RFC-3533': { title: 'RFC 3533 (2003), The Ogg Encapsulation Format Version 0', access: 'memory' },
  'VORBIS-I': { title: 'Xiph.Org Foundation, Vorbis I specification', access: 'memory' },
  'ISO-11172-3': { title: 'ISO/IEC 11172-3:1993 and 13818-3:1998, coding of audio, layer III', access: 'memory' },
  'MPMATH-40': { title: 'Worked out apart from the program from the equation named, with mpmath at 40 digits', access: 'own' },
  'BELLMAN-1957': { title: 'R. Bellman, Dynamic Programming (1957)', access: 'memory' },
  'LAND-DOIG-1960': { title: 'A. H. Land, A. G. Doig, An automatic method of solving discrete programming problems, Econometrica 28 (1960): branch and bound', access: 'memory' },
  'EVERETT-1963': { title: 'H. Everett, Generalized Lagrange multiplier method for problems of optimum allocation of resources, Operations Research 11 (1963)', access: 'memory' },
  'VARIGNON-1687': { title: 'P. Varignon, Projet d’une nouvelle méchanique (1687): forces on a cord bent over a support, as every textbook of statics has it', access: 'memory' },
  'EUCLID-III-21': { title: 'Euclid, Elements III.21: a chord is seen under one angle from all points of an arc', access: 'memory' },
  'MAXWELL-1864': { title: 'J. C. Maxwell, On the calculation of the equilibrium and stiffness of frames, Philosophical Magazine 27 (1864): reciprocity of deflections', access: 'memory' },
  'BOYD-VANDENBERGHE': { title: 'S. Boyd, L. Vandenberghe, Convex Optimization (2004), chapter on unconstrained minimisation', access: 'memory' },
  'NIST-STRD': { title: 'NIST Statistical Reference Datasets, linear regression without intercept (NoInt1, NoInt2): certified values', access: 'memory' },
  'SCHROEDER-1965': { title: 'M. R. Schroeder, New method of measuring reverberation time, J. Acoust. Soc. Am. 37 (1965): backward integration', access: 'memory' },
  'ISO-3382': { title: 'ISO 3382-1:2009 and 3382-2:2008, Measurement of room acoustic parameters: early decay time, T20 and the range they need', access: 'memory' },
  'WEINREICH-1977': { title: 'G. Weinreich, Coupled piano strings, J. Acoust. Soc. Am. 62 (1977): two stages of decay', access: 'memory' },
  'NELDER-MEAD-1965': { title: 'J. A. Nelder, R. Mead, A simplex method for function minimization, The Computer Journal 7 (1965)', access: 'memory' },
  'SCHWARZ-1978': { title: 'G. Schwarz, Estimating the dimension of a model, Annals of Statistics 6 (1978): BIC', access: 'memory' },
  'KASS-RAFTERY-1995': { title: 'R. E. Kass, A. E. Raftery, Bayes factors, JASA 90 (1995): a difference of BIC above 6 is strong', access: 'memory' },
  'PEETERS-2011': { title: 'G. Peeters and others, The Timbre Toolbox: extracting audio descriptors from musical signals, J. Acoust. Soc. Am. 130 (2011)', access: 'second-hand' },
  'POLLARD-JANSSON-1982': { title: 'H. F. Pollard, E. V. Jansson, A tristimulus method for the specification of musical timbre, Acustica 51 (1982), with amplitudes for loudnesses as general libraries have it', access: 'memory' },
  'KTH-LECTURES': { title: 'Five Lectures on the Acoustics of the Piano (KTH 1990): string spectra against lines of so many dB an octave', access: 'second-hand' },
  'ISO-532-1': { title: 'ISO 532-1:2017, Methods for calculating loudness, Zwicker method, tables and test signals as public implementations reproduce them', access: 'second-hand' },
  'DIN-45692': { title: 'DIN 45692:2009, Measurement technique for the simulation of the auditory sensation of sharpness, as public implementations reproduce it', access: 'second-hand' },
  'IEC-61260-1': { title: 'IEC 61260-1:2014, Octave-band and fractional-octave-band filters: mid-frequencies of base ten, Butterworth skirts', access: 'memory' },
  'TUKEY-BIWEIGHT': { title: 'J. W. Tukey, bisquare weights of robust regression, tuning constant 4.685, as textbooks have them', access: 'memory' },
  'IGLEWICZ-HOAGLIN': { title: 'B. Iglewicz, D. C. Hoaglin, How to Detect and Handle Outliers (1993): 3.5 robust standard deviations', access: 'memory' },
  'KENDALL-1938': { title: 'M. G. Kendall, A new measure of rank correlation, Biometrika 30 (1938)', access: 'memory' },
  'ABRAMOWITZ-STEGUN': { title: 'M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions (1964), chapter 26', access: 'memory' },
  'FPL-190': { title: 'USDA Forest Products Laboratory, Wood Handbook FPL-GTR-190 (2010), eq. 4-5 and table 4-2: moisture of wood in steady air', access: 'second-hand' },
  'BOETHIUS': { title: 'Boethius, De institutione musica: twelve fifths 3:2 and the comma they leave', access: 'memory' },
  'AARON-1523': { title: 'P. Aaron, Toscanello in musica (1523): fifths tempered until the major third is pure, a quarter of the syntonic comma each', access: 'memory' },
  'WERCKMEISTER-1691': { title: 'A. Werckmeister, Musicalische Temperatur (1691): C–G, G–D, D–A and B–F♯ narrow by a quarter of the comma; called Werckmeister III', access: 'second-hand' },
  'KIRNBERGER-1779': { title: 'J. P. Kirnberger, letter to J. N. Forkel (1779): C–G–D–A–E narrow by a quarter of the syntonic comma each, F♯–C♯ by the schisma; called Kirnberger III', access: 'memory' },
  'VALLOTTI-1779': { title: 'F. A. Vallotti, Della scienza teorica e pratica della moderna musica (1779): F–C–G–D–A–E–B narrow by a sixth of the Pythagorean comma each', access: 'second-hand' },
  'YOUNG-1800': { title: 'T. Young, Outlines of Experiments and Inquiries respecting Sound and Light, Phil. Trans. 90 (1800): C–G–D–A–E–B–F♯ narrow by a sixth of the Pythagorean comma each', access: 'memory' },
  'ORGAN-LIST-2001': { title: 'Mailing-list article of 23 February 2001 on mechanical organs: frequencies of the temperament of 1691 for A4 = 440 Hz', access: 'read' },
} as const satisfies Readonly<Record<string, Source>>;

export type SourceKey = keyof typeof bibliography;

/** The source behind a key. @throws Error for a key that is not in the bibliography. */
export function sourceOf(key: string): Source {
  const source = (bibliography as Readonly<Record<string, Source>>)[key];
  if (source === undefined) throw new Error(`no source under the key ${key}`);
  return source;
}
