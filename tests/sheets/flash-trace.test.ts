import { describe, expect, test } from 'vitest';
import type { Block, TemplateTable, Template, TemplateValue } from '../../src/sheets/template';
import { exactly, twoTimes } from '../exposure/trace/shapes';
import { parseAddress } from '../../src/formula/address';
import { calculated as calculatedSheet, templateOf, type Typed, typedOver } from './support';

/**
 * The demo was drawn from this pulse: e^(−t/290 µs) − e^(−t/84 µs), its first light 0.4996 ms after the first sample, 2.38
 * high on a base of 0.036, with noise of 0.0055 (standard deviation). What is expected is worked out from the pulse alone.
 */
const PULSE = twoTimes(84e-6, 290e-6);
const BASE = 0.036;
const HEIGHT = 2.38;
const FOOT = 0.02;
const HELD_LEVELS = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];
const DURATION = 0.02;
const SHARE = 0.01;
const MOST_LETTERS = 105;

const flashTrace = templateOf('flash-trace');
type Sample = readonly [time: number, value: number];
const isTrace = (block: Block): block is TemplateTable => block.kind === 'table' && block.id === 'Trace';
const DEMO = flashTrace.blocks.find(isTrace)?.rows as unknown as readonly Sample[];

/** The template with other samples, and other inputs. */
const changed = (samples: readonly (readonly TemplateValue[])[], inputs: Typed = {}): Template =>
  typedOver(flashTrace, inputs, { Trace: samples });

async function calculated(template: Template, filled = true) {
  const { cell: of, column, errors } = await calculatedSheet(template, filled);
  return {
    of,
    column,
    remark: (id: string) => of(id, 2),
    lines: () => [1, 2, 3, 4, 5].map((k) => of(`says${k}`) as string),
    errors: () => errors,
  };
}
type Sheet = Awaited<ReturnType<typeof calculated>>;

const within = (found: unknown, wanted: number, part: number, what: string): void => {
  expect(typeof found, what).toBe('number');
  expect(Math.abs((found as number) / wanted - 1), `${what}: ${found} for ${wanted}`).toBeLessThan(part);
};
const near = (found: unknown, wanted: number, off: number, what: string): void => {
  expect(typeof found, what).toBe('number');
  expect(Math.abs((found as number) - wanted), `${what}: ${found} for ${wanted}`).toBeLessThan(off);
};

/** Stops lost by a shutter that closes so long after the trace came up through 2 % of its height. */
const lostAfter = (seconds: number): number =>
  -Math.log2(Math.min(1, PULSE.sum(PULSE.rise(FOOT) + seconds) / PULSE.total));

/** Opening after which so many stops are lost, by bisection. */
function openFor(stops: number): number {
  let [short, long] = [0, 1];
  for (let i = 0; i < 100; i++) {
    const middle = (short + long) / 2;
    if (lostAfter(middle) > stops) short = middle;
    else long = middle;
  }
  return long;
}

function durationsHold({ of }: Sheet): void {
  within(of('half'), exactly(PULSE, 0.5).width, DURATION, 't0.5');
  within(of('tenth'), exactly(PULSE, 0.1).width, DURATION, 't0.1');
}

describe('the demo recording gives what its pulse has', () => {
  test('durations, and their ratio', async () => {
    const sheet = await calculated(flashTrace);
    const { of } = sheet;
    durationsHold(sheet);
    within(of('halfPart'), 1 / exactly(PULSE, 0.5).width, DURATION, 't0.5 as a fraction');
    within(of('tenthPart'), 1 / exactly(PULSE, 0.1).width, DURATION, 't0.1 as a fraction');
    within(of('ratio'), exactly(PULSE, 0.1).width / exactly(PULSE, 0.5).width, DURATION, 'ratio');
  });

  test('shares of the light', async () => {
    const { of } = await calculated(flashTrace);
    near(of('insideHalf'), exactly(PULSE, 0.5).inside, SHARE, 'inside t0.5');
    near(of('afterHalf'), exactly(PULSE, 0.5).after, SHARE, 'after t0.5');
    near(of('insideTenth'), exactly(PULSE, 0.1).inside, SHARE, 'inside t0.1');
    near(of('afterTenth'), exactly(PULSE, 0.1).after, SHARE, 'after t0.1');
    near(of('below'), 1 - exactly(PULSE, 0.5).inside, SHARE, 'below the half line');
  });

  test('level by level', async () => {
    const { column } = await calculated(flashTrace);
    expect(column('Levels', 'Level')).toEqual(HELD_LEVELS);
    for (const [row, level] of HELD_LEVELS.entries()) {
      const { width, before, inside, after } = exactly(PULSE, level);
      within(column('Levels', 'Duration')[row], width, DURATION, `duration at ${level}`);
      near(column('Levels', 'Light before')[row], before, SHARE, `before ${level}`);
      near(column('Levels', 'Light inside')[row], inside, SHARE, `inside ${level}`);
      near(column('Levels', 'Light after')[row], after, SHARE, `after ${level}`);
    }
  });

  test('the shutter it takes, and what another one loses', async () => {
    const { of, remark, column } = await calculated(flashTrace);
    const delay = of('delay') as number;
    within(of('needed'), delay + openFor(0.1), DURATION, 'opening that loses a tenth of a stop');
    expect(of('open'), '1/500 is the mark of 2^-9 s').toBe(1 / 512);
    near(of('lost'), lostAfter(1 / 512 - delay), 0.02, 'lost at 1/500');
    expect(remark('lost')).toMatch(/^! .*cuts the tail/);
    for (const [row, stops] of (column('Openings', 'Lost') as number[]).entries())
      within(column('Openings', 'Open for')[row], delay + openFor(stops), DURATION, `lost ${stops}`);
  });

  test('the lines of the chart', async () => {
    const { of, column } = await calculated(flashTrace);
    near(of('dark'), BASE, 0.005, 'base');
    near(of('halfLine'), BASE + HEIGHT / 2, 0.01 * HEIGHT, 'half line');
    near(of('tenthLine'), BASE + HEIGHT / 10, 0.01 * HEIGHT, 'tenth line');
    expect(new Set(column('Trace', 'Half'))).toEqual(new Set([of('halfLine')]));
    expect(new Set(column('Trace', 'Tenth'))).toEqual(new Set([of('tenthLine')]));
    const [time, value] = DEMO[60] as Sample;
    near(column('Trace', 'Milliseconds')[60], 1000 * time, 1e-9, 'milliseconds');
    near(column('Trace', 'Height')[60], (value - BASE) / HEIGHT, 0.02, 'height');
  });

  test('nothing is doubtful about it', async () => {
    const { lines } = await calculated(flashTrace);
    expect(lines()).toEqual(['Nothing doubtful was found in this recording.', '', '', '', '']);
  });
});

test('empty, it shows neither results nor errors', async () => {
  const { of, column, lines, errors } = await calculated(flashTrace, false);
  expect(errors()).toEqual([]);
  for (const id of ['half', 'tenth', 'ratio', 'below', 'needed', 'open', 'lost', 'halfLine', 'note'])
    expect(of(id), id).toBe('');
  expect(lines()).toEqual(['', '', '', '', '']);
  for (const name of ['Milliseconds', 'Height', 'Half', 'Tenth'])
    expect(new Set(column('Trace', name)), name).toEqual(new Set(['']));
});

describe('another recording is pasted over the demo', () => {
  test('a clipped one shows its warning', async () => {
    const top = BASE + 0.6 * HEIGHT;
    const { lines } = await calculated(changed(DEMO.map(([t, v]) => [t, Math.min(v, top)])));
    expect(lines().join(' ')).toContain('the recording is clipped, or it is a square pulse.');
  });

  test('one that light lowers is measured alike', async () => {
    const sheet = await calculated(changed(DEMO.map(([t, v]) => [t, 5 - v])));
    durationsHold(sheet);
    near(sheet.of('insideHalf'), exactly(PULSE, 0.5).inside, SHARE, 'inside t0.5');
    near(sheet.of('halfLine'), 5 - BASE - HEIGHT / 2, 0.01 * HEIGHT, 'half line');
    near(sheet.column('Trace', 'Height')[0], 0, 0.02, 'height of the first sample');
    expect(sheet.errors()).toEqual([]);
  });

  test.each([1, -1])('one that starts on the flash has its base at its end (way up: %s)', async (way) => {
    const onFlash = DEMO.filter(([t]) => t > 0.00056).map(([t, v]) => [t, way * v]);
    const { of } = await calculated(changed(onFlash));
    near(of('dark'), way * BASE, 0.03, 'base');
    near(of('halfLine'), way * (BASE + HEIGHT / 2), 0.02 * HEIGHT, 'half line');
  });

  test('a longer one is counted to its last row', async () => {
    const step = (DEMO[1] as Sample)[0];
    const more = Array.from({ length: 200 }, (_, i) => [(DEMO.length + i) * step, BASE]);
    const sheet = await calculated(changed([...DEMO, ...more]));
    expect(sheet.of('samples')).toBe(DEMO.length + 200);
    durationsHold(sheet);
  });

  test('one that runs on below the table, where no table grows, is said', async () => {
    const below: TemplateTable = {
      kind: 'table',
      title: 'More samples',
      at: `A${(parseAddress(flashTrace.blocks.find(isTrace)?.at ?? '')?.row ?? 0) + DEMO.length + 3}`,
      id: 'More',
      columns: [{ id: 'Time', quantity: 'number' }],
      rows: [[0.0023], [0.0024], [0.0025]],
    };
    const { of, remark } = await calculated({ ...flashTrace, blocks: [...flashTrace.blocks, below] });
    expect(of('taken')).toBe(DEMO.length);
    expect(of('notCounted')).toBe(3);
    expect(remark('taken')).toBe('! samples stand below the table: drag its lower corner over them');
    const alone = await calculated(flashTrace);
    expect(alone.of('notCounted')).toBe(0);
    expect(alone.remark('taken')).not.toContain('!');
  });

  test('a base that is typed in counts for the shutter and the notes as well', async () => {
    const onFlash = DEMO.filter(([t]) => t > 0.00056);
    const found = await calculated(changed(onFlash));
    const typed = await calculated(changed(onFlash, { base: BASE - 0.2 }));
    expect(found.lines().join(' ')).toContain('base is unsure');
    expect(typed.lines().join(' ')).not.toContain('base is unsure');
    expect(typed.of('needed')).not.toBe(found.of('needed'));
  });

  test('a shorter one leaves blank rows, which do not count', async () => {
    const blank = Array.from({ length: 60 }, () => [null, null]);
    const kept = DEMO.slice(0, DEMO.length - 20);
    const sheet = await calculated(changed([...kept, ...blank]));
    expect(sheet.of('samples')).toBe(kept.length);
    durationsHold(sheet);
    expect(sheet.errors()).toEqual([]);
  });

  test('a time without a value is said', async () => {
    const [first, ...rest] = DEMO;
    const { of, remark } = await calculated(changed([[(first as Sample)[0], null], ...rest]));
    expect(of('halfFilled')).toBe(1);
    expect(remark('halfFilled')).toBe('! a time or a value is missing');
  });
});

describe('notes that are longer than a line', () => {
  /** No lead, few samples, a cut tail and a second flash: much is doubtful. */
  const poor = DEMO.filter(([t], i) => t > 0.0005 && t < 0.00115 && i % 3 === 0);
  test('go on in the next one, without losing a word', async () => {
    const { of, lines } = await calculated(changed(poor));
    const all = lines().filter((line) => line !== '');
    expect(all.length).toBeGreaterThan(2);
    expect(all.join(' ')).toBe(of('note'));
    for (const line of all) expect(line.length).toBeLessThanOrEqual(MOST_LETTERS);
  });

  test('end with three dots where the lines do not hold them', async () => {
    const times = poor.map(([t, v]) => [Math.floor(t * 2e4) / 2e4, Math.min(v, 1.2) - 40 * t]);
    const ring = times.map(([t, v], i) => [t as number, (v as number) * (i % 7 === 3 ? 0.04 : 1)]);
    const { of, lines } = await calculated(changed(ring));
    const whole = of('note') as string;
    expect(whole.length).toBeGreaterThan(5 * MOST_LETTERS);
    expect(lines().at(-1)).toMatch(/ …$/);
    expect(whole.startsWith(lines().join(' ').slice(0, -2))).toBe(true);
  });
});

describe('a base that is typed in', () => {
  const late = DEMO.filter(([t]) => t > 0.00048);
  test('is used where too few samples lie before the flash', async () => {
    const sheet = await calculated(changed(late, { base: BASE }));
    durationsHold(sheet);
    expect(sheet.of('dark')).toBe(BASE);
  });
  test('may be 0', async () => {
    const sheet = await calculated(
      changed(
        late.map(([t, v]) => [t, v - BASE]),
        { base: 0 },
      ),
    );
    expect(sheet.of('baseTaken')).toBe('zero');
    expect(sheet.of('dark')).toBe(0);
    durationsHold(sheet);
  });
  test('far off, shows in the durations', async () => {
    const { of } = await calculated(changed(DEMO, { base: BASE + HEIGHT / 4 }));
    within(of('half'), exactly(PULSE, 0.625).width, DURATION, 'half of what is above that base');
  });
});

describe('the shutter time that is typed in', () => {
  test('long enough, it is not warned of', async () => {
    const { of, remark } = await calculated(changed(DEMO, { shutter: '1/125' }));
    near(of('lost'), 0, 0.001, 'lost at 1/125');
    expect(remark('lost')).not.toMatch(/^!/);
  });
  test('much too short, it loses more than the table holds', async () => {
    const { of, remark } = await calculated(changed(DEMO, { shutter: '1/1000' }));
    expect(of('lost')).toBe('more than 3');
    expect(remark('lost')).toMatch(/^! .*cuts the tail/);
  });
  test('is measured against what may be lost', async () => {
    const { remark } = await calculated(changed(DEMO, { allowed: 0.5 }));
    expect(remark('lost')).not.toMatch(/^!/);
  });
  test('blank, nothing is said of it', async () => {
    const { of, remark } = await calculated(changed(DEMO, { shutter: null, delay: null, allowed: null }));
    expect(of('lost')).toBe('');
    expect(remark('lost')).not.toMatch(/^!/);
    within(of('needed'), openFor(0.1), DURATION, 'a tenth of a stop, no delay');
  });
});
