/** Folder of the built page. */
export const PAGE: string;
/** The page as one file. */
export const ONE_FILE: string;
/** Builds both in a process of its own; throws where that fails. */
export function buildPage(): void;
