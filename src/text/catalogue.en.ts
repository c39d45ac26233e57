import { first } from './first.en.ts';
import { action } from './en/action.ts';
import { actionTerms } from './en/action-terms.ts';
import { actionOperations } from './en/action-operations.ts';
import { belly } from './en/belly.ts';
import { bench } from './en/bench.ts';
import { bellyPage } from './en/belly-page.ts';
import { care } from './en/care.ts';
import { careSheets } from './en/care-sheets.ts';
import { careOperations } from './en/care-operations.ts';
import { cli } from './en/cli.ts';
import { operations } from './en/operations.ts';
import { leastWork } from './en/least-work.ts';
import { leads } from './en/leads.ts';
import { money } from './en/money.ts';
import { moneyOperations } from './en/money-operations.ts';
import { movement } from './en/movement.ts';
import { order } from './en/order.ts';
import { parts } from './en/parts.ts';
import { people } from './en/people.ts';
import { plan } from './en/plan.ts';
import { planningOperations } from './en/planning-operations.ts';
import { proof } from './en/proof.ts';
import { proofParts } from './en/proof-parts.ts';
import { readings } from './en/readings.ts';
import { recording } from './en/recording.ts';
import { regulation } from './en/regulation.ts';
import { upright } from './en/upright.ts';
import { room } from './en/room.ts';
import { roomOperations } from './en/room-operations.ts';
import { rescale } from './en/rescale.ts';
import { scale } from './en/scale.ts';
import { sheets } from './en/sheets.ts';
import { shop } from './en/shop.ts';
import { stockBook } from './en/stock-book.ts';
import { story } from './en/story.ts';
import { papers } from './en/papers.ts';
import { survey } from './en/survey.ts';
import { strings } from './en/strings.ts';
import { strokeOperation } from './en/stroke-operation.ts';
import { stringOperations } from './en/string-operations.ts';
import { tone } from './en/tone.ts';
import { touch } from './en/touch.ts';
import { toneCompass } from './en/tone-compass.ts';
import { toneMaps } from './en/tone-maps.ts';
import { tuning } from './en/tuning.ts';
import { tuningOperations } from './en/tuning-operations.ts';
import { tuningQuantities } from './en/tuning-quantities.ts';
import { work } from './en/work.ts';
import { worth } from './en/worth.ts';

/** Every English message, one file per area of the program. */
export const en = {
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
} as const;

/** A key of the message catalogue. */
export type MessageKey = keyof typeof en;
