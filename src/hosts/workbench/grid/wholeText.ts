import { Editor } from '@univerjs/preset-sheets-core';
import { replaceMethod } from '../../../engine/mends/replaceMethod';

/** What ends the only line of what is written. */
const END = '\r\n';

interface Written {
  readonly body?: {
    readonly dataStream: string;
    readonly paragraphs?: readonly { readonly startIndex: number }[];
  };
}

/**
 * Ctrl+A chooses all that is written into a cell, also where it has been put there, as what was refused is. The grid says of such
 * words that their line ends before the first letter, and chooses none of them. Call it before there is a grid.
 */
export function chooseAllWritten(): void {
  replaceMethod<[data: Written, ...unknown[]], void>(
    Editor.prototype,
    'setDocumentData',
    (original) =>
      function (data, ...more) {
        const { body } = data;
        const text = body?.dataStream.endsWith(END) ? body.dataStream.slice(0, -END.length) : '';
        const [line, another] = body?.paragraphs ?? [];
        const isOne = line?.startIndex === 0 && !another && text !== '' && !/[\r\n]/.test(text);
        const mended = isOne ? { ...body, paragraphs: [{ ...line, startIndex: text.length }] } : body;
        original.call(this, { ...data, body: mended } as Written, ...more);
      },
  );
}
