export const LONGEST_LINE: number;
export function plainScript(code: string): string;
export function troublesIn(name: string, text: string): string[];
export function commentsLookedLike(name: string, code: string): string[];
