import { IDescriptionService } from '@univerjs/preset-sheets-core';
import { NAMESPACE } from '../../../catalogue';
import type { Grid } from './grid';
import { inside } from './inside';

/** The grid offers the first ten names that fit and drops the rest. Whoever types our namespace sees all that fit. */
export function offerEveryFunction(grid: Grid): void {
  const descriptions = inside(grid).get(IDescriptionService);
  const search = descriptions.getSearchListByNameFirstLetter.bind(descriptions);
  descriptions.getSearchListByNameFirstLetter = (typed) => {
    const found = search(typed);
    if (typed.trim().toUpperCase().startsWith(NAMESPACE)) found.slice = () => [...found];
    return found;
  };
}
