export function arrowsOnTop(code: string): string;
