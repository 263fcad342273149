import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { MANIFEST_LEVEL } from './support/laid';

const FOLDER = 'src/hosts/excel';
const OFFICE_TYPES = /@types\/office-js/;

/** The level at which a member came, as Microsoft's types tell it above its declaration. */
function levelOf(declaration: ts.Declaration): string | undefined {
  const { text } = declaration.getSourceFile();
  const comment = text.slice(declaration.getFullStart(), declaration.getStart());
  return [...comment.matchAll(/\[Api set: (\w+ [\d.]+)/g)].at(-1)?.[1];
}

/** Every member of the Excel library that some files use, with its level. */
function membersUsed(files: readonly string[]): Map<string, string> {
  const config = ts.readConfigFile('tsconfig.json', ts.sys.readFile).config as unknown;
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, '.');
  const program = ts.createProgram([...files], options);
  const checker = program.getTypeChecker();
  const found = new Map<string, string>();

  const note = (symbol: ts.Symbol | undefined): void => {
    for (const declaration of symbol?.declarations ?? []) {
      if (!OFFICE_TYPES.test(declaration.getSourceFile().fileName)) continue;
      const owner = (declaration.parent as { name?: { text?: string } }).name?.text ?? '';
      const level = levelOf(declaration);
      if (level) found.set(`${owner}.${symbol?.name}`, level);
    }
  };
  /** What may stand at a place: of an argument, in every form that its method has. */
  const wantedAt = (node: ts.StringLiteral): readonly (ts.Type | undefined)[] => {
    const { parent } = node;
    if (!ts.isCallExpression(parent)) return [checker.getContextualType(node)];
    const index = parent.arguments.indexOf(node);
    return checker
      .getTypeAtLocation(parent.expression)
      .getCallSignatures()
      .flatMap(({ parameters }) => parameters[index] ?? [])
      .map((parameter) => checker.getTypeOfSymbol(parameter));
  };
  /** A word such as 'Landscape' stands for a member of one of Excel's lists of words. */
  const noteWord = (node: ts.StringLiteral): void => {
    for (const wanted of wantedAt(node))
      for (const type of wanted?.isUnion() ? wanted.types : [wanted])
        if (
          type &&
          type.flags & ts.TypeFlags.EnumLiteral &&
          type.isStringLiteral() &&
          type.value === node.text
        )
          note(type.symbol);
  };
  const visit = (node: ts.Node): void => {
    if (ts.isPropertyAccessExpression(node)) note(checker.getSymbolAtLocation(node.name));
    if (ts.isBindingElement(node)) {
      const name = (node.propertyName ?? node.name).getText();
      note(checker.getTypeAtLocation(node.parent).getProperty(name));
    }
    if (ts.isPropertyAssignment(node) || ts.isShorthandPropertyAssignment(node))
      note(checker.getContextualType(node.parent)?.getProperty(node.name.getText()));
    if (ts.isStringLiteral(node)) noteWord(node);
    node.forEachChild(visit);
  };
  for (const file of files) {
    const source = program.getSourceFile(file);
    if (source) visit(source);
  }
  return found;
}

const isWithin = (level: string, most: string): boolean => {
  const [set, number = ''] = level.split(' ');
  return set === 'ExcelApi' && number.localeCompare(most, 'en', { numeric: true }) <= 0;
};

const files = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.ts'))
  .map((name) => join(FOLDER, name));
const used = membersUsed(files);
/** Asked for only where Excel says that it has them. */
const WHERE_THERE = ['Worksheet.comments: ExcelApi 1.10', 'CommentCollection.getCount: ExcelApi 1.10'];
const above = (level: string): string[] =>
  [...used].filter(([, needed]) => !isWithin(needed, level)).map(([name, needed]) => `${name}: ${needed}`);

describe('what the code for Excel needs', () => {
  test('is no more than the manifest asks for', () => {
    const manifest = readFileSync('manifest.xml', 'utf8');
    expect(/Name="ExcelApi" MinVersion="([\d.]+)"/.exec(manifest)?.[1]).toBe(MANIFEST_LEVEL);
    expect(above(MANIFEST_LEVEL).sort()).toEqual([...WHERE_THERE].sort());
  });
  test('and the look at it is not blind: methods, properties, parts of objects and words are seen with their levels', () => {
    expect(Object.fromEntries(used)).toMatchObject({
      'Worksheet.getRangeByIndexes': 'ExcelApi 1.7',
      'RangeFormat.columnWidth': 'ExcelApi 1.2',
      'Workbook.names': 'ExcelApi 1.1',
      'PageLayoutZoomOptions.scale': 'ExcelApi 1.9',
      'DataValidationPrompt.showPrompt': 'ExcelApi 1.8',
      'ConditionalFormatType.custom': 'ExcelApi 1.6',
      'ChartSeriesBy.columns': 'ExcelApi 1.1',
      'PageOrientation.landscape': 'ExcelApi 1.7',
    });
    expect(above('1.8').length).toBeGreaterThan(5);
    expect(used.size).toBeGreaterThan(80);
  });
});
