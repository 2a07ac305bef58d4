export function namedOnce(code: string): string;
