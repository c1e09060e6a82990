export function apiReports(): Readonly<Record<string, string>>;
