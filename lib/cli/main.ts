// The command line. This folder reads files, asks the same checks as the desk, and prints; it needs no server and no
// database, keeps nothing, and changes no file that it is given. Commands are loaded when asked for, so that each starts soon.
import { type Command, readArguments } from './arguments.ts';
import { EXIT } from './exit.ts';

const HELP = `cuewright check FILES…     check procedures; - is standard input, a folder stands for the files in it
  --sheet FILE             type data sheet; without it those of seed/aircraft
  --policy FILE            the operator's policy; without it policy.yaml of the library, else that of seed/library
  --library DIR            the operator's library
  --format text|json|sarif how to say it; text when left out
  --strict                 end with 3 when something could not be checked
cuewright fly FILE         fly a procedure: assumptions, events, two pilots, the worst case, and the checks that need time
  --weight 58t             without it the worst of all weights; kg will do
  --wind -10               kt along the track, tail wind negative; calm when left out
  --temperature ISA+25     from standard
  --elevation 5430         ft
  --detent F6 --standard A what is planned; the procedure's own when left out
  --sheet, --policy, --library as for check
  --format text|json|csv   csv: one row a second, header in lib/cli/format.md
cuewright explain          all checks; with words, those that have them all
cuewright explain ID       what one check asks, why, and an example; its number will do
cuewright schema procedure|sheet|library|policy
                           JSON Schema for an editor
cuewright help

check ends with 0: no STOP · 1: at least one STOP · 2: something could not be read · 3: with --strict, not all could be checked
fly ends likewise; with 2 also when it could not be flown under these conditions
Not for dispatch. Nothing here says that a procedure is safe: it says which properties were checked, over which ranges.
`;

/** Runs one command to its end and sets the exit code. */
export async function main(args: readonly string[]): Promise<void> {
  // The reader of a pipe may have seen enough (`| head`): that is no fault of anybody.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
  const read = readArguments(args);
  if (!read.ok) {
    process.stderr.write(`${read.error}\n"cuewright help" tells all commands.\n`);
    process.exitCode = EXIT.unreadable;
    return;
  }
  process.exitCode = await run(read.value);
}

async function run(command: Command): Promise<number> {
  switch (command.name) {
    case 'help':
      process.stdout.write(HELP);
      return EXIT.clear;
    case 'check':
      return (await import('./check-command.ts')).check(command);
    case 'fly':
      return (await import('./fly-command.ts')).fly(command);
    case 'explain':
      return (await import('./explain-command.ts')).explain(command.words);
    case 'schema':
      return (await import('./schema-command.ts')).schema(command.of);
  }
}
