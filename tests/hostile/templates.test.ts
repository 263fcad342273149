import { expect, test } from 'vitest';
import { Report } from './report';
import { hostileTemplates } from './templates';

test('damaged templates are refused with file, place and reason, or make plans', () => {
  const report = new Report();
  hostileTemplates({ count: 25, seed: 1 }, report);
  expect(report.escapes).toEqual([]);
  expect(report.answers).toBeGreaterThan(3);
  expect(report.refusals).toBeGreaterThan(8);
});
