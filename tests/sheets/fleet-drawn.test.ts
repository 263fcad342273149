import { expect, test } from 'vitest';
import { FULL, seedOf } from '../full';
import { openFleet } from './fleet';
import { drawnFrom, drawnJob, drawnModel, expectTrue } from './fleet-drawn';

const FLEETS = FULL ? 500 : 15;
const MOST_MODELS = 3;
/** Each takes a tenth of a second, and four times that on a machine with other work. */
const PATIENCE = 60_000 + FLEETS * 1000;

test(
  'every sentence of a verdict is made of the numbers of its row, and true',
  async () => {
    const said = new Map<string, number>();
    const sheet = await openFleet(MOST_MODELS, ['Further', 'Ways', 'Drawn']);
    for (let n = 0; n < FLEETS; n++) {
      const draw = drawnFrom(seedOf(24) * 10_000 + n);
      const job = drawnJob(draw);
      const models = Array.from({ length: draw.whole(1, MOST_MODELS) }, (_, i) => drawnModel(draw, `Model ${i + 1}`)); // prettier-ignore
      await sheet.type(models, { ...job, target: `${job.target} exact`, targetTenths: 0 });
      const columns = new Map<string, readonly unknown[]>();
      const of = (column: string): readonly unknown[] => {
        const known = columns.get(column) ?? sheet.read('Fleet', column);
        columns.set(column, known);
        return known;
      };
      for (const [i, model] of models.entries()) {
        const kind = expectTrue(String(of('Verdict')[i]), (column) => of(column)[i], model, job);
        said.set(kind, (said.get(kind) ?? 0) + 1);
      }
      const ranked = models.flatMap((_, i) => (of('State')[i] === 'ok' ? [Number(of('Cost')[i])] : []));
      const inOrder = sheet.read('Ranking', 'Job cost').filter((cost) => typeof cost === 'number');
      expect(inOrder).toEqual(ranked.sort((a, b) => a - b));
    }
    sheet.dispose();
    // kinds of sentences that were met, of every one in full
    const all = ['Draws too', 'Freezes', 'Freezes at', 'Not known', 'Too dark', 'Too slow'];
    expect(all.filter((kind) => said.has(kind)).length).toBeGreaterThanOrEqual(FULL ? all.length : 4);
  },
  PATIENCE,
);
