/** Hands content to the browser's downloads. */
export function download(content: Uint8Array | string | Blob, name: string, type: string): void {
  const url = URL.createObjectURL(new Blob([content as Uint8Array<ArrayBuffer> | string | Blob], { type }));
  const link = Object.assign(document.createElement('a'), { href: url, download: name });
  link.click();
  // The browser has begun by then; at once would be too early for some.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
