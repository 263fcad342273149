import { chooseFile } from './chooseFile';
import { download } from './download';
import { h } from './element';
import type { Outcome, SheetHost } from './host';
import type { OneAtATime } from './oneAtATime';
import { layNextShot, layRecordFile, recordFile, recordLights } from './records';
import { recordSaved } from './sentences';

async function save(host: SheetHost): Promise<Outcome> {
  const file = await recordFile(host);
  if ('refused' in file) return file;
  download(file.text, file.name, 'application/json');
  return { done: recordSaved(file.name, file.own) };
}

/** For a set that is asked for again: laid from its plan, for the next shot, and as a file. */
export function recordsView(host: SheetHost, work: OneAtATime): HTMLElement {
  const button = (label: string, wish: () => Promise<Outcome>) =>
    work.on(h('button', { type: 'button', class: 'plain' }, label), wish);
  return h(
    'p',
    { class: 'hint' },
    'To light a set again: ',
    button('Record these lights', () => recordLights(host)),
    ' ',
    button('Next shot', () => layNextShot(host)),
    ' As a file: ',
    button('Save the record', () => save(host)),
    ' ',
    button('Read a record', async () => layRecordFile(host, await chooseFile('.json,application/json'))),
  );
}
