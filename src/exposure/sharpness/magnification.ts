import { SLACK, spoken } from '../core/numbers';
import { answer, fail, type Result } from '../core/result';

/**
 * Magnification from the bellows draw or from the subject's distance, thin lens: (v − f)/f or f/(u − f).
 *
 * @param focal - focal length in mm (above 0).
 * @param draw - v, rear principal point to sensor in mm (not less than the focal length).
 * @param distance - u, subject to front principal point in mm (more than the focal length).
 * @returns image size over object size, 0 for a draw of the focal length.
 */
export function magnification(focal: number, draw?: number, distance?: number): Result<number> {
  if (draw !== undefined && distance !== undefined)
    return fail('unreadable', 'Give the draw or the distance, not both.');
  if (draw !== undefined) {
    if (draw >= focal * (1 - SLACK)) return answer(Math.max(0, (draw - focal) / focal));
    return fail(
      'domain',
      `draw must be at least the focal length, ${spoken(focal)} mm, not ${spoken(draw)} mm.`,
    );
  }
  if (distance === undefined) return fail('unreadable', 'draw is missing: give the draw or the distance.');
  if (distance > focal * (1 + SLACK)) return answer(focal / (distance - focal));
  return fail(
    'domain',
    `distance must be more than the focal length, ${spoken(focal)} mm, not ${spoken(distance)} mm.`,
  );
}

/**
 * Draw and subject distance for a magnification: v = f·(1 + m), u = f·(1 + 1/m).
 *
 * @param focal - focal length in mm (above 0).
 * @param wanted - image size over object size (above 0).
 * @returns draw and distance, both in mm.
 */
export function drawFor(focal: number, wanted: number): Result<readonly number[]> {
  return [focal * (1 + wanted), focal * (1 + 1 / wanted)];
}

/**
 * Magnification that shows a field of a width on a sensor of a width.
 *
 * @param field - width of the subject, in mm (above 0).
 * @param sensor - mm (above 0).
 */
export function fieldMagnification(field: number, sensor: number): Result<number> {
  return answer(sensor / field);
}
