const ts = require('typescript');

/** What a call needs of a row; everything else there is said to people, by other scripts. */
const CALLED = ['id', 'args', 'answers', 'run'];
/** These arguments are named by the refusals of a call but never described, unlike `one` where its cell is blank. */
const ONLY_NAMED = [
  'withDefault',
  'maybe',
  'choice',
  'flag',
  'list',
  'pool',
  'gappedList',
  'maybeList',
  'listWithDefault',
  'flags',
  'pairList',
  'series',
  'grid',
];

const nameOf = (node) => (ts.isIdentifier(node) || ts.isStringLiteral(node) ? node.text : '');
const isCallOf = (node, names) => ts.isCallExpression(node) && names.includes(nameOf(node.expression));

/** Rows of the catalogue without what no call needs, so that the functions of Excel load fast. */
const withoutWords = (context) => {
  const { factory } = context;
  const visit = (node) => {
    if (isCallOf(node, ['define']) && ts.isObjectLiteralExpression(node.arguments[0])) {
      const [row] = node.arguments;
      const kept = row.properties.filter(({ name }) => name && CALLED.includes(nameOf(name)));
      const small = factory.updateObjectLiteralExpression(row, kept);
      return ts.visitEachChild(
        factory.updateCallExpression(node, node.expression, node.typeArguments, [small]),
        visit,
        context,
      );
    }
    if (isCallOf(node, ONLY_NAMED)) {
      const [name, , ...others] = node.arguments;
      const named = [name, factory.createStringLiteral(''), ...others];
      return ts.visitEachChild(
        factory.updateCallExpression(node, node.expression, node.typeArguments, named),
        visit,
        context,
      );
    }
    return ts.visitEachChild(node, visit, context);
  };
  return (file) => ts.visitNode(file, visit);
};

/** For webpack: a file of src/catalogue/rows as TypeScript, reduced. */
module.exports = function callOnly(source) {
  const file = ts.createSourceFile('rows.ts', source, ts.ScriptTarget.Latest, true);
  const { transformed } = ts.transform(file, [withoutWords]);
  return ts.createPrinter().printFile(transformed[0]);
};
