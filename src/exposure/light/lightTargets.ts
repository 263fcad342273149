import { log2Ratio } from '../core/numbers';
import { fail, isFail, type Result } from '../core/result';

/** One entry a light; undefined where there is none. */
type Lights = readonly (number | undefined)[];

/** Stops from the key of every light, those without any taken from what the lights read at present. */
function stopsKept(stops: Lights, readings: Lights): Result<Lights> {
  if (readings.length !== stops.length)
    return fail(
      'unreadable',
      `readings must be as many as the stops: ${readings.length} for ${stops.length}.`,
    );
  const key = stops.indexOf(0);
  if (key < 0)
    return fail(
      'unreadable',
      'stopsFromKey has no 0: type 0 in the key’s row, as the others keep their distance from it.',
    );
  const read = readings[key];
  if (read === undefined)
    return fail(
      'unreadable',
      `readings is blank for the key (number ${key + 1} of the list): the others keep their distance from it.`,
    );
  return stops.map((s, i) => {
    const present = readings[i];
    return s ?? (present === undefined ? undefined : 2 * log2Ratio(present, read));
  });
}

/**
 * What each light must read alone so that all together read the total: T·√(2^sᵢ/Σ2^sⱼ).
 *
 * @param total - f-number wanted of all together (above 0).
 * @param stopsFromKey - stops of each light from the key light (0 the key itself, −1 one stop less); undefined for no light,
 *   or with readings for the stops that it lies from the key at present.
 * @param readings - f-number that each light reads alone at present (above 0), undefined where it is not lit. The key is the
 *   first light with 0 stops, and must have a reading.
 * @returns f-numbers in the order of the stops, undefined for no light.
 */
export function lightTargets(total: number, stopsFromKey: Lights, readings?: Lights): Result<Lights> {
  const stops = readings === undefined ? stopsFromKey : stopsKept(stopsFromKey, readings);
  if (isFail(stops)) return stops;
  const lit = stops.filter((s) => s !== undefined);
  const strongest = lit.reduce((a, b) => Math.max(a, b), -Infinity);
  const all = lit.reduce((sum, s) => sum + 2 ** (s - strongest), 0);
  const targets = stops.map((s) =>
    s === undefined ? undefined : total * Math.sqrt(2 ** (s - strongest) / all),
  );
  if (targets.includes(0))
    return fail('domain', 'stopsFromKey lie too far apart: the weakest light would be nothing.');
  return targets;
}
