export function namedOnce(code: string, withFields?: boolean): string;
