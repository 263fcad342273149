import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { CATALOGUE, NAMESPACE } from '../../../src/catalogue';
import { type AnyRow, type Arg, isChoice } from '../../../src/catalogue/types';
import { functionsJson, LOCAL_ORIGIN } from '../../../src/hosts/excel/metadata';

type Metadata = ReturnType<typeof functionsJson>;
type Loose = {
  functions: Record<string, unknown>[];
  enums: Record<string, unknown>[];
  [key: string]: unknown;
};

const metadata = (): Metadata => JSON.parse(JSON.stringify(functionsJson(CATALOGUE))) as Metadata;
const { functions, enums } = metadata();

/** Microsoft's own limits for custom functions: the JSON schema in its package for manifests (version 1.30), offline. */
function microsoftsCheck(): (file: unknown) => boolean {
  const require = createRequire(import.meta.url);
  const main = require.resolve('@microsoft/app-manifest');
  const schema = JSON.parse(
    readFileSync(join(dirname(main), 'json-schemas/teams/v1.30/MicrosoftTeams.schema.json'), 'utf8').replace(
      /^\uFEFF/,
      '',
    ),
  ) as { definitions: { extensionCustomFunctions: { properties: Record<string, object> } } };
  const { functions: functionsSchema, enums: enumsSchema } =
    schema.definitions.extensionCustomFunctions.properties;
  const fromMain = createRequire(main);
  const { default: Ajv } = fromMain('ajv-draft-04') as {
    default: new (options: object) => { compile(s: object): (file: unknown) => boolean };
  };
  const { default: addFormats } = fromMain('ajv-formats') as { default: (ajv: object) => void };
  const ajv = new Ajv({ strict: false });
  addFormats(ajv);
  return ajv.compile({
    definitions: schema.definitions,
    type: 'object',
    required: ['functions'],
    properties: { functions: functionsSchema, enums: enumsSchema },
  });
}
const fits = microsoftsCheck();

test('functions.json keeps to the limits that Microsoft publishes', () =>
  expect(fits(metadata())).toBe(true));

const long = (length: number): string => 'x'.repeat(length);
const first = (file: Loose) =>
  file.functions[0] as Record<string, unknown> & { parameters: Record<string, unknown>[] };
const broken: [string, (file: Loose) => void][] = [
  ['an id of two letters', (file) => (first(file).id = 'AB')],
  ['a name that starts with a digit', (file) => (first(file).name = '2STOPS')],
  ['a description of more than 1024 characters', (file) => (first(file).description = long(1025))],
  [
    'an argument described in more than 512 characters',
    (file) => ((first(file).parameters[0] ?? {}).description = long(513)),
  ],
  [
    'an argument with a name of more than 64 characters',
    (file) => ((first(file).parameters[0] ?? {}).name = long(65)),
  ],
  [
    'an argument that is neither one cell nor a range',
    (file) => ((first(file).parameters[0] ?? {}).dimensionality = 'vector'),
  ],
  ['help on an insecure page', (file) => (first(file).helpUrl = 'http://localhost/help.html')],
  ['a function that gives nothing', (file) => delete first(file).result],
  ['no functions', (file) => (file.functions = [])],
  ['a list of words of an unknown type', (file) => ((file.enums[0] ?? {}).type = 'words')],
  ['a list of words with an id of two letters', (file) => ((file.enums[0] ?? {}).id = 'AB')],
];
test.each(broken)('the check of the limits refuses %s', (_what, breakIt) => {
  const file = metadata() as unknown as Loose;
  breakIt(file);
  expect(fits(file)).toBe(false);
});

/** One-word names of the macro language of Excel 4, which a workbook still knows and a custom function must not take. */
const MACRO_NAMES = new Set(
  `ABSREF ACTIVATE ALERT APPTITLE ARGUMENT ARGUMENTS AXES BEEP BORDER BREAK CALCULATE CALL CALLER CLEAR CLOSE COMBINATION
  CONSOLIDATE COPY CUT DEFINE DELETE DEMOTE DEREF DIRECTORY DISPLAY DOCUMENTS DUPLICATE ECHO ELSE ENABLE ERROR EVALUATE EXEC
  EXECUTE EXTRACT FCLOSE FILES FILL FOPEN FOR FORMULA FPOS FREAD FREADLN FSIZE FULL FWRITE FWRITELN GOTO GRIDLINES GROUP HALT HELP
  HIDE HLINE HPAGE HSCROLL INITIATE INPUT INSERT JUSTIFY LEGEND LINKS LIST MESSAGE MOVE NAMES NEW NEXT NOTE OPEN OUTLINE OVERLAY
  PARSE PASTE PATTERNS PLACEMENT POKE PRECISION PRINT PROMOTE QUIT REFTEXT REGISTER RELREF REMOVE RENAME REPLACE REQUEST RESET
  RESTART RESULT RETURN RUN SAVE SCALE SELECT SELECTION SERIES SIZE SORT SPELLING SPLIT STEP STYLE TABLE TERMINATE TEXTREF UNDO
  UNGROUP UNHIDE UNREGISTER VIEW VLINE VOLATILE VPAGE VSCROLL WAIT WHILE WINDOWS WORKGROUP WORKSPACE ZOOM`.split(
    /\s+/,
  ),
);

/** What Excel, or the way it stores formulas, has against a name. */
function faultOf(name: string): string | undefined {
  if (!/^[A-Z][A-Z0-9]*$/.test(name)) return 'other characters than letters and digits';
  if (name.length < 3) return 'fewer than three letters';
  if (/^[A-Z]{1,3}\d+$/.test(name) || /^R\d*C\d*$/.test(name)) return 'the address of a cell';
  if (MACRO_NAMES.has(name)) return 'a name of the old macro language';
  return undefined;
}

test('every name is one that Excel takes', () => {
  for (const { id, name } of functions) {
    expect(faultOf(id), id).toBeUndefined();
    expect(name).toBe(id);
  }
  expect(new Set(functions.map(({ id }) => id)).size).toBe(functions.length);
  expect(functions.map(({ id }) => id)).toEqual(CATALOGUE.map(({ id }) => id));
  expect(faultOf(NAMESPACE)).toBeUndefined();
});

test.each([
  'EV100',
  'ISO100',
  'A1',
  'XFD1048576',
  'R1C1',
  'R',
  'RC',
  'RUN',
  'ECHO',
  'STEP',
  'AB',
  'STOP.DIFF',
  'STOP_DIFF',
  '2STOPS',
  'Stops',
])('the check of names refuses %s', (name) => expect(faultOf(name)).toBeDefined());

test('error cells are let through to the functions', () =>
  expect(metadata().allowErrorForDataTypeAny).toBe(true));

test('every argument takes anything, in a cell or a range, and every answer may spill', () => {
  for (const { id, parameters, result } of functions) {
    for (const parameter of parameters)
      expect(parameter, id).toMatchObject({ type: 'any', dimensionality: 'matrix' });
    expect(result, id).toEqual({ type: 'any', dimensionality: 'matrix' });
  }
});

test('arguments are those of the catalogue, required ones first, and none repeats', () => {
  for (const [i, row] of CATALOGUE.entries()) {
    const parameters = functions[i]?.parameters ?? [];
    const args = row.args as readonly Arg[];
    expect(parameters.map(({ name }) => name)).toEqual(args.map(({ name }) => name));
    expect(parameters.map(({ optional }) => optional ?? false)).toEqual(args.map(({ optional }) => optional));
    const firstOptional = parameters.findIndex(({ optional }) => optional);
    if (firstOptional >= 0)
      expect(
        parameters.slice(firstOptional).every(({ optional }) => optional),
        row.id,
      ).toBe(true);
    // Excel fails over repeating blocks of cells
    for (const parameter of parameters) expect(parameter, row.id).not.toHaveProperty('repeating');
  }
});

test('the words that Excel offers are those that the function reads', () => {
  const wanted = CATALOGUE.flatMap((row: AnyRow) =>
    (row.args as readonly Arg[]).flatMap(({ name, kind }) =>
      isChoice(kind) ? [[row.id, name, [...kind.choices]]] : [],
    ),
  );
  const offered = functions.flatMap(({ id, parameters }) =>
    parameters.flatMap(({ name, customEnumId }) =>
      customEnumId === undefined
        ? []
        : [
            [
              id,
              name,
              enums.find((list) => list.id === customEnumId)?.values.map(({ stringValue }) => stringValue),
            ],
          ],
    ),
  );
  expect(offered).toEqual(wanted);
  expect(enums.length).toBe(wanted.length);
  expect(wanted.length).toBeGreaterThan(0);
});

test('help is at its own place for each function, under the address of the build', () => {
  const help = (origin: string) => functionsJson(CATALOGUE, origin).functions.map(({ helpUrl }) => helpUrl);
  expect(help(LOCAL_ORIGIN)).toEqual(functions.map(({ helpUrl }) => helpUrl));
  expect(help('https://studio.example/sweep/')[0]).toBe(
    `https://studio.example/sweep/help.html#${CATALOGUE[0]?.id.toLowerCase()}`,
  );
});
