import { afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { Workbench } from './workbench';

/** Where the grid must be taller than a window is, to have the cells of a test in sight. */
interface Size {
  readonly height?: number;
}
type Take = (sheet: Workbench) => void;

/** The page of this worker: to start over in it takes a fraction of a load. */
let page: Workbench | undefined;

async function newWorkbook({ height }: Size): Promise<Workbench> {
  if (page) {
    await page.page.emulateMedia({ colorScheme: null, forcedColors: null });
    await page.stretch(height);
    await page.startOver();
  } else {
    page = await Workbench.open();
    await page.stretch(height);
  }
  return page;
}

/** After a test that failed, or whose page complained, comes a new page. */
function giveUpWhereItFailed(): void {
  afterEach(async ({ task }) => {
    if (!page) return;
    const { complaints } = page;
    if (task.result?.state === 'fail' || complaints.errors.length + complaints.outside.length > 0) {
      await page.close();
      page = undefined;
    }
    expect(complaints).toEqual({ errors: [], outside: [] });
  });
}

/** Gives each test here a new workbook. */
export function eachItsWorkbook(take: Take, size: Size = {}): void {
  beforeEach(async () => take(await newWorkbook(size)));
  giveUpWhereItFailed();
}

/** Gives all tests here one new workbook: each works in cells of its own. */
export function allInOneWorkbook(take: Take, size: Size = {}): void {
  beforeAll(async () => take(await newWorkbook(size)));
  beforeEach(async () => {
    if (!page) take(await newWorkbook(size));
  });
  giveUpWhereItFailed();
}
