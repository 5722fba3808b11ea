/** The steps of the job, in the order in which they are done; every one can be opened at any time. */
export const STEPS = ['bed', 'layout', 'checks', 'wood', 'paint', 'lettering', 'fixing', 'pages'] as const;
export type StepId = (typeof STEPS)[number];
