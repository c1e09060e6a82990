// Where somebody is typing just now: what is wrong there is told when the field is left, not at the first character.

import { signal } from '@preact/signals-core';
import { type Path, startsWith } from './path.js';

const at = signal<Path | undefined>(undefined);

export function typingAt(path: Path): void {
  at.value = path;
}

export function leftField(): void {
  at.value = undefined;
}

/** Whether a fault stands where somebody is typing, or above it. */
export const stillTyping = (path: Path) =>
  at.value !== undefined && (startsWith(path, at.value) || startsWith(at.value, path));
