/** A letter for each byte, a piece at a time: a call takes only so many arguments. */
export function base64(bytes: Uint8Array): string {
  let letters = '';
  for (let i = 0; i < bytes.length; i += 8192) letters += String.fromCharCode(...bytes.subarray(i, i + 8192));
  return btoa(letters);
}
