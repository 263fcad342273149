import { CATALOGUE } from '../catalogue';
import { type AnyRow, type Arg, type Example, FAMILIES, type Family } from '../catalogue/types';
import { argumentHelp, exampleFormula, resultText } from '../catalogue/words';
import { create } from './create';

/** The functions by family, in the order of the catalogue; each opens to its values and an example. */
export const functionList = (): HTMLElement[] =>
  (Object.entries(FAMILIES) as [Family, string][]).flatMap(([family, heading]) => {
    const rows = CATALOGUE.filter((row) => row.family === family);
    return rows.length === 0
      ? []
      : [create('h3', {}, heading), create('ul', { className: 'functions' }, ...rows.map(entry))];
  });

const entry = (row: AnyRow): HTMLElement =>
  create(
    'li',
    {},
    create(
      'details',
      { id: row.id.toLowerCase() },
      create(
        'summary',
        {},
        create('span', { className: 'name' }, row.id),
        create('span', { className: 'gives' }, row.gives),
      ),
      ...row.examples.slice(0, 1).map((shown) => example(row, shown)),
      create('dl', {}, ...row.args.flatMap(argument)),
      ...(row.caution === undefined ? [] : [create('p', { className: 'caution' }, row.caution)]),
    ),
  );

const example = (row: AnyRow, shown: Example): HTMLElement =>
  create(
    'p',
    { className: 'example' },
    create('code', {}, exampleFormula(row, shown)),
    ` gives ${[shown.gives].flat().join('; ')} (${resultText(row)})`,
  );

const argument = (arg: Arg): HTMLElement[] => [
  create(
    'dt',
    {},
    arg.name,
    ...(arg.optional ? [create('span', { className: 'optional' }, ' may be left out')] : []),
  ),
  create('dd', {}, argumentHelp(arg)),
];
