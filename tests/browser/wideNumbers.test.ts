import { describe, expect, it } from 'vitest';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
const take = (fresh: Workbench): void => {
  sheet = fresh;
};

describe('a number too wide for its cell', () => {
  allInOneWorkbook(take);

  it('is rounded, or shows that there is one: never its first digits alone', async () => {
    await sheet.page.evaluate(() => {
      const drawn: string[] = ((window as unknown as { drawn: string[] }).drawn = []);
      const { fillText } = CanvasRenderingContext2D.prototype;
      CanvasRenderingContext2D.prototype.fillText = function (text, ...rest) {
        drawn.push(text);
        fillText.call(this, text, ...rest);
      };
    });
    await sheet.enterDown('H5', [
      '123456789123456',
      '=123456789123456',
      '=1/3',
      '=2/3',
      '=SEQUENCE(2)*123456789123456',
    ]);
    await sheet.shows('H10', 246913578246912);
    await sheet.click('I12');
    const drawn = () => sheet.page.evaluate(() => (window as unknown as { drawn: string[] }).drawn.splice(0));
    await drawn();
    await sheet.enter('I13', 'x');
    await sheet.shows('I13', 'x');
    let texts: string[] = [];
    await expect
      .poll(async () => (texts = [...texts, ...(await drawn())]))
      .toEqual(expect.arrayContaining([expect.stringMatching(/^#{4,}$/)]));
    expect(texts.filter((text) => /^(123456789123456|246913578246912|0\.[36]{16})/.test(text))).toEqual([]);
    expect(texts).toEqual(expect.arrayContaining([expect.stringMatching(/^0\.3{5,}$/)]));
    expect(texts).toEqual(expect.arrayContaining([expect.stringMatching(/^0\.6{5,}7$/)]));
    // what the cell holds is all of it
    expect((await sheet.cell('H5')).value).toBe(123456789123456);
    expect((await sheet.cell('H5')).text).toBe('123456789123456');
  });
});
