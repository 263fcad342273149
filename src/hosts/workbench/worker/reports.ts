import type { FailureReport } from '../../../engine/functions';

/** How the worker tells the page about failures, beside the grid's own traffic. */
interface ReportMessage {
  readonly sweepReport: FailureReport;
}

export const postReport = (sweepReport: FailureReport): void =>
  postMessage({ sweepReport } satisfies ReportMessage);

export function onReport(worker: Worker, take: (report: FailureReport) => void): void {
  worker.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
    if (isReportMessage(data)) take(data.sweepReport);
  });
}

const isReportMessage = (data: unknown): data is ReportMessage =>
  typeof data === 'object' && data !== null && 'sweepReport' in data;
