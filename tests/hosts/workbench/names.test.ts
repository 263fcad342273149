import { expect, test } from 'vitest';
import { workbookOf } from '../../../src/hosts/workbench/book/fromBook';

/** What the grid keeps of a name of a file. */
function kept(formula: string): string | undefined {
  const { resources } = workbookOf({ sheets: [], names: [{ name: 'Rate', formula }] });
  const data = resources?.find(({ name }) => name === 'SHEET_DEFINED_NAME_PLUGIN')?.data ?? '{}';
  const [name] = Object.values(JSON.parse(data) as Record<string, { formulaOrRefString: string }>);
  return name?.formulaOrRefString;
}

test.each(['Plan!$A$1', 'Plan!$A$1:$B$2', "'My sheet'!A1", "'It''s'!$A$1", 'Größe!$A$1'])(
  'a name for the cells %s is a reference',
  (text) => expect(kept(`=${text}`)).toBe(text),
);
test.each(['=0.05', '=SUM(Plan!A1)', '=Plan!A1+1', '=Plan!A:A', '=A1', '=[1]Plan!A1', '=Plan!A1#'])(
  'a name for %s is a formula',
  (formula) => expect(kept(formula)).toBe(formula),
);
