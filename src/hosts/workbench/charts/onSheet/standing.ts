import type { FWorksheet } from '@univerjs/sheets/facade';
import type { Area } from '../../../../formula/area';
import type { SheetAsRead } from '../../../../set/sheetAsRead';
import { keptWith } from '../../book/keptWithSheet';
import { PictureFace } from '../../pictures/face';
import { sheetAsRead } from '../../pictures/readSheet';
import type { LiveChart } from '../liveChart';
import { liveCharts } from '../liveCharts';
import { Face } from './face';

/** A chart or picture of a sheet, with what its cells show now. */
export type OnSheet =
  | { readonly kind: 'chart'; readonly place: Area; readonly live: LiveChart }
  | { readonly kind: 'picture'; readonly place: Area; readonly live: SheetAsRead };

/** All that stands on a sheet: its charts, then its pictures. */
export function standingOn(sheet: FWorksheet): readonly OnSheet[] {
  const pictures = keptWith(sheet.getSheet().getConfig())?.pictures ?? [];
  const live = pictures.length > 0 ? sheetAsRead(sheet) : undefined;
  return [
    ...liveCharts(sheet).map(({ kept, live: chart }): OnSheet => ({
      kind: 'chart',
      place: kept.place,
      live: chart,
    })),
    ...pictures.flatMap(({ place }): OnSheet[] => (live ? [{ kind: 'picture', place, live }] : [])),
  ];
}

/** How something stands on the page. */
export interface Shown {
  readonly face: Face | PictureFace;
  tell(one: OnSheet): void;
}

export function shownAs(kind: OnSheet['kind']): Shown {
  if (kind === 'chart') {
    const face = new Face();
    return { face, tell: (one) => one.kind === 'chart' && face.tell(one.live) };
  }
  const face = new PictureFace();
  return { face, tell: (one) => one.kind === 'picture' && face.tell(one.live) };
}
