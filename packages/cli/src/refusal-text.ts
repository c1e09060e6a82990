// A refusal in words.

import type { Language } from '@evenfall/chart';
import { sentenceOf } from '@evenfall/core';
import type { RefusalFacts } from './refusal-facts.js';
import { speech } from './words/words.js';

/** One line; English where no language is given. */
export function refusalText(facts: RefusalFacts, language?: Language): string {
  return sentenceOf(speech(language).sentences.refusals, 'kind', facts);
}
