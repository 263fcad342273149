import { expect, test } from 'vitest';
import { FULL, seedOf } from '../full';
import { drawnFrom } from './fleet-drawn';
import { light, type Light, openRecord } from './record';

const SETS = FULL ? 500 : 12;
const STOPS = [2.8, 4, 5.6, 8, 11, 16, 22, 32] as const;
const STEPS = [['0.1', 0.1], ['1/3', 1 / 3], ['1/2', 0.5], ['1', 1]] as const; // prettier-ignore

/** A reading as a meter shows it, so many tenths above f/2.8. */
const shown = (tenths: number, full: string, small: string): Light => ({
  [full]: STOPS[Math.floor(tenths / 10)] ?? null,
  [small]: tenths % 10,
});

test(
  'three lights of seven and more come back within half a step of their heads, of three to six to one common difference',
  async () => {
    const sheet = await openRecord(10);
    for (let n = 0; n < SETS; n++) {
      const draw = drawnFrom(seedOf(61) * 10_000 + n);
      const [name, step] = STEPS[draw.whole(0, 3)] as (typeof STEPS)[number];
      const count = draw.whole(3, 10);
      // What the meter adds to all, in tenths; and what three of the heads have more or less, within their range.
      const meter = draw.whole(-5, 5);
      const changed = Array.from({ length: count }, (_, i) =>
        i < 3 ? draw.whole(2, 9) * (draw.whole(0, 1) === 0 ? -1 : 1) : 0,
      );
      const lights = changed.map((change, i) => {
        const then = draw.whole(25, 45);
        // Two stops below full and four above least: whole steps of each dial.
        return light(`light ${i + 1}`, {
          Shows: '1/4', Step: name, Least: 9.375,
          ...shown(then, 'Reading', 'Tenths'), ...shown(then + meter + change, 'Today', 'Its tenths'),
        }); // prettier-ignore
      });
      await sheet.type(lights);
      const [then, today, powers] = ['Reads', 'Meters', 'Power then'].map((id) => sheet.read(id).map(Number)) as [
        number[], number[], number[],
      ]; // prettier-ignore
      // What each reads at its new power against what it read, in stops; 150 Ws is a quarter.
      const left = lights.map((_, i) => 2 * Math.log2((today[i] ?? 0) / (then[i] ?? 0)) + Math.log2((powers[i] ?? 0) / 150)); // prettier-ignore
      const common = Number(sheet.common());
      if (count >= 7) expect(common).toBeCloseTo(meter / 10, 9);
      // A tenth or less is no change.
      const off = left.map((stops) => Math.abs(stops - common));
      expect(Math.max(...off), `set ${n}, ${changed.join()} by ${name}`).toBeLessThanOrEqual(Math.max(count >= 7 ? step / 2 : Math.max(0.1, step / 2)) + 1e-9); // prettier-ignore
    }
    sheet.dispose();
  },
  60_000 + SETS * 1000,
);
