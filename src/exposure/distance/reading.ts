import { answer, fail, isFail, type Result } from '../core/result';

/**
 * Reading after a change of power, place or number of pops: N·√(n·P₂/P₁)·(d₁/d₂)·2^(−loss/2).
 *
 * @param reading - f-number now (above 0).
 * @param power - energy now, in Ws (above 0).
 * @param newPower - energy then, in Ws (above 0).
 * @param distance - metres now, with `newDistance` (above 0).
 * @param newDistance - metres then.
 * @param loss - stops lost between meter and film.
 * @param pops - pops then (a whole number from 1 up).
 * @returns f-number.
 */
export function readingForPower(
  reading: number,
  power: number,
  newPower: number,
  distance?: number,
  newDistance?: number,
  loss = 0,
  pops = 1,
): Result<number> {
  if ((distance === undefined) !== (newDistance === undefined)) {
    const missing = distance === undefined ? 'distance' : 'newDistance';
    return fail('unreadable', `${missing} is missing: give both distances, or neither.`);
  }
  const nearer = (distance ?? 1) / (newDistance ?? 1);
  return answer(reading * Math.sqrt(pops * (newPower / power)) * nearer * 2 ** (-loss / 2));
}

/**
 * Where to stand a light so that it reads the target, its power untouched.
 *
 * Point: d·N₁/N₂. Round diffuser of a width: √((d² + r²)(N₁/N₂)² − r²), measured from its front.
 *
 * @param distance - metres now (above 0).
 * @param reading - f-number now (above 0).
 * @param target - f-number wanted (above 0).
 * @param width - diameter of the light in metres (above 0).
 * @returns metres; a `no-answer` refusal where even contact is too little light.
 */
export function distanceForReading(
  distance: number,
  reading: number,
  target: number,
  width?: number,
): Result<number> {
  if (width === undefined) return answer(distance * (reading / target));
  const radius = width / 2;
  const change = (reading / target) ** 2;
  const square = distance ** 2 * change + radius ** 2 * (change - 1);
  if (square > 0) return answer(Math.sqrt(square));
  const contact = answer(reading * Math.hypot(distance / radius, 1));
  if (isFail(contact)) return contact;
  return fail(
    'no-answer',
    `target is out of reach: right at the light it would read f/${contact.toPrecision(3)}. It takes more power.`,
  );
}
