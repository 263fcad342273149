const { transform } = require('esbuild');

/** For webpack: one of our sources as a script for `target`. Its types are checked apart. */
module.exports = function typescript(source) {
  const done = this.async();
  const { target } = this.getOptions();
  transform(source, { loader: 'ts', target, sourcefile: this.resourcePath }).then(
    ({ code }) => done(null, code),
    done,
  );
};
