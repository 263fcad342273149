import type { BookSheet } from '../../book/book';
import { drawCharts } from './chart';
import { drawPage, drawView } from './page';

/** A part of a sheet that can fail and leave it right. */
interface Step {
  readonly isWanted: boolean;
  readonly queue: () => void;
  /** What is said where Excel cannot do it. */
  readonly failed: string;
  /** What is said where it did. */
  readonly done?: string;
}

const steps = (sheet: Excel.Worksheet, planned: BookSheet, isByHand: boolean): readonly Step[] => [
  {
    isWanted: planned.charts.length > 0,
    queue: () => drawCharts(sheet, planned),
    failed: 'Excel could not make its charts.',
  },
  {
    isWanted: true,
    queue: () => drawView(sheet, planned),
    failed: 'Excel could not keep its headings in view.',
  },
  {
    isWanted: true,
    queue: () => drawPage(sheet, planned),
    failed: 'Excel could not set up how it prints.',
  },
  {
    // Only then: where Excel calculates by itself it does so anyway (OfficeDev/office-js #3336, #6662).
    isWanted: isByHand,
    queue: () => sheet.calculate(true),
    failed: 'Excel calculates this workbook by hand: press F9 to see its numbers.',
    done: 'Excel calculates this workbook by hand: press F9 after you type.',
  },
];

/**
 * Makes what a sheet is as right without: charts, rows in view, print set-up, each a request of its own, as some machines cannot do
 * one of them (OfficeDev/office-js #2196, #2014). Gives what is to be said of it.
 */
export async function decorate(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  planned: BookSheet,
  isByHand: boolean,
): Promise<string[]> {
  const said: string[] = [];
  for (const { isWanted, queue, failed, done } of steps(sheet, planned, isByHand)) {
    if (!isWanted) continue;
    queue();
    const sentence = await context.sync().then(
      () => done,
      () => failed,
    );
    if (sentence !== undefined) said.push(sentence);
  }
  return said;
}
