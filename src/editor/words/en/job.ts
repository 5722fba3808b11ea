/** Words of the job's own panes (checks, wood, paint, lettering, fixing, pages). */
export const jobWords = {
  'plan.coming': 'Working it out…',
  'plan.none': 'There is no plan of this design yet.',
  'plan.looking': 'Looking for fewer boards and sheets…',
  'plan.renewing': 'Following your change…',
  'plan.failed': 'The plan stopped: {problem}. Undo the last change; the design itself is safe.',
  'plan.restarted':
    'The planner stopped by itself, perhaps out of memory, and was started again. Nothing of the design is lost.',
  'plan.died':
    'The planner stopped again by itself, perhaps out of memory. The design itself is safe: save it to a file, close other pages and try again.',
  'plan.script':
    'The planner could not be loaded. The design itself is safe. Try again when the connection is back, or save the design to a file.',
  'plan.older': 'These figures are for the design as it was before: there is no plan of it as it is now.',
  'plan.retry': 'Try again',
};
