import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../full';
import { CATALOGUE, rowOf } from '../../src/catalogue';
import type { AnyRow } from '../../src/catalogue/types';
import { call } from '../../src/cells/call';

const run = (id: string, ...cells: readonly unknown[]): unknown => call(rowOf(id) as AnyRow, cells);
const number = (id: string, ...cells: readonly unknown[]): number => {
  const came = run(id, ...cells);
  if (typeof came !== 'number') throw new Error(`${id}: ${JSON.stringify(came)}`);
  return came;
};

describe('facts of the trade', () => {
  const power = fc.double({ min: 26, max: 790, noNaN: true });

  it.each([0.1, 1])(
    'power is set in steps of %d stop, counted down from full power (common practice, no source)',
    (step) => {
      fc.assert(
        fc.property(power, (wanted) => {
          const set = number('POWERFORREADING', wanted, 'f/8', 'f/8', step, 25, 800);
          const steps = Math.log2(800 / set) / step;
          expect(steps).toBeCloseTo(Math.round(steps), 8);
          expect(Math.abs(Math.log2(wanted / set))).toBeLessThanOrEqual(step / 2 + 1e-9);
        }),
        trials(101),
      );
    },
  );

  it('the tenths of an 800 Ws head are 800, 746, 696, 650, 606, 566, 528, 492, 459, 429, 400 Ws (common practice, no source)', () => {
    const settings = [800, 746, 696, 650, 606, 566, 528, 492, 459, 429, 400];
    for (const wanted of settings)
      expect(Math.round(number('POWERFORREADING', wanted, 8, 8, 0.1, 25, 800))).toBe(wanted);
  });

  it('each doubling of the pops adds one stop (common practice, no source)', () => {
    for (const pops of [1, 2, 4, 8, 16, 32]) {
      const [once, twice] = [number('POPSREADING', 16, pops), number('POPSREADING', 16, 2 * pops)];
      expect(2 * Math.log2(twice / once)).toBeCloseTo(1, 12);
      expect(number('POPSMISS', 16, 16, 2 * pops) - number('POPSMISS', 16, 16, pops)).toBeCloseTo(1, 12);
    }
  });

  it('two stops take four pops, three stops eight (common practice, no source)', () => {
    expect(run('POPSFORTARGET', 'f/16', 'f/32')).toBe(4);
    expect(run('POPSFORTARGET', 'f/16', 'f/45')).toBe(8);
  });

  it('f/8 with f/8 gives f/11 (common practice, no source)', () => {
    expect(run('STOPTEXT', run('LIGHTSUM', 8, 8))).toBe('f/11');
  });

  it('life size costs two stops, by bellows and by magnification (common practice, no source)', () => {
    expect(run('MAGNIFICATIONLOSS', '1:1')).toBe(2);
    expect(run('BELLOWSLOSS', 150, 300)).toBe(2);
    expect(run('STOPTEXT', run('METERTARGET', 'f/22', 0, 150, 300))).toBe('f/45');
  });

  it('the light at twice the distance is two stops less (common practice, no source)', () => {
    expect(run('FALLOFF', '1 m', '2 m')).toBe(2);
  });

  it('a key one stop over the fill lights 3:1, as the fill reaches both sides (common practice, no source)', () => {
    expect(number('LIGHTRATIO', 11, 8)).toBeCloseTo(3, 12);
  });

  it('the t0.1 of a decaying flash is about three times its t0.5 (common practice, no source)', () => {
    const times = number('FLASHLEVEL', 1, 0.5, 0.1);
    expect(times).toBeGreaterThan(3);
    expect(times).toBeLessThan(3.5);
  });

  it('half the light of a decaying flash is still to come at t0.5, a tenth at t0.1 (common practice, no source)', () => {
    expect(number('FLASHSHARE', '1 ms', 0.5, '1 ms exact')).toBeCloseTo(0.5, 12);
    expect(number('FLASHSHARE', '1 ms', 0.1, '1 ms exact')).toBeCloseTo(0.9, 12);
  });

  it('a shutter shorter than the flash loses light, the more the shorter (common practice, no source)', () => {
    const lost = ['1/125', '1/250', '1/500', '1/1000'].map((open) => number('FLASHCLIP', '1/250', 0.1, open));
    expect(lost).toEqual([...lost].sort((a, b) => a - b));
    expect(lost[0]).toBeLessThan(0.02);
    expect(lost[1]).toBeGreaterThan(0.1);
    expect(lost[3]).toBeGreaterThan(1);
    expect(number('SHUTTERFORFLASH', '1/250', 0.1)).toBeGreaterThan(1 / 250);
  });

  it('a week of hire costs three days (common practice, no source)', () => {
    expect(run('HIRECOST', 80, 7)).toBe(240);
    expect(run('HIRECOST', 80, 3)).toBe(240);
    expect(run('HIRECOST', 80, 8)).toBe(320);
  });
});

describe('advice of the trade that no sum can show stands with the functions it concerns', () => {
  const advice = (id: string): string => {
    const row = rowOf(id) as AnyRow;
    return `${row.notes ?? ''} ${row.caution ?? ''}`;
  };

  it.each(['FREEZEBLUR', 'FREEZETIME', 'FREEZEPOWER', 'CREEPTIME'])(
    '%s: a speed above the sync speed is theoretical with a focal-plane shutter (common practice, no source)',
    (id) => {
      expect(advice(id)).toMatch(/sync speed is theoretical with a focal-plane shutter/);
    },
  );

  it.each([
    'FREEZEBLUR',
    'FREEZETIME',
    'FREEZEPOWER',
    'CREEPTIME',
    'FLASHSHARE',
    'FLASHCLIP',
    'SHUTTERFORFLASH',
  ])('%s: a shutter shorter than the flash loses light (common practice, no source)', (id) => {
    expect(advice(id)).toMatch(/shutter shorter than the flash loses light/);
  });

  it.each(['FLASHLEVEL', 'FLASHSHARE', 'FLASHCLIP', 'SHUTTERFORFLASH'])(
    '%s: a real pulse has a rise, so that t0.1 is nearer to 2.6 than to 3.32 times t0.5 (common practice, no source)',
    (id) => {
      expect(advice(id)).toMatch(/real pulse rises first.*2\.6 times.*3\.32 times/);
    },
  );

  it('and so it lies between 2 times, for a rise as slow as the fall, and ln 10 / ln 2 (worked by hand)', () => {
    // t·e^(1 − t), the height 1 at t = 1: above a half from 0.232 to 2.678, above a tenth from 0.038 to 4.890.
    const light = (t: number): number => t * Math.exp(1 - t);
    for (const [t, level] of [
      [0.232, 0.5],
      [2.678, 0.5],
      [0.038, 0.1],
      [4.89, 0.1],
    ] as const)
      expect(light(t)).toBeCloseTo(level, 2);
    expect((4.89 - 0.038) / (2.678 - 0.232)).toBeCloseTo(2, 1);
    expect(advice('FLASHLEVEL')).toContain('2 times where it rises as slowly as it falls');
    expect(run('FLASHLEVEL', 1, 0.5, 0.1)).toBeCloseTo(3.32, 2);
  });

  it.each(['LIGHTSUM', 'LIGHTSHARE'])(
    '%s: where heads cannot be fired alone, the others are switched off to meter one (common practice, no source)',
    (id) => {
      expect(advice(id)).toMatch(/cannot be fired alone, switch the others off/);
    },
  );

  const popping = CATALOGUE.filter((row) => row.id.startsWith('POPS') && row.id !== 'POPSMISS').map(
    (row) => row.id,
  );
  it.each(popping)(
    '%s: repeated flashes can harm photosensitive people (common practice, no source)',
    (id) => {
      expect(advice(id)).toMatch(/photosensitive people/);
    },
  );

  it.each(popping)('%s: the maker limits the flashes in a row (common practice, no source)', (id) => {
    expect(advice(id)).toMatch(/the maker allows/);
  });

  it.each(['FLASHLEVEL', 'FLASHSHARE'])(
    '%s: a real head is no exact decay, and half the light of one comes after t0.5 (common practice, no source)',
    (id) => {
      expect(advice(id)).toMatch(/pulse that decays exponentially/);
      expect(advice(id)).toMatch(id === 'FLASHLEVEL' ? /nearer to 2\.6/ : /Half the light/);
    },
  );

  it('MAINSCURRENT: the plate, local codes and an electrician come first (common practice, no source)', () => {
    for (const word of ['inrush', 'plate', 'local codes', 'licensed electrician', 'lethal charge'])
      expect(advice('MAINSCURRENT')).toContain(word);
  });

  it('HIRECOST: the hire house has the last word (common practice, no source)', () => {
    expect(advice('HIRECOST')).toMatch(/common practice; ask the hire house/);
  });

  it('SPINSPEED: things that turn fast can come apart (common practice, no source)', () => {
    expect(advice('SPINSPEED')).toMatch(/come apart/);
  });
});
