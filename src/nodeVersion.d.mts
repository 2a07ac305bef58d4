export function nodeProblem(version: string, wanted: string): string;
