import { actionTermsSchema } from '#instrument';
import { textOf } from '#report';
import { languages } from '#text';
import { describe, expect, it } from 'vitest';
import { roomRecordSchema } from '#workshop';
import { sheetNames, sheets } from './index.ts';
import { careMaterial, demoRooms, grandTerms, leadedReadings, reading, sheetMaterial, strungReadings, toldPapers } from './testing/material.ts';

const uprightReadings = [0, 1].flatMap((colour) => ([['keyFrontMm', 225], ['keyBackMm', 99], ['wippenHeelMm', 60], ['wippenJackMm', 90], ['hammerMm', 142.9]] as const).map(([name, value]) => reading(name, colour, value, 'colour')));

const wood = { surface: 'wood-on-joists', own: null };

describe('sheets for the bench', () => {
  it.each(sheetNames.flatMap((name) => languages.map((language) => [name, language] as const)))('stands as golden text: %s, %s', async (name, language) => {
    await expect(`${textOf(sheets[name].document(sheetMaterial(language, name === 'drilling' ? { readings: leadedReadings } : name === 'tuning' ? { readings: strungReadings } : name === 'papers' ? { told: toldPapers() } : name === 'owner' || name === 'move' ? { care: careMaterial } : name === 'room' ? { rooms: demoRooms } : {})))}\n`).toMatchFileSnapshot(`./golden/${name}.${language}.txt`);
  });

  it('says why there is no sheet where nothing is asked and nothing read', () => {
    expect(sheets.regulation.nothing(sheetMaterial('en', { readings: [], action: null }))).toContain('nothing to put on a sheet');
    expect(sheets.regulation.nothing(sheetMaterial())).toBeUndefined();
  });

  it('leaves out of the owner’s sheet what nobody noted, and takes in the room', () => {
    const plain = textOf(sheets.owner.document(sheetMaterial()));
    expect(plain).toContain('No air was read yet');
    expect(plain).not.toContain('The room');
    const room = roomRecordSchema.parse({ id: 'r', at: '2026-01-01T12:00:00.000Z', cycle: 1, name: 'Parlour, invented', plan: { shape: 'box', lengthMm: 6000, widthMm: 4000 }, heightMm: 3000, floor: wood, ceiling: wood, walls: [wood, wood, wood, wood] });
    expect(textOf(sheets.owner.document(sheetMaterial('en', { rooms: [room] })))).toMatch(/The room[^]*Parlour, invented[^]*72/u);
    expect(sheets.move.nothing(sheetMaterial())).toContain('no move is noted');
  });

  it('asks no drop of an upright', () => {
    const { instrument } = sheetMaterial();
    const { rows } = sheets.regulation.table(sheetMaterial('en', { instrument: { ...instrument, kind: 'upright' } }));
    expect(rows.some(([, quantity]) => quantity === 'dropMm')).toBe(false);
  });

  it('lists springs and dampers of an upright, with the keys and what to do', () => {
    const { instrument } = sheetMaterial();
    const readings = [...uprightReadings, ...[40, 41, 42].map((key, index) => reading('springTorqueGMm', key, [60, 60, 300][index] ?? 0)), reading('damperG', 40, 25)];
    const text = textOf(sheets.regulation.document(sheetMaterial('en', { instrument: { ...instrument, kind: 'upright' }, readings, action: actionTermsSchema.parse({ buttMm: 20, tiltDeg: 15 }) })));
    expect(text).toMatch(/Spring strong[^\n]*1[^\n]*D4[^\n]*Weaken the spring/u);
    expect(text).toContain('median of its register');
    expect(text).not.toContain('Drop');
    expect(sheets.regulation.nothing(sheetMaterial('en', { instrument: { ...instrument, kind: 'upright' }, readings, action: null }))).toBeUndefined();
  });

  it('gives the dip that follows in full precision, the same whichever of the two it follows with', () => {
    const { rows } = sheets.regulation.table(sheetMaterial());
    const dip = rows.filter(([, quantity]) => quantity === 'dipMm');
    const ratio = (112.5 / 225) * (90 / 65) * (130 / 17);
    expect(dip).toHaveLength(6);
    expect(dip.find(([, , register, colour]) => register === 'middle' && colour === 'natural')?.[4]).toBeCloseTo(1 + ((45 - 1.5) / ratio + 0.3) * (238 / 225), 12);
    const blow = sheets.regulation.table(sheetMaterial('en', { action: actionTermsSchema.parse({ ...grandTerms, regulationFloats: 'blow', regulation: [{ register: 'middle', letOffMm: 1.5, aftertouchMm: 1, dipMm: Number(dip[2]?.[4]) }] }) }));
    expect(blow.rows.find(([, quantity]) => quantity === 'blowMm')?.[4]).toBeCloseTo(45, 10);
  });
});
