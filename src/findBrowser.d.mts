/** The file named by CHROMIUM_PATH if it exists, else the first Chromium on the PATH; undefined when there is none. */
export function findBrowser(): string | undefined;

/** The file of a program on the PATH; undefined when it is not there. */
export function findProgram(name: string): string | undefined;
