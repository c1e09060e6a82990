// Scripts by which a shell completes what is typed, made from the same data as the help.

import type { DescribedCommand, DescribedOption } from './commands/described.js';
import { SHELLS, type Shell } from './commands/shells.js';

/** The script, to be read by the shell. */
export function completionScript(shell: Shell, commands: readonly DescribedCommand[]): string {
  return SCRIPTS[shell](commands);
}

const SCRIPTS: Readonly<Record<Shell, (commands: readonly DescribedCommand[]) => string>> = {
  bash: bashScript,
  zsh: zshScript,
  fish: fishScript,
};

const flagsOf = ({ long, short }: DescribedOption) => (short === undefined ? [long] : [short, long]);

/** Where nothing is listed, bash goes on to names of files. */
function bashScript(commands: readonly DescribedCommand[]): string {
  const words = (list: readonly string[]) => `COMPREPLY=($(compgen -W '${list.join(' ')}' -- "$word"))`;
  const cases = commands.flatMap(({ name, options, args }) =>
    [...options, ...listedArgs(name, args)]
      .filter(({ choices }) => choices.length > 0)
      .map(
        (option) =>
          `    ${flagsOf(option)
            .map((flag) => `'${name} ${flag}'`)
            .join('|')}) ${words(option.choices)}; return ;;`,
      ),
  );
  const valued = commands.flatMap(({ name, options }) =>
    options
      .filter(({ value, choices }) => value !== undefined && choices.length === 0)
      .flatMap((option) => flagsOf(option).map((flag) => `'${name} ${flag}'`)),
  );
  return `# Completion of evenfall for bash:  source <(evenfall completion bash)
_evenfall() {
  local word=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]}
  COMPREPLY=()
  if [[ $COMP_CWORD -eq 1 ]]; then
    ${words([...commands.map(({ name }) => name), 'help', '--help', '--version'])}
    return
  fi
  case "\${COMP_WORDS[1]} $before" in
${cases.join('\n')}
    'help help') ${words(commands.map(({ name }) => name))}; return ;;
    ${valued.join('|')}) return ;;
  esac
  [[ $word == -* ]] || return
  case \${COMP_WORDS[1]} in
${commands.map(({ name, options }) => `    ${name}) ${words(options.flatMap(flagsOf))} ;;`).join('\n')}
  esac
}
complete -o default -F _evenfall evenfall
`;
}

/** The one argument that is a word of a list: which shell. */
function listedArgs(name: string, args: DescribedCommand['args']): DescribedOption[] {
  return name === 'completion' && args.length > 0
    ? [{ long: 'completion', choices: SHELLS, means: args[0]!.means }]
    : [];
}

function zshScript(commands: readonly DescribedCommand[]): string {
  const text = (means: string) => means.replaceAll(/[[\]:\\]/g, '\\$&').replaceAll("'", "'\\''");
  const spec = (option: DescribedOption) => {
    const { value, choices, means } = option;
    const takes =
      value === undefined
        ? ''
        : `:${text(value)}:${choices.length > 0 ? `(${choices.join(' ')})` : '_files'}`;
    const flags = flagsOf(option);
    const lead = flags.length === 1 ? `'${flags[0]}` : `'(${flags.join(' ')})'{${flags.join(',')}}'`;
    return `${lead}[${text(means)}]${takes}'`;
  };
  return `#compdef evenfall
# Completion of evenfall for zsh:  source <(evenfall completion zsh)
_evenfall() {
  local -a commands
  commands=(
${commands.map(({ name, summary }) => `    '${name}:${text(summary)}'`).join('\n')}
  )
  if (( CURRENT == 2 )); then
    _describe 'command' commands
    return
  fi
  local command=$words[2]
  shift words
  (( CURRENT-- ))
  case $command in
${commands
  .map(({ name, options }) => {
    const rest = name === 'completion' ? `'1:shell:(${SHELLS.join(' ')})'` : "'*:file:_files'";
    return `    ${name}) _arguments -s \\\n${[...options.map(spec), rest].map((each) => `      ${each}`).join(' \\\n')} ;;`;
  })
  .join('\n')}
  esac
}
if [[ $funcstack[1] == _evenfall ]]; then _evenfall "$@"; else compdef _evenfall evenfall; fi
`;
}

function fishScript(commands: readonly DescribedCommand[]): string {
  const text = (means: string) => `'${means.replaceAll(/['\\]/g, '\\$&')}'`;
  const lines = commands.flatMap(({ name, summary, options }) => {
    const here = `complete -c evenfall -n '__fish_seen_subcommand_from ${name}'`;
    return [
      `complete -c evenfall -n __fish_use_subcommand -f -a ${name} -d ${text(summary)}`,
      ...options.map(({ long, short, value, choices, means }) => {
        const flags = `${short === undefined ? '' : `-s ${short.slice(1)} `}-l ${long.slice(2)}`;
        const takes = value === undefined ? '' : choices.length > 0 ? ` -x -a '${choices.join(' ')}'` : ' -r';
        return `${here} ${flags}${takes} -d ${text(means)}`;
      }),
      ...(name === 'completion' ? [`${here} -f -a '${SHELLS.join(' ')}'`] : []),
    ];
  });
  return `# Completion of evenfall for fish:  evenfall completion fish | source\n${lines.join('\n')}\n`;
}
