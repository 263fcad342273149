import { expect, test } from 'vitest';
import { FULL, seedOf } from '../full';
import { fleet } from './fleet';
import { drawnFrom, drawnJob, drawnModel, expectTrue } from './fleet-drawn';

/** For every commit a few fleets of some models; in full a thousand, which are smaller. */
const FLEETS = FULL ? 1000 : 8;

test('every sentence of a verdict is made of the numbers of its row, and true', async () => {
  const said = new Map<string, number>();
  for (let n = 0; n < FLEETS; n++) {
    const draw = drawnFrom(seedOf(24) * 10_000 + n);
    const job = drawnJob(draw);
    const models = Array.from({ length: draw.whole(1, FULL ? 2 : 8) }, (_, i) => drawnModel(draw, `Model ${i + 1}`)); // prettier-ignore
    const sheet = await fleet(models, { ...job, target: `${job.target} exact`, targetTenths: 0 }, [
      'Further',
      'Ways',
    ]);
    for (const [i, model] of models.entries()) {
      const kind = expectTrue(String(sheet.verdicts()[i]), (column) => sheet.of(i, column), model, job);
      said.set(kind, (said.get(kind) ?? 0) + 1);
    }
    const ranked = models.flatMap((_, i) => (sheet.of(i, 'State') === 'ok' ? [Number(sheet.of(i, 'Cost'))] : [])); // prettier-ignore
    expect(sheet.ranking('Job cost').filter((cost) => typeof cost === 'number')).toEqual(ranked.sort((a, b) => a - b).slice(0, 12)); // prettier-ignore
  }
  // kinds of sentences that were met, of every one in full
  const all = ['Draws too', 'Freezes', 'Freezes at', 'Not known', 'Too dark', 'Too slow'];
  expect(all.filter((kind) => said.has(kind)).length).toBeGreaterThanOrEqual(FULL ? all.length : 4);
});
