type Method<Args extends unknown[], Result> = (this: object, ...args: Args) => Result;

/** Puts another in the place of a method that a library does not show. Throws where it has no such method. */
export function replaceMethod<Args extends unknown[], Result>(
  prototype: object,
  name: string,
  by: (original: Method<Args, Result>) => Method<Args, Result>,
): void {
  const methods = prototype as Record<string, unknown>;
  const original = methods[name];
  if (typeof original !== 'function')
    throw new Error(`There is no ${name} to mend: was the version of the library changed?`);
  methods[name] = by(original as Method<Args, Result>);
}
