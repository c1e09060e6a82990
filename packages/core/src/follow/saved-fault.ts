// Why a saved evening cannot be taken up, as data, and the English of it.

import { englishGiven } from '../files/english-given.js';
import type { Given } from '../files/fault.js';
import type { Sentences } from '../words/sentences.js';

/** What is wrong with a saved evening, told apart by `kind`; `given` is the format that it names, `ours` that of this version. */
export type SavedFaultFacts =
  | { readonly kind: 'saved-by-another-version'; readonly given: Given; readonly ours: string }
  | { readonly kind: 'saved-not-whole' }
  | { readonly kind: 'saved-with-another-plan' };

/** Faults of saved evenings in English. */
export const englishSavedFaults: Sentences<SavedFaultFacts> = {
  'saved-by-another-version': ({ given, ours }) =>
    `${englishGiven(given)} is not of this version; give an evening saved as "${ours}"`,
  'saved-not-whole': () => 'this saved evening is not whole; give an earlier one, or start over',
  'saved-with-another-plan': () =>
    'it was saved while another plan was followed; give that plan, or start over',
};
