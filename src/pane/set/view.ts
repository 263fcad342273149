import { DOES_NOT_FOLLOW, type SetImage, setImage } from '../../set/setImage';
import type { SheetAsRead } from '../../set/sheetAsRead';
import { ON_PAPER } from '../../set/svg';
import { download } from '../download';
import { h } from '../element';
import type { Outcome, PictureHost } from '../host';
import type { OneAtATime } from '../oneAtATime';
import { watchTheme } from '../watchTheme';
import { FILE_WIDTH, imageAddress, pngOf } from './images';

const LEAST_WIDTH = 300;
const NO_PLACES =
  'The sheet in view has no places yet. They stand in a table with the columns Light, X, Y and Height, as in Shot record.';

const noSet = ({ unread }: SheetAsRead): string =>
  unread === undefined ? NO_PLACES : `${NO_PLACES} ${unread}`;

const fileName = (sheet: string, ending: string): string =>
  `${sheet.replace(/[\\/:*?"<>|]/g, ' ').trim() || 'Set'}.${ending}`;

export interface SetPanel {
  readonly element: HTMLElement;
  /** Reads the sheet in view and draws it, unless the picture is of it already. */
  readonly look: () => void;
}

/** The view *Set*: draws the set of the sheet in view, saves it as a file and puts it on the sheet. */
export function setPanel(host: PictureHost, work: OneAtATime): SetPanel {
  const image = h('img', { class: 'set-picture', alt: '' });
  const words = h('p', {});
  const inWords = h('details', {}, h('summary', {}, 'The same in words'), words);
  const none = h('p', { class: 'hint', role: 'status' });
  const shown = h('div', {}, image, inWords);
  shown.hidden = true;
  let drawnFor = '';
  let asked = 0;

  const show = ({ svg, said, width, height }: SetImage): void => {
    image.src = imageAddress(svg);
    image.alt = said;
    image.width = width;
    image.height = height;
    words.textContent = said;
  };

  const look = async (): Promise<void> => {
    const own = ++asked;
    const sheet = await host.readSheet();
    // another look has been asked for since, at a sheet that may be another
    if (own !== asked) return;
    // what has no size cannot be drawn to it
    shown.hidden = false;
    const width = Math.max(LEAST_WIDTH, shown.clientWidth);
    const { color: ink, backgroundColor: paper } = getComputedStyle(image);
    const wanted = JSON.stringify([sheet, width, ink, paper]);
    if (wanted === drawnFor) return;
    drawnFor = wanted;
    const made = 'refused' in sheet ? undefined : setImage(sheet, width, { ink, paper });
    shown.hidden = made === undefined;
    none.textContent = made ? '' : 'refused' in sheet ? sheet.refused : noSet(sheet);
    if (made) show(made);
  };

  /** With the picture as files and other sheets have it: black on white. */
  const withPicture =
    (wish: (picture: SetImage, sheet: SheetAsRead) => Promise<Outcome>, more: readonly string[] = []) =>
    async (): Promise<Outcome> => {
      const sheet = await host.readSheet();
      if ('refused' in sheet) return sheet;
      const made = setImage(sheet, FILE_WIDTH, ON_PAPER, more);
      return made ? wish(made, sheet) : { refused: noSet(sheet) };
    };
  const saved = (content: string | Blob, name: string, type: string): Outcome => {
    download(content, name, type);
    return { done: `“${name}” is saved to your downloads.` };
  };
  const saveSvg = withPicture(({ svg }, { name }) =>
    Promise.resolve(saved(svg, fileName(name, 'svg'), 'image/svg+xml')),
  );
  const savePng = withPicture(async ({ svg, width, height }, { name }) =>
    saved(await pngOf(svg, width, height), fileName(name, 'png'), 'image/png'),
  );
  const put = withPicture(
    ({ svg, said, width, height }, of) =>
      host.putPicture({ of, said, width, height, png: () => pngOf(svg, width, height) }),
    [DOES_NOT_FOLLOW],
  );

  watchTheme(() => void look());
  const button = (label: string, wish: () => Promise<Outcome>, kind = 'plain'): HTMLElement =>
    work.on(h('button', { type: 'button', class: kind }, label), wish);
  return {
    look: () => void look(),
    element: h(
      'div',
      {},
      h(
        'p',
        { class: 'hint' },
        'The set of the sheet in view from above and from the side, drawn from the places that are typed there. What is not known is not drawn, and said.',
      ),
      h(
        'p',
        { class: 'buttons first' },
        button('Put on the sheet', put, 'strong'),
        button('Save as SVG', saveSvg),
        button('Save as PNG', savePng),
      ),
      none,
      shown,
    ),
  };
}
