/** Words of the job's own panes (checks, wood, paint, lettering, fixing, pages). */
export const jobWords = {
  'plan.coming': 'Working it out…',
  'plan.none': 'There is no plan of this design yet.',
  'plan.renewing': 'Following your change…',
  'plan.failed': 'The plan stopped: {problem}. Undo the last change; the design itself is safe.',
};
