/** What a number counts: on every scale but the aperture's, a doubling is one stop. */
export type Scale = 'aperture' | 'time' | 'iso' | 'energy' | 'factor';
export const SCALES: readonly Scale[] = ['aperture', 'time', 'iso', 'energy', 'factor'];

/** Stops in one doubling of the number: light goes with the square of the f-number. */
export const stopsPerDoubling = (scale: Scale): number => (scale === 'aperture' ? 2 : 1);
