import { compassOf } from '#instrument';
import { type Block, roomFactsOf } from '#report';
import { type PrintedTable, airOutlookOf, roomToldOf, tuningVisitsOf } from '#workshop';
import { type Sheet, type SheetMaterial, sheetDocument } from '../sheet.ts';
import { careBlocksOf } from './care-blocks.ts';
import { NO_CARE, planOf } from './care-material.ts';
import { climateBlocksOf } from './climate-blocks.ts';

/** Two pages for the owner: the room, its climate, the care. A part nobody stated is left out. */
export const ownerSheet: Sheet = {
  title: ({ say, instrument }) => say('sheet.owner.title', { name: instrument.name }),
  nothing: () => undefined,
  document: (material) => {
    const { say } = material;
    return sheetDocument(material, {
      title: ownerSheet.title(material), subtitle: say('sheet.owner.subtitle'), facts: [], isOfKeys: false,
      blocks: [...roomOf(material), ...climateBlocksOf(material), ...careBlocksOf(material)],
    });
  },
  table: tableOf,
};

/** The room noted first, in a few lines; nothing where none was noted, or it does not fit together. */
function roomOf(material: SheetMaterial): readonly Block[] {
  const { say, instrument, rooms: [room] = [] } = material;
  const told = room === undefined ? undefined : roomToldOf(room, instrument);
  return told === undefined ? [] : [{ type: 'heading', level: 1, text: say('sheet.owner.room') }, ...roomFactsOf(told, compassOf(instrument), material)];
}

/** Figures of the air, the tunings to come and the wear, in full precision. */
function tableOf(material: SheetMaterial): PrintedTable {
  const { care = NO_CARE } = material;
  const { start, wear, plan } = planOf(material);
  const outlook = airOutlookOf(care.air, start.plan);
  const air = outlook === undefined ? [] : [['humidityPct', outlook.humidity.least, outlook.humidity.most], ['moisturePct', outlook.moisture.least, outlook.moisture.most], ...(outlook.temperature === undefined ? [] : [['temperatureC', outlook.temperature.least, outlook.temperature.most]])];
  const visits = plan === undefined ? [] : tuningVisitsOf(start, 4).map((day) => ['tuning', day, day]);
  return { header: ['what', 'from', 'to'], rows: [...air, ...visits, ...wear.map((row) => [row.life.part, row.dueFrom ?? '', row.dueTo ?? ''])] };
}
