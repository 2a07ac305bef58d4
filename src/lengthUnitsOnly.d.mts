import type { Plugin } from 'esbuild';

/** Where the unit library's one class stands. */
export const UNIT_CLASS_FILE: string;

/** Goes straight to the class and leaves it whole: for running in Node. */
export const unitClassOnly: Plugin;

/** Puts the sizes of lengths and areas in place of the library: for the bundles. */
export const lengthUnitsOnly: Plugin;

type Sizes = readonly (readonly [name: string, size: number])[];

/** Every unit by its name: lengths in millimetres, areas in square millimetres. */
export function unitTables(projectFolder: string): Promise<{ readonly LENGTHS: Sizes; readonly AREAS: Sizes }>;
