import type { DemoStep } from './demo-step.ts';

const INVENTED = 'Invented for demonstration.';

/** What is noted of the invented grand: ivory whose papers are incomplete, a veneer of doubtful species, leads and an old finish. @source OWN */
export function demoPapers(): readonly DemoStep[] {
  return [
    {
      kind: 'paper', draft: {
        kind: 'material', material: 'ivory:elephant', where: 'Heads and tails of 52 naturals', species: 'proven', isRaw: false, isFixed: true,
        pieces: [{ words: 'Head and tail together', areaMm2: 2424, count: 52, thicknessesMm: [0.86, 0.91, 0.88, 0.93, 0.84, 0.9, 0.87, 0.92, 0.89, 0.9], gaugeUncertaintyMm: 0.01 }],
        evidence: `Line between head and tail, crossing lines in the end grain seen through a lens; which elephant it came from is not known. No papers of an earlier sale. ${INVENTED}`, judgedBy: 'the workshop, by eye',
      },
    },
    { kind: 'paper', draft: { kind: 'material', material: 'wood:brazilian-rosewood', where: 'Veneer of the case', species: 'doubtful', isFinished: true, evidence: `Colour and smell speak for it, no sample was looked at. ${INVENTED}` } },
    { kind: 'paper', draft: { kind: 'material', material: 'wood:ebony-other', where: 'Tops of 36 sharps', species: 'doubtful', isFinished: true, evidence: `Dense, black throughout. ${INVENTED}` } },
    { kind: 'paper', draft: { kind: 'material', material: 'lead:key-weights', where: 'Keys, 2 to 4 a key in the bass', species: 'proven', massG: 3400, massHow: 'estimated', evidence: `Grey, soft, some with white bloom. ${INVENTED}` } },
    { kind: 'paper', draft: { kind: 'history', yearMade: 1926, yearEvidence: `Serial number and the invoice of the first owner. ${INVENTED}`, ivoryVolumePct: 0.05, isRepairedWithListedSince1973: null, isPlayedUntilRecently: true, evidence: `Where it stood from 1958 on is told by the second owner alone. ${INVENTED}` } },
  ];
}
