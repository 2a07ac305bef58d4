/** How much water wood holds where it stands. */

/**
 * Equilibrium moisture content of wood, per cent of its dry weight.
 *
 * Hailwood and Horrobin's equation with two hydrates, coefficients for Fahrenheit from W. T. Simpson, "Equilibrium
 * moisture content of wood in outdoor locations in the United States and worldwide", USDA Forest Products Laboratory
 * FPL-RN-0268 (1998). It differs from the printed table by 0.5 points at most from 35 to 180 F and 20 to 80 %.
 *
 * @param fahrenheit air temperature
 * @param humidity relative humidity as a fraction, 0 to 1
 */
export function moistureContent(fahrenheit: number, humidity: number): number {
  const t = fahrenheit;
  const weight = 330 + 0.452 * t + 0.00415 * t * t;
  const k = 0.791 + 0.000463 * t - 0.000000844 * t * t;
  const k1 = 6.34 + 0.000775 * t - 0.0000935 * t * t;
  const k2 = 1.09 + 0.0284 * t - 0.0000904 * t * t;
  const kh = k * humidity;
  const first = k1 * kh;
  const second = k1 * k2 * kh * kh;
  return (1800 / weight) * (kh / (1 - kh) + (first + 2 * second) / (1 + first + second));
}

/** Fahrenheit of a temperature in Celsius, exact. */
export function fahrenheitOf(celsius: number): number {
  return celsius * 1.8 + 32;
}

/** Temperatures the printed table spans, Fahrenheit (USDA Wood Handbook, Table 4-2). */
export const COLDEST_FAHRENHEIT = 30;
export const HOTTEST_FAHRENHEIT = 270;
