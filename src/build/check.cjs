/**
 * What `npm test` looks at before the tests: parts that need nothing of each other run side by side. How the files that are
 * committed are formatted is looked at in full.
 */
const { spawn } = require('node:child_process');

const STEPS = [
  ['lint', 'format:changed'],
  ['types', 'build'],
];

/** Runs a script of package.json by the npm that runs this; gives its exit code and all that it printed. */
const byNpm = (name) =>
  new Promise((resolve) => {
    const child = spawn(process.execPath, [process.env.npm_execpath, 'run', '--silent', name], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const printed = [];
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (piece) => printed.push(piece));
    child.on('error', (reason) => printed.push(Buffer.from(`${reason.message}\n`)));
    child.on('close', (code) => resolve({ code, output: Buffer.concat(printed).toString() }));
  });

async function timed(name, run, say) {
  const started = performance.now();
  const { code, output } = await run(name);
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  say(code === 0 ? `${name}: ${seconds} s` : `${output.trimEnd()}\n${name}: failed after ${seconds} s`);
  return code === 0;
}

/**
 * Runs the parts of each step side by side, one step after the other. A part that fails has its output printed whole; those
 * beside it still end and are told, and no further step begins. Gives whether all went well.
 */
async function checkAll(steps, run, say) {
  for (const step of steps) {
    const outcomes = await Promise.all(step.map((name) => timed(name, run, say)));
    if (outcomes.includes(false)) return false;
  }
  return true;
}

module.exports = { byNpm, checkAll };

if (require.main === module) {
  if (process.env.npm_execpath === undefined) {
    console.error('This runs by npm: npm test.');
    process.exitCode = 1;
  } else
    checkAll(STEPS, byNpm, console.log).then((isGood) => {
      if (!isGood) process.exitCode = 1;
    });
}
