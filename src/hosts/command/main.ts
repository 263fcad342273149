import { calc } from './calc';
import type { Terminal } from './terminal';

type Command = (args: readonly string[], terminal: Terminal) => Promise<number>;
const COMMANDS: Readonly<Record<string, Command>> = {
  calc,
  // Loaded when asked for: what writes a file is half as large again as all that calculates.
  sheet: async (...given) => (await import('./sheet')).sheet(...given),
};

/** The engine tells the console, in its own terms, what it cannot calculate; the person is told in ours. */
console.warn = console.error = () => {};

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
  process.exitCode = code;
});
