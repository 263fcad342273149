/**
 * RATE in 0.25.1 goes astray from its first guess where the rate is far from it: =RATE(20,-200,800) is #NUM!, and the rate
 * is there. Here it is looked for on all of the line, nearest to the guess first, and halved down where the sign turns.
 *
 * The equation is that of Microsoft's page on PV: pv·(1+r)ⁿ + pmt·(1+r·type)·((1+r)ⁿ−1)/r + fv = 0. It is divided by (1+r)ⁿ,
 * which keeps it in range for long terms.
 */
import { type BaseValueObject, ErrorType, NumberValueObject } from '@univerjs/engine-formula';
import { toNumber } from './coerce';
import { executor, failed, isError, type Mended, overEach } from './nativeFunction';

type Six = readonly [
  terms: number,
  payment: number,
  present: number,
  future: number,
  type: number,
  guess: number,
];

/** What is left over of all payments at a rate, in today's money. */
function leftOver(each: number, [terms, payment, present, future, type]: Six): number {
  const shrunk = Math.exp(-terms * Math.log1p(each));
  const payments = Math.abs(each) < 1e-9 ? terms : -Math.expm1(-terms * Math.log1p(each)) / each;
  return present + payment * (1 + each * (type === 0 ? 0 : 1)) * payments + future * shrunk;
}

/** Rates to look at, from nearly −100 % to a million per cent, closer together around nothing. */
const RATES: readonly number[] = Array.from({ length: 961 }, (_, i) => Math.expm1((i - 480) / 50));

/** Where the sign turns between two rates, to the last digit. */
function halved(low: number, high: number, sum: (each: number) => number): number {
  const sign = Math.sign(sum(low));
  let [from, to] = [low, high];
  for (let i = 0; i < 200; i++) {
    const middle = (from + to) / 2;
    if (middle === from || middle === to) break;
    if (Math.sign(sum(middle)) === sign) from = middle;
    else to = middle;
  }
  return to;
}

function rateOf(given: Six): number | undefined {
  const [terms, , , , , guess] = given;
  if (!(terms > 0) || guess <= -1) return undefined;
  const sum = (each: number): number => leftOver(each, given);
  const found = RATES.slice(1).flatMap((high, i) => {
    const low = RATES[i] as number;
    const [before, after] = [sum(low), sum(high)];
    if (after === 0) return [high];
    return before * after < 0 ? [halved(low, high, sum)] : [];
  });
  return found.sort((a, b) => Math.abs(a - guess) - Math.abs(b - guess))[0];
}

const GUESS = 0.1;

function rate(...values: BaseValueObject[]): BaseValueObject {
  const numbers = values.map(toNumber);
  const wrong = numbers.find(isError);
  if (wrong) return wrong;
  const found = rateOf(numbers as unknown as Six);
  return found === undefined ? failed(ErrorType.NUM) : NumberValueObject.create(found, '0%');
}

const orElse = (value: BaseValueObject | undefined, standard: number): BaseValueObject =>
  !value || value.isNull() ? NumberValueObject.create(standard) : value;

export const RATE: readonly Mended[] = [
  [
    executor(3, 6, (terms, payment, present, future, type, guess) =>
      overEach(
        [
          terms as BaseValueObject,
          payment as BaseValueObject,
          present as BaseValueObject,
          orElse(future, 0),
          orElse(type, 0),
          orElse(guess, GUESS),
        ],
        rate,
      ),
    ),
    'RATE',
  ],
];
