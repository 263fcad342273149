import { describe, expect, test } from 'vitest';
import type { EngineValue } from '../../src/engine/headless';
import type { Template, TemplateTable, TemplateValue } from '../../src/sheets/template';
import { TEMPLATES } from '../../src/sheets/templates';
import { drawn, FULL, oneOf } from '../full';
import { calculated, templateOf } from './support';
import { together } from './together';

const heads = templateOf('heads');
/** Sheets with columns that are looked up in Heads, and the table of each that has them. */
const LOOKING = TEMPLATES.flatMap((template) =>
  template.blocks.flatMap((block) =>
    block.kind === 'table' && block.columns.some(({ from }) => from?.table === 'Models')
      ? [[template, block] as const]
      : [],
  ),
);
const lookedUp = (table: TemplateTable) => table.columns.filter(({ from }) => from);

/** Sheets with cells of forms that are. */
const FORMS = TEMPLATES.flatMap((template) => {
  const fields = template.blocks.flatMap((block) => (block.kind === 'form' ? block.fields : []));
  const looking = fields.filter(({ from }) => from?.table === 'Models');
  return looking.length > 0 ? [[template.name, template, looking] as const] : [];
});

const ownedNames = heads.blocks.flatMap((block) =>
  block.kind === 'table' && block.id === 'Models' ? block.rows.map(([name]) => name) : [],
);
/** A sheet without the demo's models that are no row of Heads; ambient light has a name of its own. */
function withoutStrangers(template: Template, table: TemplateTable): Template {
  const isHere = (row: readonly TemplateValue[]): boolean =>
    ownedNames.includes(row[0] ?? null) || row.includes('ambient');
  const rows = table.rows.filter(isHere);
  return {
    ...template,
    blocks: template.blocks.map((block) => (block === table ? { ...table, rows } : block)),
  };
}

/** A workbook keeps nothing of an empty cell, and a formula of one gives an empty text; a 10 may be one or be written. */
const plain = (values: readonly EngineValue[]): EngineValue[] =>
  values.map((value) => (typeof value === 'number' ? String(value) : (value ?? '')));

test('some sheets look up in Heads', () => {
  expect(LOOKING.map(([{ id }]) => id)).toEqual(
    expect.arrayContaining(['freeze-check', 'lights-on-set', 'pops-plan']),
  );
});

const named = LOOKING.map(([template, table]) => [template.name, template, table] as const);

describe.each(drawn(named, 2))('%s beside Heads', (_, template, table) => {
  test('looks up what it would have typed, and answers alike', async () => {
    // what the studio does not own is no row of Heads: it is typed over there
    const owned = withoutStrangers(template, table);
    const alone = await calculated(owned);
    const book = await together([{ template: heads }, { template: owned }]);
    expect(book.errors()).toEqual([]);
    for (const { id, from } of lookedUp(table)) {
      const laid = book.plans[1]?.tables.find(({ name }) => name === table.id);
      expect(laid?.columns.find(({ name }) => name === id)?.formula, id).toContain(`Models[${from?.column}]`);
    }
    for (const block of owned.blocks)
      if (block.kind === 'table')
        // ambient light has a name, and is no head
        for (const { id } of block.columns.filter((column) => column.id !== 'Known'))
          expect(plain(book.column(block.id, id)), `${block.id} ${id}`).toEqual(
            plain(alone.column(block.id, id)),
          );
    book.dispose();
  });
});

// the kind is one and the same: all sheets in full
describe.each(FULL ? named : named.filter(([, { id }]) => id === 'pops-plan'))(
  '%s and Heads',
  (_, template, table) => {
    test('inserted before it has its own numbers', async () => {
      const book = await together([{ template }, { template: heads }]);
      const laid = book.plans[0]?.tables.find(({ name }) => name === table.id);
      const typed = lookedUp(table).filter(({ formula }) => formula === undefined);
      expect(typed.length).toBeGreaterThan(0);
      for (const { id } of typed)
        expect(laid?.columns.find(({ name }) => name === id)?.formula, id).toBeUndefined();
      expect(book.errors()).toEqual([]);
      book.dispose();
    });

    test('two of each look up in the first', async () => {
      const book = await together([
        { template: heads }, { template: heads }, { template }, { template },
      ]); // prettier-ignore
      for (const plan of book.plans.slice(2))
        for (const { formula } of plan.cells) expect(formula ?? '').not.toContain('Models_2[');
      expect(book.errors()).toEqual([]);
      expect(plain(book.column(`${table.id}_2`, 'Known'))).toEqual(plain(book.column(table.id, 'Known')));
      book.dispose();
    });

    test('empty beside a full list, and full beside an empty one, shows no error', async () => {
      for (const [filled, other] of [[true, false], [false, true]] as const) {
        const book = await together([{ template: heads, filled }, { template, filled: other }]);
        expect(book.errors()).toEqual([]);
        book.dispose();
      }
    }); // prettier-ignore
  },
);

test('some sheets look up in Heads for cells of their forms', () =>
  expect(FORMS.map(([, { id }]) => id)).toEqual(['depth-options', 'pops-build']));

test.each(FORMS)('%s beside Heads looks up what it would have typed, and answers alike', async (_, template, fields) => {
  const alone = await calculated(template);
  const book = await together([{ template: heads }, { template }]);
  const { planned } = book.form(1, template);
  for (const { id, from } of fields)
    expect(planned(id)?.formula, id).toContain(`INDEX(Models[${from?.column}],MATCH(IF(ISTEXT($`);
  for (const [r, row] of book.values(1).entries())
    for (const [c, value] of row.entries())
      expect(plain([value]), `${r + 1},${c + 1}`).toEqual(plain([alone.values(r, c)]));
  expect(book.plans[1]?.rules).toHaveLength(
    alone.plan.rules.length - fields.filter(({ accepts }) => accepts).length,
  );
  book.dispose();
}); // prettier-ignore

test.each(drawn(FORMS))('%s before Heads has its own numbers, and two of each look up in the first', async (_, template, fields) => {
  const book = await together([{ template }, { template: heads }, { template: heads }, { template }]);
  const [before, after] = [book.form(0, template), book.form(3, template)];
  const inputs = fields.filter(({ formula }) => formula === undefined);
  expect(inputs.length).toBeGreaterThan(1);
  for (const { id, value } of inputs) {
    expect(before.planned(id)).toMatchObject({ part: 'input', value });
    expect(before.planned(id)?.formula).toBeUndefined();
    expect(after.cell(id), id).toBe(value);
  }
  for (const { formula } of book.plans[3]?.cells ?? []) expect(formula ?? '').not.toContain('Models_2[');
  book.dispose();
}); // prettier-ignore

test.each(drawn(FORMS))('%s, empty beside a full list, and full beside an empty one, shows no error', async (_, template) => {
  for (const filled of [true, false]) {
    const book = await together([{ template: heads, filled: !filled }, { template, filled }]);
    expect(book.errors()).toEqual([]);
    // a list that has nothing has not the demo's head
    expect(book.form(1, template).words('head')).toBe(
      filled ? '! not in Heads, or its row there is not ready' : 'as Heads calls it, where that sheet is',
    );
    book.dispose();
  }
}); // prettier-ignore

describe('Lights on set follows Heads', () => {
  const says = (book: Awaited<ReturnType<typeof together>>, light: number) =>
    book.column('Turn', 'Note')[light - 1];

  test('in the head’s limits', async () => {
    const book = await together([{ template: heads }, { template: templateOf('lights-on-set') }]);
    // Half of 350 Ws at the reading that half of 600 gave: what is needed stays 0.687 stop below full, 7 tenths.
    await book.type('Models', 'Energy 1', 1, 350);
    await book.type('Models', 'Read at', 1, 350);
    await book.type('Models', 'Most', 1, 350);
    expect(book.column('Lights', 'Most')[0]).toBe(350);
    expect(book.column('Lights', 'Power then')[0]).toBeCloseTo(350 * 2 ** -0.7, 6);
    // a step of a third: 0.687 is 2 of them
    await book.type('Models', 'Step', 1, '1/3');
    expect(book.column('Lights', 'Power then')[0]).toBeCloseTo(350 * 2 ** (-2 / 3), 6);
    book.dispose();
  });

  test('a head that is not there, one whose row is not ready, and one that stands twice, are said', async () => {
    const book = await together([{ template: heads }, { template: templateOf('lights-on-set') }]);
    const unknown = 'not in Heads, or its row there is not ready';
    await book.type('Lights', 'Head', 1, 'Rowan 300');
    expect([says(book, 1), says(book, 2)]).toEqual([unknown, 'row 1 is not ready: unknown']);
    await book.type('Lights', 'Head', 1, 'Alder 600');
    expect(says(book, 1)).toBe('');
    await book.type('Models', 'Step', 1, null);
    expect(says(book, 1)).toBe(unknown);
    await book.type('Models', 'Step', 1, '0.1');
    await book.type('Models', 'Head', 2, 'Alder 600');
    // Birch has lost its name, and Alder has two rows
    expect([says(book, 1), says(book, 2)]).toEqual([unknown, unknown]);
    book.dispose();
  });

  test('ambient is no head, and need not be there', async () => {
    const book = await together([{ template: heads }, { template: templateOf('lights-on-set') }]);
    expect(book.column('Lights', 'Known')[5]).toBe('');
    expect(book.column('Lights', 'Lacks')[5]).toBe('');
    book.dispose();
  });
});

test('Heads, Pops plan and Set card join to one job, whichever is inserted before the next', async () => {
  const [plan, card] = [templateOf('pops-plan'), templateOf('set-card')];
  const book = await together([{ template: heads }, { template: plan }, { template: card }]);
  expect(book.errors()).toEqual([]);
  expect(book.column('Card', 'Set to').slice(0, 5)).toEqual(['1/1 −0.3', '9.3', '47 %', '20 %', '975 Ws']);
  // The key ends at 400 Ws now, half of which gave its reading: full power gives 9.5 stops above f/1 as before (see Pops plan).
  await book.type('Models', 'Energy 1', 1, 400);
  await book.type('Models', 'Energy 2', 1, 200);
  await book.type('Models', 'Read at', 1, 400);
  await book.type('Models', 'Most', 1, 400);
  expect(book.column('Card', 'Set to')[0]).toBe('1/1 −0.3');
  expect(book.column('Plan', 'Power then')[0]).toBeCloseTo(400 * 2 ** -0.3, 6);
  // a head that the list has lost stops the plan, and the card says so
  await book.type('Models', 'Head', 4, 'Rowan 300');
  expect(book.column('Dial', 'Note')[2]).toBe('not in Heads, or its row there is not ready');
  expect(book.column('Card', 'Set to').join('')).toBe('');
  expect(book.errors()).toEqual([]);
  book.dispose();
});

test.each([
  ['mains-plan', [['Load', 'Draws'], ['Circuits', 'Verdict'], ['SwitchOn', 'Head']]],
  ['fleet-compare', [['Ranking', 'Model'], ['Ranking', 'Rank'], ['Ranking', 'Job cost']]],
] as const)('the demo of %s answers as a whole beside Heads', async (id, answers) => {
  const template = templateOf(id);
  const alone = await calculated(template);
  const book = await together([{ template: heads }, { template }]);
  for (const [table, name] of answers)
    expect(plain(book.column(table, name)), name).toEqual(plain(alone.column(table, name)));
  book.dispose();
}); // prettier-ignore

/** Every two sheets, one after the other; for every commit those that look up, after what they look up in. */
const LOOKS = new Set([...LOOKING.map(([looks]) => looks), ...FORMS.map(([, looks]) => looks)]);
/** Those that have to do with one another; in full, of all others a part that each run draws anew. */
const PARTS = 4;
const PAIRS = TEMPLATES.flatMap((first) =>
  TEMPLATES.filter((second) => second !== first).map((second) => [first, second] as const),
).filter(
  (pair, i) =>
    ((FULL ? pair.includes(heads) : pair[0] === heads) && pair.some((one) => LOOKS.has(one))) ||
    (FULL && i % PARTS === oneOf(PARTS)),
);

test.each(PAIRS.map(([first, second]) => [first.name, second.name, first, second] as const))(
  '%s, then %s: no cell shows an error that it does not show alone',
  async (_one, _other, first: Template, second: Template) => {
    const book = await together([{ template: first }, { template: second }]);
    const alone = (await Promise.all([calculated(first), calculated(second)])).reduce(
      (sum, { errors }) => sum + errors.length,
      0,
    );
    expect(book.errors()).toHaveLength(alone);
    book.dispose();
  },
);
