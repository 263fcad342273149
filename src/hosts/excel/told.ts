import type { Outcome } from '../../pane/host';
import { LayFailure } from './lay';
import { excelRefusal } from './refusals';

/**
 * What became of a wish, whether or not Excel broke off.
 *
 * @param kept - how the workbook is then, where the failure itself does not say
 */
export async function told(work: Promise<Outcome>, kept: string): Promise<Outcome> {
  try {
    return await work;
  } catch (error) {
    return error instanceof LayFailure
      ? { refused: excelRefusal(error.cause, error.kept) }
      : { refused: excelRefusal(error, kept) };
  }
}
