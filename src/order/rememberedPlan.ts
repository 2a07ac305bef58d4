/** Plans of the rooms of a job that were made a moment ago: filling one tab after the other need not plan them again. */
import { type HousePlan, planHouse } from './planHouse';

/** The job, the same without the rooms that have ticks, and a few alternatives of either. */
const MOST_KEPT = 8;

/** As `planHouse`, and to the letter what that plans; what was asked last is kept. */
export function rememberedPlan(): typeof planHouse {
  const kept = new Map<string, HousePlan>();
  return (rooms, shareOffcuts, apart = []) => {
    const key = JSON.stringify([rooms, shareOffcuts, apart]);
    const plan = kept.get(key) ?? planHouse(rooms, shareOffcuts, apart);
    kept.delete(key);
    kept.set(key, plan);
    for (const oldest of [...kept.keys()].slice(0, -MOST_KEPT)) kept.delete(oldest);
    return plan;
  };
}
