/** Pixels of a picture in files and on sheets: as wide as a page has room for words beside the lights. */
export const FILE_WIDTH = 1000;

/** An SVG text as the address of an image. */
export const imageAddress = (svg: string): string =>
  `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;

/** A picture of an SVG text in pixels, so many times as fine as it is large. */
export async function pngOf(svg: string, width: number, height: number, fine = 2): Promise<Blob> {
  const image = new Image(width, height);
  image.src = imageAddress(svg);
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = Math.ceil(width * fine);
  canvas.height = Math.ceil(height * fine);
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('This browser draws no pictures.');
  pen.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) => {
    canvas.toBlob(
      (blob) => (blob ? resolve(blob) : reject(new Error('The picture has no pixels.'))),
      'image/png',
    );
  });
}
