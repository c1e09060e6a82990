export function apiDocs(folder?: string): Promise<string[]>;
