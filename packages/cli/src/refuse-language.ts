// A language where there is none.

import type { Language } from '@evenfall/chart';
import { Refusal } from './refusal.js';

/**
 * What a program reads is in no language.
 *
 * @param data the option that asks for it, where it was given
 * @throws Refusal where a language is asked for beside it
 */
export function refuseLanguage(language: Language | undefined, data: string | undefined): void {
  if (language !== undefined && data !== undefined) {
    throw new Refusal([{ kind: 'not-together', options: ['--language', data] }]);
  }
}
