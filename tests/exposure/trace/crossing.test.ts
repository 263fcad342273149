import { describe, expect, it } from 'vitest';
import { type Crossing, crossingOf, inCell } from '../../../src/exposure/trace/crossing';
import type { Pulse } from '../../../src/exposure/trace/pulse';
import { expectNear } from '../support';
import { noiseFrom } from './shapes';
import { pulseOf, signalOf } from './signals';

interface Given {
  readonly level?: number;
  readonly noise?: number;
  /** First sample of the light. */
  readonly from?: number;
  /** Sample from which to look: the first of the light unless told. */
  readonly start?: number;
  /** The brightest sample unless told. */
  readonly peak?: number;
  /** Where the top is: at the peak unless told. */
  readonly top?: number;
  /** A second after each other from 0 unless told. */
  readonly times?: readonly number[];
}

const turnedRound = (list: readonly number[]): number[] => [...list].reverse();

/** With `way` −1 the trace turned round, which ends a second before 0. */
function pulseOn(values: readonly number[], given: Given, way: 1 | -1): Pulse {
  const { noise = 0, peak = values.indexOf(Math.max(...values)), top = peak, from = 0 } = given;
  const last = values.length - 1;
  const turned = (i: number): number => (way > 0 ? i : last - i);
  const times = given.times ?? values.map((_, i) => i);
  const signal = signalOf(way > 0 ? values : turnedRound(values), {
    times: way > 0 ? times : turnedRound(times.map((t) => -1 - t)),
  });
  return pulseOf(signal, {
    noise,
    peak: turned(peak),
    top: { height: 1, doubt: 0, at: turned(top), from: turned(top), to: turned(top), falls: 0 },
    from: way > 0 ? from : 0,
    to: way > 0 ? last : turned(from),
  });
}

/** The rise through a level, half of the height unless told. States that the fall of the trace turned round mirrors it. */
function rise(values: readonly number[], given: Given = {}): Crossing {
  const { level = 0.5, from = 0, start = from } = given;
  const last = values.length - 1;
  const came = crossingOf(pulseOn(values, given, 1), level, 1, start);
  const turned = crossingOf(pulseOn(values, given, -1), level, -1, last - start);
  expect(turned.seen).toBe(last - came.seen);
  expect(turned.place === undefined).toBe(came.place === undefined);
  if (came.place && turned.place) {
    expect(turned.place.cell).toBe(last - 1 - came.place.cell);
    expect(turned.place.time).toBeCloseTo(-1 - came.place.time, 9);
  }
  return came;
}

/** Where a trace passes the level: the cell, and the instant worked by hand. */
function expectAt({ place }: Crossing, cell: number, time: number): void {
  expect(place?.cell).toBe(cell);
  expect(place?.time).toBeCloseTo(time, 12);
}

describe('between two samples a level is passed', () => {
  it('on the straight line where samples are coarse', () => {
    const up = signalOf([0, 0.4, 1], { times: [1, 3, 4] });
    expect(inCell(up, 0.1, 0)).toEqual({ time: 1.5, cell: 0 });
    expectNear(inCell(up, 0.55, 1).time, 3.25);
    const down = signalOf([1, 0.4, 0], { times: [1, 3, 4] });
    expectNear(inCell(down, 0.7, 0).time, 2);
    expectNear(inCell(down, 0.1, 1).time, 3.75);
  });

  it('on the parabola where they are fine, at even steps or not, hollow or round, up or down', () => {
    const bow = 1e-4;
    for (const times of [
      [1, 2, 3, 4, 5, 6],
      [1, 2, 3.5, 4.5, 6, 6.5],
    ])
      for (const side of [1, -1])
        for (const round of [0, 1]) {
          const along = side > 0 ? times : turnedRound(times.map((t) => -t));
          const light = (t: number): number => (round === 0 ? bow * t * t : 1 - bow * t * t);
          const signal = signalOf(along.map(light), { times: along });
          for (const cell of [1, 2, 3]) {
            const from = along[cell] as number;
            const time = from + 0.3 * ((along[cell + 1] as number) - from);
            const place = inCell(signal, light(time), cell);
            expect(place.cell).toBe(cell);
            expect(place.time).toBeCloseTo(time, 9);
          }
        }
  });

  it('on the far side of a top that lies in the cell, from its very height at the first sample on', () => {
    for (const [top, wanted] of [
      [2.3, 2.6],
      [2, 2],
    ] as const) {
      const light = (t: number): number => 1 - 1e-4 * (t - top) ** 2;
      const signal = signalOf([0, 1, 2, 3, 4, 5].map(light), { times: [0, 1, 2, 3, 4, 5] });
      expect(inCell(signal, light(2), 2).time).toBeCloseTo(wanted, 9);
    }
  });

  it('nowhere else: a level beyond either of them is passed at its end of the cell', () => {
    const coarse = signalOf([0, 0.4, 1], { times: [1, 3, 4] });
    expect(inCell(coarse, -1, 0).time).toBe(1);
    expect(inCell(coarse, 0.6, 0).time).toBe(3);
    // a parabola that never comes up to the level
    const times = [-4, -3, -2, -1, 0, 1];
    const fine = signalOf(
      times.map((t) => 1 - 1e-4 * t * t),
      { times },
    );
    expect(inCell(fine, 1.001, 2).time).toBe(-1);
  });
});

describe('without noise', () => {
  it('the first crossing from the end of the light counts, whatever dips follow', () => {
    const came = rise([0, 0.2, 0.6, 0.3, 1, 0.2]);
    expect(came.seen).toBe(2);
    expectAt(came, 1, 1.75);
  });

  it('it is looked for from a later sample where that is asked', () => {
    const came = rise([0, 0.2, 0.6, 0.3, 1, 0.2], { start: 3 });
    expect(came.seen).toBe(4);
    expectAt(came, 3, 3 + 0.2 / 0.7);
  });

  it('a sample just at the level is the crossing', () => {
    for (const values of [
      [0, 0.5, 1],
      [0, 0.5, 0.5, 0.8, 1],
    ]) {
      const came = rise(values);
      expect(came.seen).toBe(1);
      expectAt(came, 0, 1);
    }
  });

  it('none is found where the light begins above the level, though it is dark before that', () => {
    expect(rise([0.6, 0.8, 1, 0.2])).toEqual({ place: undefined, seen: 0 });
    expect(rise([0.1, 0.6, 0.8, 1, 0.2], { from: 1 })).toEqual({ place: undefined, seen: 1 });
  });

  it('none is found beyond the peak', () => {
    expect(rise([0, 0.2, 0.4, 0.8], { peak: 2 })).toEqual({ place: undefined, seen: 2 });
  });
});

describe('a hump before more light', () => {
  // with this noise the light is up at 0.54, surely up at 0.62, and dark again at 0.34
  const noise = 0.02;

  it('is passed on its own side where it is dark again behind it', () => {
    const came = rise([0, 0.56, 0.33, 1], { noise });
    expect(came.seen).toBe(1);
    expectAt(came, 0, 0.5 / 0.56);
  });

  it('is part of the rise where the light keeps near the level', () => {
    expectAt(rise([0, 0.56, 0.35, 1], { noise }), 2, 2 + 0.15 / 0.65);
  });

  it('is passed as the parabola of its own side has it, of which nothing behind the crest is part', () => {
    // 6·10⁻⁴·t² up to 0.735 at 35 s; with twice the noise 0.5 lies between 0.42 and 0.58, and 0.18 is dark
    const side = Array.from({ length: 36 }, (_, t) => 6e-4 * t * t);
    expectAt(rise([...side, 0.5, 0.3, 0.15, 1], { noise: 0.04 }), 28, Math.sqrt(0.5 / 6e-4));
  });
});

describe('hysteresis', () => {
  // down at 0.25, up at 0.75, and surely up at 0.875
  const noise = 0.125;

  it('has the light up at twice the noise above the level, or half of what is left to the peak', () => {
    expect(rise([0, 0.53, 0.55, 1], { noise: 0.02 }).seen).toBe(2);
    const came = rise([0, 0.5, 0.7, 0.79, 0.81, 1], { noise: 0.2, level: 0.6 });
    expect(came.seen).toBe(4);
    expectAt(came, 1, 1.5);
  });

  it('looks for a dip as far as six times the noise above the level', () => {
    expectAt(rise([0, 0.2, 0.4, 0.55, 0.61, 0.45, 0.7, 1], { noise: 0.02 }), 5, 5.2);
    expectAt(rise([0, 0.2, 0.4, 0.55, 0.63, 0.45, 0.7, 1], { noise: 0.02 }), 2, 2 + 0.1 / 0.15);
  });

  it('looks for a dip no further than three quarters of what is left to the peak', () => {
    const [level, wide] = [0.6, 0.1];
    expectAt(rise([0, 0.2, 0.39, 0.82, 0.89, 0.39, 1], { level, noise: wide }), 5, 5 + 0.21 / 0.61);
    expectAt(rise([0, 0.2, 0.39, 0.82, 0.91, 0.39, 1], { level, noise: wide }), 2, 2 + 0.21 / 0.43);
  });

  it('takes the middle one of the crossings since the light lay twice the noise below, the inner of two', () => {
    expectAt(rise([0.2, 0.6, 0.4, 0.6, 0.4, 0.8, 1], { noise }), 2, 2.5);
    expectAt(rise([0.2, 0.6, 0.4, 0.8, 1], { noise }), 2, 2.25);
    expectAt(rise([0.2, 0.6, 0.8, 1], { noise }), 0, 0.75);
  });

  it('leaves out what came before the light lay so low, be it just so', () => {
    for (const low of [0.2, 0.25])
      expectAt(rise([0, 0.6, 0.45, 0.6, low, 0.8, 1], { noise }), 4, 4 + (0.5 - low) / (0.8 - low));
    // 0.26 is not low enough: three crossings
    expectAt(rise([0, 0.6, 0.45, 0.6, 0.26, 0.8, 1], { noise }), 2, 2 + 0.05 / 0.15);
  });

  it('counts steps that pass the level, not those that stay above or below', () => {
    expectAt(rise([0, 0.55, 0.65, 0.8, 1], { noise }), 0, 0.5 / 0.55);
    expectAt(rise([0, 0.3, 0.4, 0.8, 1], { noise }), 2, 2.25);
    expectAt(rise([0, 0.5, 0.5, 0.8, 1], { noise }), 0, 1);
  });

  it('counts as far as the light first comes back to the level after it was last low', () => {
    // up at the second sample, last low at the fifth and back at the sixth: three crossings, the middle one in cell 2
    expectAt(rise([0.2, 0.8, 0.45, 0.6, 0.25, 0.5, 0.4, 0.9, 1], { noise }), 2, 2 + 0.05 / 0.15);
  });

  it('takes a step over the level at the end of the light, where that lies not twice the noise below', () => {
    const came = rise([0.45, 0.6, 0.8, 1], { noise });
    expect(came.seen).toBe(2);
    expectAt(came, 0, 1 / 3);
  });

  it('finds none where the light begins at or above the level, though it dips after that', () => {
    for (const first of [0.6, 0.5])
      expect(rise([first, 0.4, 0.8, 1], { noise })).toEqual({ place: undefined, seen: 2 });
  });

  it('counts no crossing outside the light', () => {
    // without the first sample two crossings are left, and the inner one counts
    const values = [0, 0.6, 0.8, 0.45, 0.55, 0.25, 0.9, 1];
    expectAt(rise(values, { noise, from: 1 }), 5, 5 + 0.25 / 0.65);
    expectAt(rise(values, { noise }), 3, 3.5);
  });
});

/** Where the least-squares parabola through the samples up to `reach` from one, a second apart, passes a level (closed form). */
function parabolaAt(values: readonly number[], middle: number, reach: number, level: number): number {
  const count = 2 * reach + 1;
  const squares = (reach * (reach + 1) * count) / 3;
  const fourths = (squares * (3 * reach * reach + 3 * reach - 1)) / 5;
  const sum = (weight: (u: number) => number): number =>
    values
      .slice(middle - reach, middle + reach + 1)
      .reduce((all, value, k) => all + weight(k - reach) * value, 0);
  const plain = sum(() => 1);
  const slope = sum((u) => u) / squares;
  const bend = (count * sum((u) => u * u) - squares * plain) / (count * fourths - squares * squares);
  const base = (plain - bend * squares) / count - level;
  return middle - (2 * base) / (slope + Math.sign(slope) * Math.sqrt(slope * slope - 4 * bend * base));
}

describe('where noise spreads the crossing', () => {
  /** The steps of a ramp from 0 to 1, 1/32 each, but the one at half height 1/64 too high. */
  const ramp = Array.from({ length: 33 }, (_, i) => i / 32 + (i === 16 ? 1 / 64 : 0));
  const put = (at: number, value: number): number[] => ramp.map((x, i) => (i === at ? value : x));
  /** Where the straight line between the samples passes the level. */
  const straight = 15 + 2 / 3;

  it('a parabola is fitted to the samples within eight times the noise, where there are four on either side', () => {
    const noise = 1 / 64;
    const came = rise(ramp, { noise });
    expect(came.seen).toBe(17);
    const fitted = parabolaAt(ramp, 16, 4, 0.5);
    expect(Math.abs(fitted - straight)).toBeGreaterThan(0.1);
    expectAt(came, 15, fitted);
    expectAt(rise(put(20, 0.626), { noise }), 15, straight);
    expectAt(rise(put(12, 0.374), { noise }), 15, straight);
    expectAt(rise(ramp, { noise: 0.0155 }), 15, straight);
  });

  it('it takes as many on either side, though more are near on one of them', () => {
    const noise = 1 / 32;
    expectAt(rise(put(22, 0.8), { noise }), 15, parabolaAt(ramp, 16, 5, 0.5));
    expectAt(rise(put(9, 0.1), { noise }), 15, parabolaAt(ramp, 16, 6, 0.5));
    expectAt(rise(ramp, { noise }), 15, parabolaAt(ramp, 16, 8, 0.5));
  });

  it('it takes none beyond the end of the light or beyond the top', () => {
    const noise = 1 / 32;
    for (const reach of [4, 5, 6]) {
      const wanted = parabolaAt(ramp, 16, reach, 0.5);
      expectAt(rise(ramp, { noise, from: 16 - reach }), 15, wanted);
      expectAt(rise(ramp, { noise, top: 16 + reach }), 15, wanted);
    }
    expectAt(rise(ramp, { noise, top: 19 }), 15, straight);
  });

  it('the straight line stands where the parabola passes the level nowhere near', () => {
    const values = [0, 0.3, ...Array.from({ length: 10 }, () => 0.51), 0.55, 0.7, 1];
    expectAt(rise(values, { noise: 0.02 }), 1, 1 + 0.2 / 0.21);
  });

  it('the straight line stands where the samples have no time between them', () => {
    const times = ramp.map((_, i) => Math.min(i, 10) + Math.max(0, i - 22));
    expectAt(rise(ramp, { noise: 1 / 64, times }), 15, 10);
  });

  it('the parabola goes by the times of the samples, which may be uneven', () => {
    const times = Array.from({ length: 41 }, (_, i) => i + 0.4 * (i % 2) + 100);
    const light = (t: number): number => ((t - 100) / 40) ** 2;
    const came = rise(times.map(light), { noise: 0.02, times });
    expectAt(came, 28, 100 + 40 * Math.sqrt(0.5));
  });

  it.each([1, -1] as const)('it is as a plain search among all samples has it (way %i)', (way) => {
    const noise = 0.02;
    let apart = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const next = noiseFrom(seed);
      // from 0.17 on 0.012 a sample, bent a little
      const values = Array.from({ length: 60 }, (_, i) =>
        i < 8 ? 0 : 0.012 * i + 1e-4 * (i - 30) ** 2 + noise * next(),
      );
      const last = values.length;
      const order = [...values, 1];
      const seen = order.findIndex((x) => x >= 0.54);
      const inside = order.findIndex((x, i) => i >= seen && x >= 0.62);
      let outside = inside;
      while ((order[outside] as number) > 0.46) outside--;
      const along = way > 0 ? order : turnedRound(order);
      const turned = (i: number): number => (way > 0 ? i : last - i);
      const middle = Math.floor((turned(seen) + turned(outside)) / 2);
      const isNear = (x: number): boolean => Math.abs(x - 0.5) <= 8 * noise;
      let reach = 0;
      while (along.slice(middle - reach - 1, middle + reach + 2).every(isNear)) reach++;
      const time = parabolaAt(along, middle, reach, 0.5);
      const pulse = {
        signal: signalOf(along, { times: along.map((_, i) => i) }),
        noise,
        peak: turned(last),
        top: { at: turned(last) },
        from: 0,
        to: last,
      } as Pulse;
      const came = crossingOf(pulse, 0.5, way, turned(0));
      expect(came.seen).toBe(turned(seen));
      expectAt(came, Math.floor(time), time);
      if (Math.abs(time - middle) > 1) apart++;
    }
    expect(apart).toBeGreaterThan(2);
  });
});
