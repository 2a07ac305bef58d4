/**
 * Files of tests share a worker. One that left false timers behind would let a later one, in which nothing is wrong,
 * wait for good: so each must leave them as they were.
 */
import { afterAll, expect } from 'vitest';

const found = globalThis.setTimeout;

afterAll(() => expect(globalThis.setTimeout, 'timers that this file of tests leaves behind').toBe(found));
