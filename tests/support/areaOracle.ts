/** Areas by Clipper2 (its TypeScript port), an independent polygon library: the judge of our own adding and cutting. */
import {
  area,
  difference,
  EndType,
  FillRule,
  inflatePaths,
  intersect,
  JoinType,
  type Paths64,
  union,
} from 'clipper2-ts';
import type { Region } from '../../src/geometry/polygon';

function pathsOf(region: Region): Paths64 {
  return region.map((outline) => outline.map(({ x, y }) => ({ x, y })));
}

function totalOf(paths: Paths64): number {
  return paths.reduce((sum, path) => sum + area(path), 0);
}

export function unionArea(a: Region, b: Region): number {
  return totalOf(union(pathsOf(a), pathsOf(b), FillRule.NonZero));
}

export function differenceArea(a: Region, b: Region): number {
  return totalOf(difference(pathsOf(a), pathsOf(b), FillRule.NonZero));
}

export function intersectionArea(a: Region, b: Region): number {
  return totalOf(intersect(pathsOf(a), pathsOf(b), FillRule.NonZero));
}

/** Area that is in one of the two only: 0 when both are the same part of the plane. */
export function unlikeArea(a: Region, b: Region): number {
  return differenceArea(a, b) + differenceArea(b, a);
}

/** What of a floor lies further than a distance from its edges and under no shape. */
export function uncoveredBeyond(floor: Region, shapes: Region, distance: number): number {
  const inner = inflatePaths(pathsOf(floor), -distance, JoinType.Round, EndType.Polygon);
  return totalOf(difference(inner, pathsOf(shapes), FillRule.NonZero));
}

/** All the way round every outline and hole. */
export function perimeterOf(region: Region): number {
  return region.reduce(
    (sum, outline) =>
      outline.reduce((part, p, i) => {
        const q = outline[(i + 1) % outline.length];
        return part + Math.sqrt((q.x - p.x) ** 2 + (q.y - p.y) ** 2);
      }, sum),
    0,
  );
}
