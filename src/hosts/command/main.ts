import { debuglog, inspect } from 'node:util';
import { remarkTo } from '../../engine/tellTrouble';
import { calc } from './calcCommand';
import type { Terminal } from './terminal';

type Command = (args: readonly string[], terminal: Terminal) => Promise<number>;
const COMMANDS: Readonly<Record<string, Command>> = {
  calc,
  // Loaded when asked for: what writes a file is half as large again as all that calculates.
  sheet: async (...given) => (await import('./sheetCommand')).sheet(...given),
};

/** The person is told by a refusal of ours; a developer asks for more with NODE_DEBUG=sweeptable. */
remarkTo(debuglog('sweeptable'));

/** Node would show the line of code as well: hundreds of kilobytes, in the built file. */
process.on('uncaughtException', (reason) => {
  process.stderr.write(`${inspect(reason)}\n`);
  process.exitCode = 1;
});

/** Who reads the answers may have enough of them, as `head` has. */
process.stdout.on('error', (reason: NodeJS.ErrnoException) => {
  if (reason.code !== 'EPIPE') throw reason;
  process.exit();
});

async function main([name = '', ...args]: readonly string[]): Promise<number> {
  const terminal: Terminal = {
    say: (line) => process.stdout.write(`${line}\n`),
    complain: (line) => process.stderr.write(`${line}\n`),
    input: process.stdin,
  };
  const command = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (command) return command(args, terminal);
  terminal.complain(`There is no command "${name}". The commands are: ${Object.keys(COMMANDS).join(', ')}.`);
  return 2;
}

void main(process.argv.slice(2)).then((code) => {
  process.exitCode ||= code;
});
