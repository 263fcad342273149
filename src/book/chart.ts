import type { Area } from '../formula/area';

export interface BookChart {
  readonly type: 'line' | 'column';
  readonly title: string;
  readonly xTitle: string;
  readonly yTitle: string;
  readonly x: Area;
  readonly series: readonly { readonly name: string; readonly values: Area }[];
  readonly place: Area;
}
