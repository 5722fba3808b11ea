/**
 * Brings a control into sight, with its label and with what is said of it; where there is no room for all of it, what
 * is said goes before the label. Fields on the drawing stand where they are.
 */
export function comeIntoSight(control: Element | null): void {
  if (!control || control.closest('.canvas')) return;
  const field = control.closest('.field');
  for (const part of [field, control, field?.querySelector('.field-error')])
    part?.scrollIntoView({ block: 'nearest' });
}
