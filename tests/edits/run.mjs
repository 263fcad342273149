/** Many sequences of edits, from a seed that is another each time and is printed: `npm run edits`, `npm run edits -- 50`. */
process.env.SWEEPTABLE_EDITS ??= process.argv[2] ?? '500';
process.argv.splice(2, process.argv.length, 'tests/edits');
await import('../run-full.mjs');
