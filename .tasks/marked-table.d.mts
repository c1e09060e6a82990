export function partBetween(page: string, open: string, close: string): string;
