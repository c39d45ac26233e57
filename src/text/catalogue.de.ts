import { first } from './first.de.ts';
import type { MessageKey } from './catalogue.en.ts';
import { action } from './de/action.ts';
import { actionTerms } from './de/action-terms.ts';
import { actionOperations } from './de/action-operations.ts';
import { belly } from './de/belly.ts';
import { bench } from './de/bench.ts';
import { bellyPage } from './de/belly-page.ts';
import { care } from './de/care.ts';
import { careSheets } from './de/care-sheets.ts';
import { careOperations } from './de/care-operations.ts';
import { cli } from './de/cli.ts';
import { operations } from './de/operations.ts';
import { leastWork } from './de/least-work.ts';
import { leads } from './de/leads.ts';
import { money } from './de/money.ts';
import { moneyOperations } from './de/money-operations.ts';
import { movement } from './de/movement.ts';
import { order } from './de/order.ts';
import { parts } from './de/parts.ts';
import { people } from './de/people.ts';
import { plan } from './de/plan.ts';
import { planningOperations } from './de/planning-operations.ts';
import { proof } from './de/proof.ts';
import { proofParts } from './de/proof-parts.ts';
import { readings } from './de/readings.ts';
import { recording } from './de/recording.ts';
import { regulation } from './de/regulation.ts';
import { upright } from './de/upright.ts';
import { room } from './de/room.ts';
import { roomOperations } from './de/room-operations.ts';
import { rescale } from './de/rescale.ts';
import { scale } from './de/scale.ts';
import { sheets } from './de/sheets.ts';
import { shop } from './de/shop.ts';
import { stockBook } from './de/stock-book.ts';
import { story } from './de/story.ts';
import { papers } from './de/papers.ts';
import { survey } from './de/survey.ts';
import { strings } from './de/strings.ts';
import { strokeOperation } from './de/stroke-operation.ts';
import { stringOperations } from './de/string-operations.ts';
import { tone } from './de/tone.ts';
import { touch } from './de/touch.ts';
import { toneCompass } from './de/tone-compass.ts';
import { toneMaps } from './de/tone-maps.ts';
import { tuning } from './de/tuning.ts';
import { tuningOperations } from './de/tuning-operations.ts';
import { tuningQuantities } from './de/tuning-quantities.ts';
import { work } from './de/work.ts';
import { worth } from './de/worth.ts';

/** Every German message, one file per area of the program. */
export const de: Readonly<Record<MessageKey, string>> = {
  ...first,
  ...people,
  ...care,
  ...careOperations,
  ...careSheets,
  ...shop,
  ...stockBook,
  ...parts,
  ...bench,
  ...readings,
  ...scale,
  ...tuningQuantities,
  ...operations,
  ...actionOperations,
  ...strokeOperation,
  ...planningOperations,
  ...toneCompass,
  ...toneMaps,
  ...tuning,
  ...tuningOperations,
  ...room,
  ...roomOperations,
  ...stringOperations,
  ...strings,
  ...rescale,
  ...leads,
  ...money,
  ...moneyOperations,
  ...movement,
  ...order,
  ...belly,
  ...bellyPage,
  ...recording,
  ...action,
  ...actionTerms,
  ...plan,
  ...regulation,
  ...upright,
  ...leastWork,
  ...sheets,
  ...tone,
  ...touch,
  ...work,
  ...worth,
  ...papers,
  ...survey,
  ...proof,
  ...proofParts,
  ...story,
  ...cli,
};
