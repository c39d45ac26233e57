import { isQuantityName, quantityOf } from '#instrument';
import type { ImportPreview } from '#workshop';

/** True where a column of the file is read as weights: then it is asked how they were weighed. */
export function hasWeights({ columns }: Pick<ImportPreview, 'columns'>): boolean {
  return columns.some(({ mapsTo }) => {
    const [name = ''] = (mapsTo ?? '').split('#');
    return isQuantityName(name) && quantityOf(name).weighed;
  });
}
