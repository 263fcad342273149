import { LocaleType } from '@univerjs/core';
import { UniverSheetsCoreWorkerPreset } from '@univerjs/preset-sheets-core/worker';
import { createUniver } from '../../../engine/create';
import { hearHere } from '../../../engine/failures';
import { executors } from '../../../engine/functions';
import '../../../engine/patches';
import { postReport } from './reports';
import { answerWhetherThere } from './signsOfLife';

answerWhetherThere();
hearHere(postReport);

/** The formula engine, off the page's thread. */
createUniver({ locale: LocaleType.EN_US, locales: { [LocaleType.EN_US]: {} } }, [
  UniverSheetsCoreWorkerPreset({ formula: { function: executors(postReport) } }),
]);
