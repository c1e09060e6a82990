// The man page, made from the same data as the help: macros of man(7), which every man program reads.

import { type DescribedCommand, type DescribedOption, EXIT_STATUS } from './commands/described.js';

/**
 * The page as its source.
 *
 * @param program what the help says of the command as a whole
 */
export function manPage(
  program: DescribedCommand,
  commands: readonly DescribedCommand[],
  version: string,
): string {
  return `${[
    `.TH EVENFALL 1 "" "evenfall ${version}" "User Commands"`,
    '.SH NAME',
    `evenfall \\- ${escaped(program.summary)}`,
    '.SH SYNOPSIS',
    ...commands.flatMap(({ name, usage }, i) => [
      ...(i === 0 ? [] : ['.br']),
      `.B evenfall ${name}`,
      escaped(usage),
    ]),
    '.SH DESCRIPTION',
    escaped(program.description),
    ...notesOf(program),
    '.SH COMMANDS',
    ...commands.flatMap(commandLines),
    '.SH EXIT STATUS',
    ...EXIT_STATUS.flatMap((means, status) => ['.TP', `.B ${status}`, escaped(means)]),
  ].join('\n')}\n`;
}

function commandLines(command: DescribedCommand): string[] {
  return [
    `.SS evenfall ${command.name} ${escaped(command.usage)}`,
    escaped(command.description),
    ...command.args.flatMap(({ name, means }) => ['.TP', `.I ${escaped(name)}`, escaped(means)]),
    ...command.options.flatMap((option) => ['.TP', flagsLine(option), escaped(meaning(option))]),
    ...notesOf(command),
  ];
}

function flagsLine({ long, short, value }: DescribedOption): string {
  const flags = short === undefined ? long : `${short}, ${long}`;
  return value === undefined ? `.B ${escaped(flags)}` : `.BI "${escaped(flags)} " ${escaped(value)}`;
}

function meaning({ means, choices }: DescribedOption): string {
  return choices.length === 0 ? means : `${means}: ${choices.join(', ')}`;
}

/** What was laid out by hand stays as it is. */
function notesOf({ notes }: DescribedCommand): string[] {
  if (notes.trim() === '') return [];
  return ['.PP', '.nf', ...notes.trim().split('\n').map(escaped), '.fi'];
}

/** A hyphen of an option is typed as it stands; a line never begins with what would be a request. */
function escaped(text: string): string {
  return text
    .replaceAll('\\', '\\e')
    .replaceAll('-', '\\-')
    .replaceAll('"', '\\(dq')
    .replace(/^(?=[.'])/, '\\&')
    .replaceAll('…', '...');
}
