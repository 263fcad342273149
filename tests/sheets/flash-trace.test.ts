import { describe, expect, test } from 'vitest';
import type { Block, TemplateTable, Template, TemplateValue } from '../../src/sheets/template';
import { exactly, twoTimes } from '../exposure/trace/shapes';
import { parseAddress } from '../../src/formula/address';
import { planAlone } from '../../src/sheets/makePlan';
import { drawn } from '../full';
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
/** From the trigger to the rise of the light, in seconds. */
const DELAY = 0.0012;
const SHARE = 0.01;
const MOST_LETTERS = 70;
const LINES = 16;
/** Leaf shutters, in thirds of a stop: 1/60 stands for 1/64 s, and each mark for ∛2 less than the one before. */
const MARKS = ['1/60', '1/80', '1/100', '1/125', '1/160', '1/200', '1/250', '1/320', '1/400', '1/500', '1/640', '1/800', '1/1000', '1/1250', '1/1600', '1/2000']; // prettier-ignore
const opens = (mark: number): number => 2 ** -(6 + mark / 3);

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
    lines: () => Array.from({ length: LINES }, (_, k) => of(`says${k + 1}`) as string),
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
  within(of('half'), 1e6 * exactly(PULSE, 0.5).width, DURATION, 't0.5 in µs');
  within(of('tenth'), 1e6 * exactly(PULSE, 0.1).width, DURATION, 't0.1 in µs');
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
      within(column('Levels', 'Microseconds')[row], 1e6 * width, DURATION, `duration at ${level}`);
      near(column('Levels', 'Light before')[row], before, SHARE, `before ${level}`);
      near(column('Levels', 'Light inside')[row], inside, SHARE, `inside ${level}`);
      near(column('Levels', 'Light after')[row], after, SHARE, `after ${level}`);
    }
  });

  test('the shutter it takes, and what another one loses', async () => {
    const { of, remark } = await calculated(flashTrace);
    within(
      of('needed'),
      1000 * (DELAY + openFor(0.1)),
      DURATION,
      'opening that loses a tenth of a stop, in ms',
    );
    // 2.08 ms: 1/500 is 1.95, so the next longer mark
    expect(of('neededMark')).toBe('1/400 s');
    expect(remark('neededMark')).toBe('leaf; a focal plane only up to its sync speed');
    expect(of('open'), '1/500 is the mark of 2^-9 s').toBe(1000 / 512);
    near(of('lost'), lostAfter(1 / 512 - DELAY), 0.02, 'lost at 1/500');
    expect(remark('lost')).toBe('! this shutter cuts the tail: open longer');
  });

  test('the loss at every marked shutter speed', async () => {
    const { column } = await calculated(flashTrace);
    expect(column('Shutters', 'Shutter')).toEqual(MARKS);
    for (const [mark, name] of MARKS.entries()) {
      const open = opens(mark);
      const [lost, part, takes] = ['Lost', 'Light lost', 'Takes it'].map(
        (id) => column('Shutters', id)[mark],
      );
      near(column('Shutters', 'Milliseconds')[mark], 1000 * open, 1e-9, name);
      if (open <= DELAY) {
        expect([lost, part, takes], name).toEqual(['all', 1, 'no']);
        continue;
      }
      const stops = lostAfter(open - DELAY);
      // At 1/800 the shutter closes 30 µs after the first light, where a sample of 12 µs more or less is half of it.
      near(lost, stops, stops > 3 ? 1.2 : 0.02, `stops lost at ${name}`);
      near(part, 1 - 2 ** -stops, 0.02, `light lost at ${name}`);
      expect(takes, name).toBe(stops <= 0.1 ? 'yes' : 'no');
    }
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

  test('nothing is doubtful about it but levels near the top, which nothing is judged by', async () => {
    const { lines, of, remark } = await calculated(flashTrace);
    expect(lines().join(' ').trim()).toMatch(
      /^Nothing doubtful was found in this recording, but noise leaves durations from 0\.[89] of the height up unsure, that at 0\.9 by up to [3-6](\.\d)? %\.$/,
    );
    expect([of('doubtful'), remark('doubtful')]).toEqual(['none', 'about this recording']);
  });
});

test('empty, it shows neither results nor errors', async () => {
  const { of, column, lines, errors } = await calculated(flashTrace, false);
  expect(errors()).toEqual([]);
  for (const id of [
    'half',
    'tenth',
    'ratio',
    'below',
    'needed',
    'neededMark',
    'open',
    'lost',
    'halfLine',
    'note',
    'doubtful',
  ])
    expect(of(id), id).toBe('');
  expect(new Set(lines())).toEqual(new Set(['']));
  for (const name of ['Lost', 'Light lost', 'Takes it'])
    expect(new Set(column('Shutters', name)), name).toEqual(new Set(['']));
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
    expect(remark('taken')).toBe('! samples below the table: drag its corner');
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

  /** What the sheet says of samples that it does not measure, where no answer stands. */
  async function refused(samples: readonly (readonly TemplateValue[])[], inputs: Typed = {}) {
    const { of, column, remark, errors } = await calculated(changed(samples, inputs));
    for (const id of ['half', 'tenth', 'ratio', 'insideHalf', 'below', 'needed', 'lost'])
      expect(of(id), id).toBe('');
    for (const name of ['Microseconds', 'Light inside'])
      expect(new Set(column('Levels', name)), name).toEqual(new Set(['']));
    expect(new Set(column('Shutters', 'Lost'))).toEqual(new Set(['']));
    expect([of('doubtful'), errors().length]).toEqual(['yes', 0]);
    return remark('doubtful');
  }
  const [first, second, third, ...rest] = DEMO as readonly [Sample, Sample, Sample, ...Sample[]];

  test('a time without a value, or a value without a time, is said and not measured as 0', async () => {
    expect(await refused([[first[0], null], second, third, ...rest])).toBe(
      '! 1 row lacks its time or its value',
    );
    expect(await refused([first, [second[0], null], [null, third[1]], ...rest])).toBe('! 2 rows lack their time or their value'); // prettier-ignore
  });
  test('words among the numbers are said', async () => {
    expect(await refused([['s', 'V'], second, third, ...rest])).toBe('! 2 cells hold words, not a number');
    expect(await refused([[first[0], '0.4 V'], second, third, ...rest])).toBe(
      '! 1 cell holds words, not a number',
    );
  });
  test('two samples are none', async () => {
    expect(await refused([first, second])).toBe('! three samples at least');
  });
  test('a base that is no number is said', async () => {
    expect(await refused(DEMO, { base: 'dark' })).toBe('! the base cannot be read');
  });

  test('one over a longer one that is still there is told as two recordings', async () => {
    // New samples every 10 µs for 0.6 ms; the old ones go on from there at 0.744 ms.
    const times = DEMO.slice(0, 62).map(([, v], i) => [i * 1e-5, v]);
    const { lines, of, remark } = await calculated(changed([...times, ...DEMO.slice(62)]));
    expect(lines().join(' ')).toMatch(
      /Row 63 comes .* after the row before it, .*: are these two recordings in one\?/,
    );
    expect([of('doubtful'), remark('doubtful')]).toEqual(['yes', '! read What is doubtful first']);
  });
  test('one that is longer in time leaves old rows that are earlier, and nothing is told of it', async () => {
    const times = DEMO.slice(0, 62).map(([, v], i) => [i * 1e-4, v]);
    const { lines, of, column, errors } = await calculated(changed([...times, ...DEMO.slice(62)]));
    expect(lines().join(' ')).toContain('times must not fall: row 63 is earlier than row 62.');
    expect([of('half'), of('tenth'), of('needed'), of('lost'), of('ratio')]).toEqual(['not told', 'not told', 'not told', 'not told', '']); // prettier-ignore
    expect(new Set(column('Levels', 'Microseconds'))).toEqual(new Set(['not told']));
    expect(errors()).toEqual([]);
  });
  test('one that ends before a tenth of its height has no t0.1', async () => {
    // It stands at a quarter of its height after 0.6 ms.
    const { of, errors } = await calculated(changed(DEMO.filter(([t]) => t < 0.0011)));
    within(of('half'), 1e6 * exactly(PULSE, 0.5).width, DURATION, 't0.5');
    expect([of('tenth'), of('tenthPart'), of('ratio'), of('doubtful')]).toEqual(['not told', '', '', 'yes']);
    expect(errors()).toEqual([]);
  });
});

describe('notes that are longer than a line', () => {
  /** No lead, few samples, a cut tail and a second flash: much is doubtful. */
  const poor = DEMO.filter(([t], i) => t > 0.0005 && t < 0.00115 && i % 3 === 0);
  test('go on in the next one, without losing a word', async () => {
    const { of, lines } = await calculated(changed(poor));
    const all = lines().filter((line) => line !== '');
    expect(all.length).toBeGreaterThan(2);
    // Each doubt begins a line: what stands before its first word is the end of another sentence.
    for (const [i, line] of all.entries())
      if (/^[A-Z]/.test(line) && i > 0) expect(all[i - 1]).toMatch(/[.?]$/);
    expect(all.filter((line) => /[.?]$/.test(line)).length).toBe(
      (of('note') as string).match(/[.?]( |$)/g)?.length,
    );
    expect(all.join(' ')).toBe(of('note'));
    for (const line of all) expect(line.length).toBeLessThanOrEqual(MOST_LETTERS);
  });

  /** The sheet with other words in the place of what is doubtful. */
  const saying = (text: string): Template => ({
    ...flashTrace,
    blocks: flashTrace.blocks.map((block) =>
      block.kind === 'table'
        ? block
        : {
            ...block,
            fields: block.fields.map((field) =>
              field.id === 'note'
                ? { ...field, formula: `="${text.match(/.{1,200}/g)?.join('"&"')}"` }
                : field,
            ),
          },
    ),
  });
  const sentence = (i: number): string =>
    `Doubt ${i} has a few words at 0.5, and then it asks: is it so${i % 2 ? '?' : '.'}`;
  const some = (count: number): string[] => Array.from({ length: count }, (_, i) => sentence(i + 10));
  test('stand a line each, as long as the lines last', async () => {
    const { lines } = await calculated(saying(some(LINES).join(' ')));
    expect(lines()).toEqual(some(LINES));
  });
  test('end with three dots where the lines do not hold them', async () => {
    const { lines } = await calculated(saying(some(LINES + 2).join(' ')));
    expect(lines().slice(0, -1)).toEqual(some(LINES - 1));
    // 60 letters of the last, and as many words of the next as fit into 70
    expect(lines().at(-1)).toBe(`${sentence(LINES + 9)} Doubt ${LINES + 10} …`);
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
    within(of('half'), 1e6 * exactly(PULSE, 0.625).width, DURATION, 'half of what is above that base');
  });
});

describe('the shutter time that is typed in', () => {
  test('long enough, it is not warned of', async () => {
    const { of, remark } = await calculated(changed(DEMO, { shutter: '1/125' }));
    near(of('lost'), 0, 0.001, 'lost at 1/125');
    expect(remark('lost')).toBe('of the flash');
  });
  test('shorter than the delay, it loses all', async () => {
    const { of, remark } = await calculated(changed(DEMO, { shutter: '1/1000' }));
    expect([of('lost'), remark('lost')]).toEqual(['all', '! it closes before the flash begins']);
  });
  test('is measured against what may be lost', async () => {
    const { of, remark, column } = await calculated(changed(DEMO, { allowed: 0.5 }));
    expect(remark('lost')).toBe('of the flash');
    within(of('needed'), 1000 * (DELAY + openFor(0.5)), DURATION, 'half a stop');
    // 1/500 loses 0.16, 1/640 0.8 stop
    expect(column('Shutters', 'Takes it').filter((word) => word === 'yes')).toHaveLength(10);
  });
  test('blank, nothing is said of it', async () => {
    const { of, remark } = await calculated(changed(DEMO, { shutter: null, delay: null, allowed: null }));
    expect([of('lost'), remark('lost')]).toEqual(['', 'of the flash']);
    within(of('needed'), 1000 * openFor(0.1), DURATION, 'a tenth of a stop, no delay');
  });
  const WRONG: readonly (readonly [typed: Typed, said: string])[] = [
    [{ shutter: 'fast' }, 'the shutter time cannot be read'],
    [{ shutter: 46000 }, 'the shutter time cannot be read'],
    [{ shutter: 0 }, 'the shutter time cannot be read'],
    [{ delay: '3 m' }, 'the delay cannot be read'],
    [{ delay: 46000 }, 'the delay cannot be read'],
    [{ delay: '-1 ms' }, 'the delay cannot be read'],
    [{ allowed: 'little' }, 'what may be lost cannot be read'],
    [{ allowed: 46000 }, 'what may be lost cannot be read'],
    [{ allowed: -1 }, 'what may be lost must be above 0'],
    [{ allowed: 0 }, 'what may be lost must be above 0'],
  ];
  test.each(drawn(WRONG))('%o: no shutter is told, and why; the durations are', async (typed, said) => {
    const sheet = await calculated(changed(DEMO, typed));
    const { of, column, remark } = sheet;
    expect(remark('needed')).toBe(`! ${said}`);
    expect([of('needed'), of('neededMark'), of('lost')]).toEqual(['', '', '']);
    expect(new Set(column('Shutters', 'Lost'))).toEqual(new Set(['']));
    expect(new Set(column('Shutters', 'Takes it'))).toEqual(new Set(['']));
    durationsHold(sheet);
  });
});

describe('on paper', () => {
  test('samples do not print, and what prints is no wider than a page', () => {
    const top = parseAddress(flashTrace.blocks.find(isTrace)?.at ?? '')?.row ?? 0;
    const { area } = planAlone(flashTrace, true).sheet.page;
    expect((area?.row ?? 0) + (area?.rows ?? 0)).toBeLessThanOrEqual(top);
    // A column of n characters is (7n + 5) × ¾ points wide; an A4 page upright takes 520 at full size.
    const points = flashTrace.columns.slice(0, area?.columns).reduce((sum, n) => sum + (7 * n + 5) * 0.75, 0);
    expect(points).toBeLessThanOrEqual(520);
  });
  test('nothing stands below the samples, into which recordings are pasted', () => {
    const trace = flashTrace.blocks.find(isTrace);
    const { cells, charts } = planAlone(flashTrace, true).sheet;
    const top = parseAddress(trace?.at ?? '')?.row ?? 0;
    expect(Math.max(...cells.map(({ row }) => row))).toBe(top + 1 + DEMO.length);
    expect(charts.every(({ place }) => place.row + place.rows <= top)).toBe(true);
  });
  test('it is said once that a leaf shutter is meant', () => {
    expect(flashTrace.cautions.filter((line) => line.includes('leaf shutter'))).toHaveLength(1);
  });
});
