/**
 * Units of length and area outside the trade's own (rods, chains, hectares): the only file that uses a package. The
 * table is built on first use, so that an ordinary call never pays for it, and is asked for one unit name at a time;
 * nothing a person typed is ever evaluated.
 */
import * as mathjs from 'mathjs';

interface LibraryUnit {
  hasBase(base: 'LENGTH' | 'SURFACE'): boolean;
  toNumber(unitName: string): number;
}

interface UnitClass {
  new (value: number, unitName: string): LibraryUnit;
  isValuelessUnit(unitName: string): boolean;
}

/** The part of the package's interface used here; its own declarations leave the factory out. */
type UnitFactory = (parts: Readonly<Record<string, unknown>>) => UnitClass;

/** The one lazily made value: built from constants only, so every caller sees the same table. */
let unitClass: UnitClass | undefined;

/** Millimetres in one unit of this name, or undefined if it is no unit of length. */
export function millimetresPer(unitName: string): number | undefined {
  const unit = unitOf(unitName);
  return unit?.hasBase('LENGTH') ? unit.toNumber('mm') : undefined;
}

/** Square millimetres in one unit of this name, or undefined if it is no unit of area. */
export function squareMillimetresPer(unitName: string): number | undefined {
  const unit = unitOf(unitName);
  return unit?.hasBase('SURFACE') ? unit.toNumber('mm^2') : undefined;
}

function unitOf(unitName: string): LibraryUnit | undefined {
  if (!/^[a-z]+$/.test(unitName)) return undefined;
  unitClass ??= makeUnitClass();
  return unitClass.isValuelessUnit(unitName) ? new unitClass(1, unitName) : undefined;
}

/** The unit table on plain numbers: a fifth of the code of the package's own assembly (44 KB instead of 236 KB). */
function makeUnitClass(): UnitClass {
  const createUnitClass = (mathjs as unknown as { createUnitClass: UnitFactory }).createUnitClass;
  return createUnitClass({
    on: undefined,
    config: { number: 'number', predictable: false, relTol: 1e-12, absTol: 1e-15 },
    addScalar: (a: number, b: number) => a + b,
    subtractScalar: (a: number, b: number) => a - b,
    multiplyScalar: (a: number, b: number) => a * b,
    divideScalar: (a: number, b: number) => a / b,
    pow: (a: number, b: number) => a ** b,
    abs: Math.abs,
    fix: Math.trunc,
    round: Math.round,
    equal: (a: number, b: number) => Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b)),
    isNumeric: (value: unknown) => typeof value === 'number',
    format: String,
    number: Number,
    // Number types the table names but never makes while its numbers are plain.
    Complex: class {},
    BigNumber: class {},
    Fraction: class {},
  });
}
