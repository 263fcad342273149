import loadHighs from 'highs';

/** The linear-programming library HiGHS, as compiled to WebAssembly. */
export type Highs = Awaited<ReturnType<typeof loadHighs>>;
export const highsLibrary = (): Promise<Highs> => loadHighs();
