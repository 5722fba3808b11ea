import type { jobWords as en } from '../en/job.ts';

/** Words of the job's own panes (checks, wood, paint, lettering, fixing, pages). */
export const jobWords: Record<keyof typeof en, string> = {
  'plan.coming': 'Wird berechnet…',
  'plan.none': 'Für diesen Entwurf gibt es noch keinen Plan.',
  'plan.looking': 'Sucht nach weniger Brettern und Platten…',
  'plan.renewing': 'Folgt der Änderung…',
  'plan.failed':
    'Der Plan brach ab: {problem}. Die letzte Änderung zurücknehmen; der Entwurf selbst ist sicher.',
  'plan.restarted':
    'Was den Plan berechnet, endete von selbst, vielleicht aus Mangel an Speicher, und wurde neu gestartet. Vom Entwurf ging nichts verloren.',
  'plan.died':
    'Was den Plan berechnet, endete noch einmal von selbst, vielleicht aus Mangel an Speicher. Der Entwurf selbst ist sicher: in eine Datei speichern, andere Seiten schließen und erneut versuchen.',
  'plan.script':
    'Was den Plan berechnet, ließ sich nicht laden. Der Entwurf selbst ist sicher. Erneut versuchen, wenn die Verbindung wieder steht, oder den Entwurf in eine Datei speichern.',
  'plan.older':
    'Diese Zahlen gelten für den Entwurf, wie er vorher war: für den jetzigen gibt es keinen Plan.',
  'plan.retry': 'Erneut versuchen',
};
