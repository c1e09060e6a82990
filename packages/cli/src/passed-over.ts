// Why a file is passed over.

import type { SystemFault } from './system-error.js';

export type PassedOver =
  | { readonly why: 'cannot-read'; readonly fault: SystemFault }
  | { readonly why: 'no-picture' | 'no-time' | 'no-exposure' };
