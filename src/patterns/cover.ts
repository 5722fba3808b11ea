import type { PatternSet } from './result.ts';

/** Key maps of patterns that stand on the first sheet of the cover, below how they are used, and on each further one. */
export const MAPS_ON = { first: 6, further: 9 } as const;

/** What lies on a bench beside papers of any size: A4 for those of ISO 216, else Letter. */
export const benchPaper = (paper: string): 'a4' | 'letter' => (/^a\d$/i.test(paper) ? 'a4' : 'letter');

/** Patterns that are joined as one, and the number that the first of their pages has among all of them. */
export interface Job {
  readonly sets: readonly PatternSet[];
  readonly first: number;
}

/** Sets of one title, such as the pages of story sticks, are one to whoever joins them: those of parts have titles of their own. */
export function jobsOf(sets: readonly PatternSet[]): Job[] {
  const jobs: { sets: PatternSet[]; first: number }[] = [];
  let first = 1;
  for (const set of sets.filter(({ pages }) => pages.length > 0)) {
    const last = jobs.at(-1);
    if (last?.sets[0]?.title === set.title) last.sets.push(set);
    else jobs.push({ sets: [set], first });
    first += set.pages.length;
  }
  return jobs;
}

/** Sheets of the cover of a file of patterns; none where there are no patterns. */
export function coverSheets(sets: readonly PatternSet[]): number {
  const jobs = jobsOf(sets).length;
  return jobs === 0 ? 0 : 1 + Math.ceil(Math.max(0, jobs - MAPS_ON.first) / MAPS_ON.further);
}
