import type { jobWords as en } from '../en/job.ts';

/** Words of the job's own panes (checks, wood, paint, lettering, fixing, pages). */
export const jobWords: Record<keyof typeof en, string> = {
  'plan.coming': 'Calculando…',
  'plan.none': 'Todavía no hay plan de este diseño.',
  'plan.looking': 'Buscando menos listones y tableros…',
  'plan.renewing': 'Siguiendo el cambio…',
  'plan.failed': 'El plan se paró: {problem}. Deshacer el último cambio; el diseño está a salvo.',
  'plan.restarted':
    'El programa que calcula el plan se paró solo, quizá sin memoria, y se arrancó de nuevo. No se perdió nada del diseño.',
  'plan.died':
    'El programa que calcula el plan se paró solo otra vez, quizá sin memoria. El diseño está a salvo: guardarlo en un archivo, cerrar otras páginas y probar de nuevo.',
  'plan.script':
    'El programa que calcula el plan no se pudo cargar. El diseño está a salvo. Probar de nuevo cuando vuelva la conexión, o guardar el diseño en un archivo.',
  'plan.older': 'Estas cifras son del diseño como era antes: no hay plan de cómo está ahora.',
  'plan.retry': 'Probar de nuevo',
};
