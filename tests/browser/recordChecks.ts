import { describe, expect, it } from 'vitest';
import { downloaded } from './downloaded';
import type { OnHost, SheetsHost } from './newSheetsChecks';
import { status, tab } from './paneChecks';

const said = ({ page }: SheetsHost) => expect.poll(() => status(page).innerText(), { timeout: 20_000 });
const button = ({ page }: SheetsHost, name: string) => page.getByRole('button', { name, exact: true });

/** Lays a record of the demo's lights, by the buttons that a person presses. */
export async function recordLights(host: SheetsHost): Promise<void> {
  await tab(host.page, 'Sheets').click();
  await button(host, 'Insert with the demo job Lights on set').click();
  await said(host).toMatch('“Lights on set” is inserted');
  await button(host, 'Record these lights').click();
  await said(host).toMatch('It has the lights of “Lights on set” as they are now, without links');
}

/** Saves the record as a person does. */
async function saved(host: SheetsHost): Promise<{ readonly name: string; readonly text: string }> {
  const [download] = await Promise.all([
    host.page.waitForEvent('download'),
    button(host, 'Save the record').click(),
  ]);
  return { name: download.suggestedFilename(), text: (await downloaded(download)).toString('utf8') };
}

async function read(host: SheetsHost, text: string): Promise<void> {
  const [chooser] = await Promise.all([
    host.page.waitForEvent('filechooser'),
    button(host, 'Read a record').click(),
  ]);
  await chooser.setFiles({ name: 'a record.json', mimeType: 'application/json', buffer: Buffer.from(text) });
}

interface File {
  readonly sweeptable: string;
  readonly version: number;
  readonly set: Readonly<Record<string, unknown>>;
  readonly lights: readonly Readonly<Record<string, unknown>>[];
}

/** Files that are no record of this version, and what is said of each. */
const bad = (text: string): readonly (readonly [string, RegExp])[] => {
  const file = JSON.parse(text) as File;
  const other = (more: object): string => JSON.stringify({ ...file, ...more });
  return [
    [text.slice(0, text.length / 2), /damaged, or no shot record: it cannot be read/],
    [other({ lights: undefined }), /damaged: it has no list of lights/],
    [other({ version: file.version + 1 }), /written by a newer Sweeptable.*Update, then read it again/],
    [other({ version: 0 }), /is of version 0, which no Sweeptable has written/],
    [other({ lights: [{ ...file.lights[0], Wattage: 5 }] }), /light 1 has “Wattage”, which this Sweeptable does not know/],
    ['{"price": 12}', /no shot record of Sweeptable/],
    [text.padEnd(10_000_000, ' '), /has 10 MB, and a shot record less than one/],
  ]; // prettier-ignore
};

/** A record that is saved and read again, beside a damaged file. */
export async function checkSaving(host: SheetsHost): Promise<void> {
  await tab(host.page, 'Sheets').click();
  await button(host, 'Insert with the demo job Shot record').click();
  await said(host).toMatch('“Shot record” is inserted');
  const { text } = await saved(host);
  const before = await host.sheets();
  await read(host, text.slice(0, text.length / 2));
  await said(host).toMatch(/damaged, or no shot record: it cannot be read\. Nothing was changed\.$/);
  expect(await host.sheets()).toEqual(before);
  await read(host, text);
  await said(host).toMatch('“Shot record (2)” is inserted');
  expect((await saved(host)).text).toBe(text);
}

/** What holds for the buttons of a record, whatever spreadsheet the pane stands beside. */
export function checkRecords(on: OnHost): void {
  describe('a record of the lights', () => {
    it('is laid, saved, read back as it was unless the file is none of ours, and laid for the next shot', () =>
      on(async (host) => {
        const before = await host.sheets();
        await recordLights(host);
        const file = await saved(host);
        expect(file.name).toBe('Shot record.json');
        await said(host).toMatch('“Shot record.json” goes to your downloads');
        const { lights } = JSON.parse(file.text) as File;
        // as the demo of Lights on set has them
        expect(lights.map(({ Light, Shows, Reading, Tenths }) => [Light, Shows, Reading, Tenths])).toEqual([
          ['key', '1/2', 16, 5],
          ['fill', '8.5', 8, 9],
          ['rim', '25%', 11, 3],
          ['accent', '12.5%', 11, 1],
          ['background', '600', 11, 5],
          ['ambient', null, 2, 0],
        ]);
        const laidSoFar = await host.sheets();
        for (const [content, words] of bad(file.text)) {
          await read(host, content);
          await said(host).toMatch(words);
          await said(host).toMatch(/^Not done\. .*Nothing was changed\.$/);
        }
        expect(await host.sheets()).toEqual(laidSoFar);
        await read(host, file.text);
        await said(host).toMatch(/“Shot record \(2\)” is inserted.*“a record\.json”/);
        expect((await saved(host)).text).toBe(file.text);
        await button(host, 'Next shot').click();
        await said(host).toMatch(/“Shot record \(3\)” is inserted.*without its readings: meter each light/);
        const next = JSON.parse((await saved(host)).text) as File;
        expect(next.lights.map(({ Light, Shows, Reading }) => [Light, Shows, Reading])).toEqual(
          lights.map(({ Light, Shows }) => [Light, Shows, null]),
        );
        const laid = ['Lights on set', 'Shot record', 'Shot record (2)', 'Shot record (3)'];
        expect(await host.sheets()).toEqual([...before, ...laid]);
      }));

    it('is told where there is none, and where there are no lights', () =>
      on(async (host) => {
        await tab(host.page, 'Sheets').click();
        const before = await host.sheets();
        for (const [name, words] of [
          ['Record these lights', 'has lights to record'],
          ['Next shot', 'is a Shot record'],
          ['Save the record', 'is a Shot record'],
        ] as const) {
          await button(host, name).click();
          await said(host).toMatch(new RegExp(`^Not done\\..*${words}`));
        }
        expect(await host.sheets()).toEqual(before);
      }));
  });
}
