/** Lets a person choose a file; nothing where the choice is given up. */
export const chooseFile = (accept: string): Promise<File | undefined> =>
  new Promise((resolve) => {
    const input = Object.assign(document.createElement('input'), { type: 'file', accept });
    input.addEventListener('change', () => resolve(input.files?.[0]));
    input.addEventListener('cancel', () => resolve(undefined));
    input.click();
  });
