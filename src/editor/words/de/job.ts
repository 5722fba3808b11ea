import type { jobWords as en } from '../en/job.ts';

/** Words of the job's own panes (checks, wood, paint, lettering, fixing, pages). */
export const jobWords: Record<keyof typeof en, string> = {
  'plan.coming': 'Wird berechnet…',
  'plan.none': 'Für diesen Entwurf gibt es noch keinen Plan.',
  'plan.renewing': 'Folgt der Änderung…',
  'plan.failed':
    'Der Plan brach ab: {problem}. Die letzte Änderung zurücknehmen; der Entwurf selbst ist sicher.',
};
