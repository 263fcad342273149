import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { CATALOGUE } from '../../../src/catalogue';
import { functionName } from '../../../src/catalogue/words';
import { calc as command } from '../../../src/hosts/command/calcCommand';
import { ran, spawned } from '../excel/support/command';

const calc = (args: readonly string[], input = '') => ran(command, args, input);
const jsonLines = (stdout: string): unknown[] =>
  stdout
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));

// Known answers: the scale of f-numbers; 2^(2·log2(45/16) + 1) is 16 pops at marks; 400·(2.1/1.5)²; and 2 m/s for
// 1/2000 s at 0.5 magnification, in pixels of 3.76 µm.
const FORMULAS = [
  '=SWEEP.STOPDIFF(8,11)',
  '=SWEEP.POPSFORTARGET(16,45,1)',
  '=SWEEP.POWERFORDISTANCE(400,1.5,2.1)',
  '=SWEEP.FREEZEBLUR(2,1/2000,0.5,3.76)',
];
/** With 15 digits, as spreadsheets have them: the last is 2/2000·0.5·1e6/3.76 = 132.978723404255319… */
const VALUES = [1, 16, 784, 132.978723404255];
const AS_JSON = FORMULAS.map(
  (formula, i) => `{"formula":${JSON.stringify(formula)},"value":${VALUES[i]}}\n`,
).join('');

describe('npm run calc', { timeout: 120_000 }, () => {
  test('answers on standard output, refuses beside it without the remarks of the engine, and exits with 1', () => {
    expect(spawned(['calc', ...FORMULAS, '=LAMBDA(A1:A5,1)'])).toEqual({
      status: 1,
      stdout: '1\n16\n784\n132.978723404255\n',
      stderr:
        '=LAMBDA(A1:A5,1): #NAME? The names that LET and LAMBDA give are words, and no cells: rate, not A1.\n',
    });
  });

  test('takes formulas from standard input', () => {
    expect(spawned(['calc', '--json'], { input: FORMULAS.join('\n') })).toEqual({
      status: 0,
      stdout: AS_JSON,
      stderr: '',
    });
  });

  test('says what it does not understand, and exits with 2', () => {
    expect(spawned(['calc', '--jsn', '=1'])).toEqual({
      status: 2,
      stdout: '',
      stderr: 'There is no option --jsn; there are --json, --help, --exact, --book, --sheet and --out.\n',
    });
  });
});

describe('calc', () => {
  // The command line keeps the engine's own remarks from its console: here it is this console.
  beforeEach(() => {
    vi.spyOn(console, 'warn').mockImplementation(() => {});
    vi.spyOn(console, 'error').mockImplementation(() => {});
  });
  afterEach(() => vi.restoreAllMocks());

  test('prints no digits that are not there, and all of them where they are asked for', async () => {
    // 3 by common practice, of which √2 in binary leaves 3.0000000000000004. A text is no number.
    const formulas = ['=SWEEP.LIGHTRATIO({11;16},8)', '=1/3*1E-9', '="3.0000000000000004"'];
    expect((await calc(formulas)).stdout).toBe('3\n5\n3.33333333333333e-10\n3.0000000000000004\n');
    expect(jsonLines((await calc(['--json', ...formulas])).stdout)).toEqual([
      { formula: formulas[0], value: [[3], [5]] },
      { formula: formulas[1], value: 3.33333333333333e-10 },
      { formula: formulas[2], value: '3.0000000000000004' },
    ]);
    const ratio = '=SWEEP.LIGHTRATIO(11,8)';
    expect((await calc(['--exact', ratio])).stdout).toBe('3.0000000000000004\n');
    expect((await calc([ratio, '--json', '--exact'])).stdout).toContain('"value":3.0000000000000004');
    expect((await calc([ratio])).stdout).toBe('3\n');
  });

  test('of whole columns prints what is used, and a list that was asked for to its end', async () => {
    const { status, stdout, stderr } = await calc(['=A:A', '=SEQUENCE(20000)']);
    const [first, ...others] = stdout.trimEnd().split('\n');
    expect([status, first, others.length, others.at(-1)]).toEqual([0, '0', 20_000, '20000']);
    expect(stderr).toBe('=A:A: only as far as there is something in the sheet.\n');
  });

  test('answers each formula in a line, with every digit', async () => {
    expect(await calc(FORMULAS)).toEqual({
      status: 0,
      stdout: '1\n16\n784\n132.978723404255\n',
      stderr: '',
    });
  });

  test('--json gives a line of JSON for each, from arguments or from standard input', async () => {
    expect(await calc(['--json', ...FORMULAS])).toEqual({ status: 0, stdout: AS_JSON, stderr: '' });
    expect(await calc(['--json'], FORMULAS.join('\n'))).toEqual({ status: 0, stdout: AS_JSON, stderr: '' });
    expect(await calc(['--json'], `${FORMULAS.join('\r\n\r\n')}\r\n`)).toEqual({
      status: 0,
      stdout: AS_JSON,
      stderr: '',
    });
  });

  test('--json tells a refusal in the same line and exits with 1', async () => {
    const { status, stdout, stderr } = await calc([
      '--json',
      '=SWEEP.STOPDIFF(-1,11)',
      '=SWEEP.STOPDIFF(8,16)',
      '=1/0',
    ]);
    expect(stdout).toBe(
      '{"formula":"=SWEEP.STOPDIFF(-1,11)","error":"#NUM!","message":"from must be above 0, not -1."}\n' +
        '{"formula":"=SWEEP.STOPDIFF(8,16)","value":2}\n' +
        '{"formula":"=1/0","error":"#DIV/0!","message":"Something is divided by zero, or by an empty cell."}\n',
    );
    expect({ status, stderr }).toEqual({ status: 1, stderr: '' });
  });

  test('tells a refusal on standard error, beside the answers', async () => {
    expect(await calc(['=SWEEP.STOPDIFF(8,16)', '=SWEEP.STOPDIFF(-1,11)', '=1+1'])).toEqual({
      status: 1,
      stdout: '2\n2\n',
      stderr: '=SWEEP.STOPDIFF(-1,11): #NUM! from must be above 0, not -1.\n',
    });
  });

  test('a spilled answer is rows of tabs, or an array of arrays', async () => {
    expect(await calc(['=SWEEP.STOPDIFF({4;8},{8,16})'])).toEqual({
      status: 0,
      stdout: '2\t4\n0\t2\n',
      stderr: '',
    });
    expect(await calc(['--json', '={1,"a";TRUE,0.1}'])).toEqual({
      status: 0,
      stdout: '{"formula":"={1,\\"a\\";TRUE,0.1}","value":[[1,"a"],[true,0.1]]}\n',
      stderr: '',
    });
    const shares = jsonLines((await calc(['--json', '=SWEEP.LIGHTSHARE({16;11;8})'])).stdout);
    expect(shares).toEqual([
      {
        formula: '=SWEEP.LIGHTSHARE({16;11;8})',
        value: [[expect.closeTo(4 / 7, 12)], [expect.closeTo(2 / 7, 12)], [expect.closeTo(1 / 7, 12)]],
      },
    ]);
  });

  test('a refused cell within a spill keeps its place, and is told once', async () => {
    const formula = '=SWEEP.STOPDIFF(8,{16;-1;-1})';
    const stderr = `${formula}: #NUM! to must be above 0, not -1.\n`;
    expect(await calc([formula])).toEqual({ status: 1, stdout: '2\n#NUM!\n#NUM!\n', stderr });
    const stdout = `{"formula":"${formula}","value":[[2],["#NUM!"],["#NUM!"]]}\n`;
    expect(await calc(['--json', formula])).toEqual({ status: 1, stdout, stderr });
  });

  test('numbers, texts and truths are plain; native functions mix in; the first = may be missing', async () => {
    const formulas = [
      'SWEEP.STOPDIFF(8,16)*10',
      '=1/3',
      '="f/"&SWEEP.STOPSHIFT(8,2)',
      '=2>1',
      'sum({1;2;3})',
      '=1=2',
    ];
    expect(await calc(formulas)).toEqual({
      status: 0,
      stdout: '20\n0.333333333333333\nf/16\nTRUE\n6\nFALSE\n',
      stderr: '',
    });
  });

  test('formulas do not see one another, nor themselves', async () => {
    expect(await calc(['=5', '=A1+1', '=SUM(A:A)', '=COUNTA(A1:Z99)'])).toEqual({
      status: 0,
      stdout: '5\n1\n0\n0\n',
      stderr: '',
    });
  });

  test.each([
    ['=SWEEP.STOPDIF(8,11)', '#NAME? There is no function SWEEP.STOPDIF. Did you mean SWEEP.STOPDIFF?'],
    ['=STOPDIFF(8,11)', '#NAME? There is no function STOPDIFF. Did you mean SWEEP.STOPDIFF?'],
    ['=SUMM(1)', '#NAME? There is no function SUMM. Did you mean SUM?'],
    ['=SWEEP.XYZXYZ(8)', '#NAME? There is no function SWEEP.XYZXYZ.'],
    ['=nothing', '#NAME? A name in the formula is not known here.'],
    [
      '=SUM(1,2',
      '#VALUE! This is not a whole formula: check its brackets, commas, signs and quotation marks.',
    ],
    ['=', '#VALUE! This is not a whole formula: check its brackets, commas, signs and quotation marks.'],
    ['=LAMBDA(A1:A5,1)', '#NAME? The names that LET and LAMBDA give are words, and no cells: rate, not A1.'],
    ['=INDEX({1;2},9)', '#REF! The formula points at cells that are not there.'],
    // 17 thousand million cells: the engine's memory ends long before.
    ['=SUM(A:XFD)', '#VALUE! The formula names more cells than ten whole columns have, and here all of them are empty: name fewer.'], // prettier-ignore
    ['=SUM($1:$9999,A:J)', '#VALUE! The formula names more cells than ten whole columns have, and here all of them are empty: name fewer.'], // prettier-ignore
    ['=(1:1)', '#SPILL! The answer has more cells than there is room for.'],
  ])('%s is refused in a sentence, without the remarks of the engine', async (formula, told) => {
    expect(await calc([formula])).toEqual({ status: 1, stdout: '', stderr: `${formula}: ${told}\n` });
  });

  test('--help lists every function, and explains one', async () => {
    const list = await calc(['--help']);
    expect(list.status).toBe(0);
    for (const row of CATALOGUE) expect(list.stdout).toContain(`${functionName(row)} `);
    for (const name of ['STOPDIFF', 'sweep.stopdiff']) {
      const { status, stdout } = await calc(['--help', name]);
      expect(status).toBe(0);
      for (const part of [
        'SWEEP.STOPDIFF(from, to, [scale])',
        'Formula: ',
        '=SWEEP.STOPDIFF(8,11)',
        'Sources:',
      ])
        expect(stdout).toContain(part);
    }
    expect(await calc(['--help', 'STOPDIF'])).toEqual({
      status: 1,
      stdout: '',
      stderr: 'There is no function SWEEP.STOPDIF. Did you mean SWEEP.STOPDIFF?\n',
    });
  });

  test('what it does not understand it says, and exits with 2', async () => {
    expect(await calc([])).toMatchObject({
      status: 2,
      stdout: '',
      stderr: expect.stringContaining('npm run calc -- '),
    });
    expect(await calc(['--json'])).toEqual({
      status: 2,
      stdout: '',
      stderr: 'There is no formula on standard input.\n',
    });
    expect(await calc(['--jsn', '=1'])).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('--json'),
    });
  });
});
