export function fieldsInPlace(code: string, isLive: (name: string) => boolean): string;
