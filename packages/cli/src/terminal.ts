// The terminal that a person types at: a prompt, lines as they are typed, and what is said meanwhile above them.

import { createRequire } from 'node:module';

export interface Terminal {
  /** Shows the prompt whenever a line is asked for; ends at the end of input, or where somebody breaks off. */
  readonly lines: () => AsyncIterable<string>;
  /** What stands before the next line and those after it, in place of "> ". */
  readonly ask: (prompt: string) => void;
  /** Says something, above a line that is being typed. */
  readonly say: (text: string) => void;
  readonly columns: () => number;
  /** What the clock on the wall shows, UTC epoch milliseconds. */
  readonly nowMs: () => number;
  readonly close: () => void;
}

const PROMPT = '> ';

/** The process's own. */
export function terminalOf(): Terminal {
  // Loaded where somebody types. Code that is kept compiled cannot use import() for it.
  const { createInterface, cursorTo } = createRequire(import.meta.url)(
    'node:readline',
  ) as typeof import('node:readline');
  const screen = process.stdout;
  const reader = createInterface({ input: process.stdin, output: screen, prompt: PROMPT });
  // Control and C together end it in order, with what was done said.
  reader.on('SIGINT', () => reader.close());
  let asking = false;
  return {
    async *lines() {
      reader.prompt();
      asking = true;
      for await (const line of reader) {
        asking = false;
        yield line;
        reader.prompt();
        asking = true;
      }
      asking = false;
    },
    ask: (prompt) => reader.setPrompt(prompt),
    say(text) {
      if (asking) cursorTo(screen, 0);
      screen.write(text);
      if (asking) reader.prompt(true);
    },
    close: () => reader.close(),
    nowMs: Date.now,
    columns: () => screen.columns || 80, // a terminal that does not say its width says 0
  };
}
