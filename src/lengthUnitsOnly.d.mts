import type { Plugin } from 'esbuild';

/** Where the unit library's one class stands. */
export const UNIT_CLASS_FILE: string;

/** Goes straight to the class and leaves it whole: for running in Node. */
export const unitClassOnly: Plugin;

/** Leaves of the class what lengths and areas need: for the bundles. */
export const lengthUnitsOnly: Plugin;

/** The source of the unit class with nothing but lengths and areas in it. */
export function prunedUnits(source: string): string;
